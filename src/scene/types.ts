/** The drawing as data: everything `Scene.svelte` puts on paper, in pixels of its frame. */
import type { FaultKind } from '#physics';
import type { UnitChoice } from '#units';

export interface Frame {
  readonly width: number;
  readonly height: number;
  /** A phone is re-laid at its own scale, not shrunk. */
  readonly kind: 'wide' | 'phone';
  /** Px no letter may be smaller than, for a projector; then only what matters most is lettered. */
  readonly lettering?: number;
}

/** What the present fault is called, and its kind: the words of some lead elsewhere than to the middle of their piece. */
export interface FaultLabel {
  readonly title: string;
  readonly text: string;
  readonly kind?: FaultKind;
}

/** What is written on the drawing beside what is drawn. */
export interface Lettering {
  /** Piece the present fault sits on. */
  readonly present?: string;
  readonly faultLabel?: FaultLabel;
  readonly choice?: UnitChoice;
}

/** How deep a piece hangs in one state of the run. */
export interface Belly {
  readonly piece: string;
  readonly sag_m: number;
  readonly span_m: number;
}

export interface Point {
  readonly x: number;
  readonly y: number;
}

export interface Box extends Point {
  readonly width: number;
  readonly height: number;
}

export type WallStyle = 'rigid' | 'semi-rigid' | 'flexible';

/** One place on the centreline. */
export interface Sample extends Point {
  /** Unit tangent in the direction of flow. */
  readonly tx: number;
  readonly ty: number;
  /** Metres along the run. */
  readonly s_m: number;
  /** Pixels along the drawn line. */
  readonly along: number;
  readonly piece: string;
  /** Half the open bore as drawn, faults included. */
  readonly half: number;
  /** Half the bore without faults. */
  readonly full: number;
  /** Half-height of what stands in the middle of the stream (the fan's hub), else 0. */
  readonly hub: number;
  /** Flow here over the healthy flow here, 0 to 1. */
  readonly share: number;
  readonly velocity_m_s: number;
}

/** The wall of one stretch of one piece. */
export interface WallPart {
  readonly key: string;
  readonly piece: string;
  readonly style: WallStyle;
  /** Closed outline, to be filled with paper. */
  readonly body: string;
  readonly left: string;
  readonly right: string;
  /** Wire, corrugation or seam. */
  readonly ticks: string;
}

export interface Support extends Point {
  readonly key: string;
  readonly piece: string;
  /** Where the strap is nailed to the rafter. */
  readonly top: number;
  /** True width of strap and saddle. */
  readonly width: number;
  readonly empty: boolean;
  readonly strap: string;
  /** Edges of the strap where it lies round the duct, and its nails. */
  readonly wrap: string;
  readonly saddle: string;
}

export interface Tie {
  readonly key: string;
  readonly piece: string;
  readonly path: string;
  readonly tail: string;
}

export interface Crimp extends Point {
  /** Open height as drawn. */
  readonly height: number;
  readonly folds: string;
}

/** A dimension: extension lines, the measured line with its arrows, and its figure among the labels. */
export interface Dimension {
  readonly key: string;
  readonly piece: string;
  readonly chord: string;
  readonly line: string;
  readonly arrows: string;
  /** Pixels measured. */
  readonly measure: number;
}

export interface FanDrawing {
  readonly piece: string;
  readonly casing: string;
  readonly collars: string;
  readonly hub: string;
  readonly blades: string;
  readonly vanes: string;
  readonly motor: string;
  readonly windings: string;
  readonly axis: string;
  readonly feet: string;
  readonly bearer: string;
  /** SVG transform of a fan that stands askew; empty for a level one. */
  readonly turn: string;
}

export interface Fixture {
  readonly piece: string;
  /** Heavy outline. */
  readonly body: string;
  /** Slats, flanges and the like. */
  readonly detail: string;
}

export interface AirDrawing {
  readonly ribbon: string;
  /** Both edges of the ribbon. */
  readonly edge: string;
  /** The healthy outline: where the ribbon's edges would run if nothing were lost. */
  readonly outline: string;
  /** The gap between ribbon and healthy outline. */
  readonly lost: string;
  readonly entering: string;
  readonly leaving: string;
}

export interface Building {
  /** Cut outlines, 2 px. */
  readonly walls: string;
  readonly wallHatch: string;
  readonly roof: string;
  readonly tiles: string;
  readonly underside: string;
  readonly eaves: string;
  readonly timbers: string;
  readonly timberCrosses: string;
  readonly ceiling: string;
  readonly insulation: string;
}

export interface RoomDrawing {
  readonly fittings: string;
  readonly fine: string;
  readonly water: string;
  readonly steam: readonly string[];
  readonly mist: string;
  readonly partition: string;
  /** Where the room begins and ends. */
  readonly left: number;
  readonly right: number;
}

export type Tone = 'ink' | 'quiet' | 'place' | 'title';

export interface Label extends Point {
  readonly key: string;
  readonly text: string;
  readonly tone: Tone;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly box: Box;
  /** Line from the words to the thing. */
  readonly leader?: string;
}

/** One thing that is wrong, as it is drawn over the run. */
export interface TroubleMark {
  readonly key: string;
  readonly piece: string;
  /** The fault's kind, or the way it leaks. */
  readonly kind: string;
  /** Paper laid over what is not there any more. */
  readonly cover: string;
  /** Air seen through a gap. */
  readonly ribbon: string;
  /** Closed shapes: paper within, heavy outline. */
  readonly body: string;
  readonly heavy: string;
  readonly fine: string;
  readonly quiet: string;
  /** Strokes of air. */
  readonly air: string;
  /** What it opens, closes or turns, as drawn: pixels, or degrees. */
  readonly measure: number;
}

/** A way air takes outside the run: out through a leak, or in; first point first passed. */
export interface Stream {
  readonly key: string;
  readonly points: readonly Point[];
  /** Of the most that passes anywhere in the run, 0 to 1. */
  readonly share: number;
}

export interface Trouble {
  readonly marks: readonly TroubleMark[];
  readonly streams: readonly Stream[];
  /** Flow in each piece over the most that passes anywhere in the run. */
  readonly carried: Readonly<Record<string, number>>;
  /** SVG transform of a wheel smaller than it should be; empty for a sound one. */
  readonly wheel: string;
  /** Where no label may stand. */
  readonly taken: readonly Box[];
  /** Where words about a fault point that sits elsewhere than along its piece: joints, the door, the grille. */
  readonly spots: readonly { readonly piece: string; readonly kind: FaultKind; readonly at: Point }[];
}

export interface Drawing {
  readonly frame: Frame;
  readonly lettering: number;
  readonly stroke: { readonly heavy: number; readonly fine: number };
  readonly pixelsPerMetre: number;
  /** How many times size bores and sag are drawn; the same in every state whose bellies were handed in. */
  readonly enlargement: number;
  readonly centreline: readonly Sample[];
  readonly walls: readonly WallPart[];
  /** Open shapes by piece, wide enough to point at. */
  readonly targets: readonly { readonly piece: string; readonly path: string; readonly width: number }[];
  readonly supports: readonly Support[];
  readonly ties: readonly Tie[];
  readonly crimp: Crimp | null;
  readonly breakMark: string;
  readonly dimensions: readonly Dimension[];
  readonly fan: FanDrawing | null;
  readonly grille: Fixture | null;
  readonly cowl: Fixture | null;
  readonly fittings: readonly Fixture[];
  readonly air: AirDrawing;
  /** What is wrong, where the drawer for it was handed in. */
  readonly trouble: Trouble | null;
  readonly building: Building;
  readonly room: RoomDrawing;
  readonly scaleBar: string;
  readonly labels: readonly Label[];
  /** The note on scale, where the drawing has no room for it. */
  readonly aside: string | null;
  /** What the fault is, where the drawing has room for no more than a mark at its place. */
  readonly caption: FaultLabel | null;
  /** x where each piece starts and ends, for whatever shares this axis. */
  readonly pieceX: Readonly<Record<string, { readonly start: number; readonly end: number }>>;
  /** x of each of the solution's stations, in their order. */
  readonly stationX: readonly number[];
  /** Where air leaves the wall. */
  readonly outlet: Point;
  /** Clear paper for the big number; of no size on a phone, where it stands beside the drawing. */
  readonly numberBox: Box;
}

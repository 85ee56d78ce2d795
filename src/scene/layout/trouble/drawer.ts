/** What a drawing of trouble is given, and what it gives back: handed to `layout` where a page needs it. */
import type { PieceShape, Rig, Solution } from '#physics';
import type { Point, Sample, Trouble } from '../../types.ts';
import type { Narrowing } from '../bore.ts';
import type { Level, Raw } from '../centreline.ts';
import type { Scale } from '../scale.ts';
import type { Sizes } from '../sizes.ts';

export interface Site {
  readonly rig: Rig;
  readonly solution: Solution;
  readonly healthy: Solution;
  readonly shapes: ReadonlyMap<string, PieceShape>;
  /** Bores in pixels. */
  readonly bores: ReadonlyMap<string, number>;
  readonly levels: ReadonlyMap<string, Level>;
  readonly scale: Scale;
  readonly size: Sizes;
}

/** Fixed things of the drawing that trouble hangs on. */
export interface Fixed {
  readonly outlet: Point;
  readonly mouth: Point;
  readonly roomLeft: number;
  readonly roomRight: number;
}

export interface TroubleDrawer {
  /** Leads the centreline where a fault leads it. */
  readonly bend: (site: Site, points: Raw[]) => Raw[];
  /** Where faults take from the bore. */
  readonly narrow: (site: Site, points: readonly Raw[]) => Narrowing[];
  readonly draw: (site: Site, points: readonly Sample[], fixed: Fixed) => Trouble;
}

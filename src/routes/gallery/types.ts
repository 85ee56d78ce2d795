/** A state of a part, a chart or a control as plain data: what the page draws is what the stored pictures hold. */
import type { ComponentProps } from 'svelte';
import type { Crossing, Curve, Ledger, PressureWalk, SteamClock, WattsLitres } from '#charts';
import type { MessageKey } from '#i18n';
import type { Rig, Solution } from '#physics';
import type { FaultLabel } from '#scene';
import type { MeterReading } from '#scene-trouble';
import type { Choice, Station } from '#ui';

/** The props of a chart that are data; unit and handlers are added where it is drawn. */
type Data<Props> = Omit<Props, 'choice' | 'onhighlight' | 'guess' | 'curves'>;

export type Body =
  | {
      readonly kind: 'scene';
      readonly rig: Rig;
      readonly solution: Solution;
      readonly healthy: Solution;
      readonly present?: string;
      readonly faultLabel?: FaultLabel;
      readonly highlight?: string;
      readonly meter?: MeterReading;
    }
  | {
      readonly kind: 'crossing';
      readonly props: Data<ComponentProps<typeof Crossing>> & { readonly curves: readonly Curve[] };
      readonly guess?: { value_L_s: number; min: number; max: number; step: number };
    }
  | { readonly kind: 'ledger'; readonly props: Data<ComponentProps<typeof Ledger>> }
  | { readonly kind: 'walk'; readonly props: Data<ComponentProps<typeof PressureWalk>> }
  | { readonly kind: 'watts'; readonly props: Data<ComponentProps<typeof WattsLitres>> }
  | { readonly kind: 'steam'; readonly props: Data<ComponentProps<typeof SteamClock>> }
  | {
      readonly kind: 'options';
      choices: readonly Choice[];
      tried: readonly string[];
      found?: string;
      reason: string;
    }
  | { readonly kind: 'guess'; value_L_s: number; low_L_s: number; high_L_s: number; sure?: number }
  | { readonly kind: 'stations'; readonly stations: readonly Station[] }
  | {
      readonly kind: 'picker';
      legend: string;
      options: readonly { value: string; label: string }[];
      value: string;
    }
  | { readonly kind: 'press'; words: string; quiet?: boolean; off?: MessageKey };

export interface State {
  /** Anchor on the page and name of the stored file. */
  readonly id: string;
  readonly title: string;
  /** A control that is shown with the focus once someone goes to its anchor. */
  readonly focus?: boolean;
  readonly body: Body;
}

export interface Group {
  readonly id: string;
  readonly title: string;
  readonly states: readonly State[];
}

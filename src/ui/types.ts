/** Shapes the controls are given. */
import type { MessageKey } from '#i18n';

export interface Station {
  readonly id: string;
  /** Digit or sign inside the node. */
  readonly mark: string;
  readonly title: string;
  readonly state: 'done' | 'here' | 'open' | 'ahead';
}

export interface Choice {
  readonly id: string;
  /** Plain words: never read as HTML. */
  readonly words: string;
}

/** Whether a thing can be done now, and if not, why not. */
export type May = { readonly possible: true } | { readonly possible: false; readonly reason: MessageKey };

/** Shapes the controls are given. */
export interface Station {
  readonly id: string;
  /** Digit or sign inside the node. */
  readonly mark: string;
  readonly title: string;
  readonly state: 'done' | 'here' | 'open' | 'ahead';
}

export interface Choice {
  readonly id: string;
  /** Trusted, already escaped HTML. */
  readonly html: string;
}

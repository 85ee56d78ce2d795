/** What a solution may warn of or rest on. Words for each stand in the messages under `assumption.` and `warning.`. */
import type { Mark } from './types.ts';

export const ASSUMPTIONS = {
  'sag-turning': 'model assumption',
  'crimp-neck': 'model assumption',
  'system-effect': 'model assumption',
  'tie-neck': 'model assumption',
  'swap-relaxed': 'model assumption',
  'semi-rigid-compression': 'model assumption',
  'draped-loops': 'model assumption',
  'grille-face': 'model assumption',
  'terminal-form': 'model assumption',
  'make-up-opening': 'model assumption',
  'bend-blend': 'model assumption',
  'compression-small-bore': 'model assumption',
  'fan-bend': 'model assumption',
  'doubling-back': 'model assumption',
  'crushed-neck': 'model assumption',
  dents: 'model assumption',
  undersized: 'model assumption',
  'gore-radius': 'model assumption',
  'backdraught-flap': 'model assumption',
  'stuck-flap': 'memory',
  screen: 'memory',
  'blocked-opening': 'model assumption',
  'sealed-room': 'model assumption',
  'weak-fan': 'model assumption',
  'leak-approach': 'model assumption',
  'weeping-joint': 'model assumption',
  'duct-off': 'model assumption',
  'backward-flow': 'model assumption',
} as const satisfies Record<string, Mark>;

export type AssumptionCode = keyof typeof ASSUMPTIONS;

export const WARNINGS = [
  'outside-fan-table',
  'compression-beyond-data',
  'transitional-flow',
  'several-points',
  'stall',
  'blown-back',
] as const;
export type WarningCode = (typeof WARNINGS)[number];

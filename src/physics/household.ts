/** How a household is taken to live where nobody says otherwise. Everything here can be stated instead. */
import type { Coefficient } from './coefficients.ts';

const noSource = (value: number, low: number, high: number, why: string): Coefficient => ({
  value,
  low,
  high,
  mark: 'model assumption',
  source: why,
});

export const HOUSEHOLD = {
  volume_m3: noSource(12, 6, 25, 'a bathroom of 2.0 by 2.5 by 2.4 m, where the rig states no room'),
  room_C: noSource(22, 18, 26, 'no source; a heated bathroom'),
  makeUp_C: noSource(20, 16, 24, 'no source; air of the rest of the house'),
  makeUpHumidity: noSource(0.55, 0.4, 0.65, 'no source; relative humidity of the rest of the house, 0 to 1'),
  shower_min: noSource(10, 5, 20, 'no source'),
  runOn_min: {
    value: 10,
    low: 0,
    high: 20,
    mark: 'transcribed',
    source:
      'ABCB Housing Provisions 2022, 10 minutes for a room with no window, through trade summaries; others ask for 15 or 20',
  },
  showersPerDay: noSource(4, 1, 8, 'no source; one for each of a household of four'),
  targetHumidity: noSource(0.6, 0.5, 0.7, 'no source; relative humidity at which a bathroom counts as clear'),
  roofAir_C: noSource(10, 0, 30, 'no source; air in the roof space on a cool day'),
  roofAirHumidity: noSource(0.8, 0.5, 0.95, 'no source; relative humidity in the roof space, 0 to 1'),
  roofSurface_C: noSource(4, 0, 12, 'no source; underside of the roof on a cold morning'),
} as const satisfies Record<string, Coefficient>;

export type HouseholdName = keyof typeof HOUSEHOLD;

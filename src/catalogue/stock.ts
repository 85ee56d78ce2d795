/**
 * The starter catalogue as the engine wants it. JSON carries no literal types, so each table is cast here;
 * tests/seeds reads every entry through the same checks as a reader's own file.
 */
import type { FanTable, Material, Rig, Stock } from '#physics';
import fans from '../../seeds/fans.json';
import instrumentData from '../../seeds/instruments.json';
import materials from '../../seeds/materials.json';
import baseCase from '../../seeds/rigs/base-case.json';
import leakyLoftRun from '../../seeds/rigs/leaky-loft-run.json';
import longLaundryRun from '../../seeds/rigs/long-laundry-run.json';
import upstairsBathroom from '../../seeds/rigs/upstairs-bathroom.json';
import type { Instrument } from './schema.ts';

export const stock: Stock = {
  fans: fans as Record<string, FanTable>,
  materials: materials as unknown as Record<string, Material>,
};

export const instruments = instrumentData as unknown as Readonly<Record<string, Instrument>>;

const rigs = {
  'upstairs-bathroom': upstairsBathroom,
  'long-laundry-run': longLaundryRun,
  'base-case': baseCase,
  'leaky-loft-run': leakyLoftRun,
} as const;

export type SeedRigId = keyof typeof rigs;

export const seedRigIds = Object.keys(rigs) as SeedRigId[];

/** Whether the starter catalogue holds a rig of that name. */
export const isSeedRigId = (id: string): id is SeedRigId => Object.hasOwn(rigs, id);

/** A fresh copy, so that nobody can spoil it for the next reader. */
export function seedRig(id: SeedRigId): Rig {
  return structuredClone(rigs[id]) as Rig;
}

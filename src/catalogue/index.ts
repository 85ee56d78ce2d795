/** The one door of the catalogue: reads rigs and the starter stock, and says what is wrong with them. */
export {
  readFanTable,
  readInstrument,
  readMaterial,
  readRig,
  readRigText,
  type Read,
  type ReadRig,
} from './read.ts';
export { parseJson, type Parsed } from './json.ts';
export { tell, finding, type Finding, type Problem, type ProblemCode } from './problems.ts';
export { ranges, inRange, type Range, type RangeName } from './ranges.ts';
export { instruments, isSeedRigId, seedRig, seedRigIds, stock, type SeedRigId } from './stock.ts';
export type { Instrument } from './schema.ts';
export { rateOf, rates, readRates, rule, type Rate } from './rates.ts';

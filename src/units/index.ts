/** The one door of the units: how an SI number is shown, and nothing else. */
export { units, defaults, type Quantity, type UnitChoice, type UnitName } from './table.ts';
export { show, rounded, digitsOf, toDisplay, fromDisplay, type Shown } from './show.ts';

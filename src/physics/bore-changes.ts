/**
 * Loss where the bore changes, on the velocity pressure of the SMALL bore. Steps: Borda-Carnot and
 * Idelchik diagram 4-9 (read in an open component library). Cones: Rennels and Hudson, read through the
 * open `fluids` library. `areaShare` and `boreShare` are small over large, 0 to 1.
 */

/** K of a step to a larger bore, `areaShare` small over large, 0 to 1. */
export function suddenExpansion(areaShare: number): number {
  return (1 - areaShare) ** 2;
}

/** K of a step to a smaller bore, `areaShare` small over large, 0 to 1; Re above 1e4. */
export function suddenContraction(areaShare: number): number {
  return 0.5 * (1 - areaShare) ** 0.75;
}

/** Narrowing cone of total angle above 0 to 180 degrees; `friction` is the Darcy factor in the small bore. */
export function conicalContraction(angle_deg: number, boreShare: number, friction: number): number {
  const jet = 1 + 0.622 * (angle_deg / 180) ** 0.8 * (1 - 0.215 * boreShare ** 2 - 0.785 * boreShare ** 5);
  const turn = 0.0696 * halfSine(angle_deg) * (1 - boreShare ** 5) * jet ** 2 + (jet - 1) ** 2;
  return turn + coneWall(angle_deg, boreShare, friction);
}

/**
 * Widening cone of total angle above 0 to 180 degrees; published for `boreShare` 0.5 and up beyond 20
 * degrees. Above about 45 degrees it is no better than a step.
 */
export function conicalDiffuser(angle_deg: number, boreShare: number, friction: number): number {
  const dumped = (1 - boreShare ** 2) ** 2;
  if (angle_deg > 60) return (1.205 - 0.2 * Math.sqrt((angle_deg - 60) / 120)) * dumped;
  const wall = coneWall(angle_deg, boreShare, friction);
  if (angle_deg <= 20) return 8.3 * Math.tan((angle_deg * Math.PI) / 360) ** 1.75 * dumped + wall;
  return (1.366 * Math.sqrt(Math.sin((2 * Math.PI * (angle_deg - 15)) / 180)) - 0.17) * dumped + wall;
}

const halfSine = (angle_deg: number) => Math.sin((angle_deg * Math.PI) / 360);

function coneWall(angle_deg: number, boreShare: number, friction: number): number {
  return (friction * (1 - boreShare ** 4)) / (8 * halfSine(angle_deg));
}

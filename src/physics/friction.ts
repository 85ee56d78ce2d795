/**
 * Darcy friction factor: 64/Re in laminar flow, Colebrook-White (ASHRAE Fundamentals 2021 ch. 21 eq.
 * 19, as transcribed) in turbulent flow, and a smooth blend between, so a solver sees one curve.
 */
export const LAMINAR_LIMIT = 2300;
export const TURBULENT_LIMIT = 4000;

/** Natural to decimal logarithm, times the 2 of Colebrook's equation. */
const TWO_LOGS = 2 / Math.LN10;

/**
 * Colebrook-White by Newton's method on x = 1/sqrt(f). `relativeRoughness` is roughness over bore. The
 * start puts x = 4.78 (12/2.51) on the right-hand side, which needs no power; each step squares the
 * error, and a step below 1e-7 leaves less than 1e-13.
 */
export function colebrook(reynolds: number, relativeRoughness: number): number {
  const a = relativeRoughness / 3.7;
  const b = 2.51 / reynolds;
  let x = -TWO_LOGS * Math.log(a + 12 / reynolds);
  for (let step = 0; step < 12; step++) {
    const inner = a + b * x;
    const change = (x + TWO_LOGS * Math.log(inner)) / (1 + (TWO_LOGS * b) / inner);
    x -= change;
    if (Math.abs(change) < 1e-7 * x) break;
  }
  return 1 / (x * x);
}

/** Swamee and Jain's explicit form; the general network solver used as a cross-check takes this one. */
export function swameeJain(reynolds: number, relativeRoughness: number): number {
  return 0.25 / Math.log10(relativeRoughness / 3.7 + 5.74 / reynolds ** 0.9) ** 2;
}

/** Churchill's 1977 form for all Re, kept as an independent check on the two above. */
export function churchill(reynolds: number, relativeRoughness: number): number {
  const a = (2.457 * Math.log(1 / ((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness))) ** 16;
  const b = (37530 / reynolds) ** 16;
  return 8 * ((8 / reynolds) ** 12 + (a + b) ** -1.5) ** (1 / 12);
}

/**
 * The factor used everywhere. Between Re 2300 and 4000 the two laws are mixed with a smooth step: a
 * model assumption, since nothing is steady there (published scatter is about 30 %).
 */
export function frictionFactor(reynolds: number, relativeRoughness: number): number {
  if (reynolds <= LAMINAR_LIMIT) return 64 / Math.max(reynolds, 1e-9);
  const turbulent = colebrook(reynolds, relativeRoughness);
  if (reynolds >= TURBULENT_LIMIT) return turbulent;
  const t = (reynolds - LAMINAR_LIMIT) / (TURBULENT_LIMIT - LAMINAR_LIMIT);
  const share = t * t * (3 - 2 * t);
  return (1 - share) * (64 / reynolds) + share * turbulent;
}

/** A factor or coefficient against Re and relative roughness. */
export type ByReynolds = (reynolds: number, relativeRoughness: number) => number;

/** Distinct pairs one run asks for at one flow are fewer than this: walls, and their bends' smooth twins. */
const REMEMBERED = 12;

/**
 * `frictionFactor` that remembers its last answers: at one flow every metre and bend of a run asks for
 * the same few, and a fault-laden run would solve Colebrook a dozen times over.
 */
export function rememberedFriction(): ByReynolds {
  const asked = new Float64Array(2 * REMEMBERED).fill(NaN);
  const answers = new Float64Array(REMEMBERED);
  let next = 0;
  return (reynolds, relativeRoughness) => {
    for (let i = 0; i < REMEMBERED; i++) {
      if (asked[2 * i] === reynolds && asked[2 * i + 1] === relativeRoughness) return answers[i]!;
    }
    const answer = frictionFactor(reynolds, relativeRoughness);
    asked[2 * next] = reynolds;
    asked[2 * next + 1] = relativeRoughness;
    answers[next] = answer;
    next = (next + 1) % REMEMBERED;
    return answer;
  };
}

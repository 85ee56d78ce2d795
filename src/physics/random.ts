/**
 * Chance that comes back: xoshiro128** 1.1 (Blackman and Vigna), filled from a 32-bit seed by splitmix32.
 * The same seed gives the same numbers on every machine, because all of it is 32-bit integer arithmetic.
 */

export interface Random {
  /** Next 32 bits, 0 to 2^32 - 1. */
  readonly word: () => number;
  /** Evenly in [0, 1), 53 bits fine. */
  readonly even: () => number;
  /** Standard normal: mean 0, standard deviation 1. Always takes two `even`s a pair, so streams stay in step. */
  readonly normal: () => number;
  /** Triangular over [low, high] with its peak at `mode`; all three equal gives that number. */
  readonly triangular: (low: number, mode: number, high: number) => number;
}

type State = readonly [number, number, number, number];

const turn = (x: number, by: number) => (x << by) | (x >>> (32 - by));

/** The bare generator: 32-bit words from a state that is not all zero. */
export function words(state: State): () => number {
  let [a, b, c, d] = state;
  return () => {
    const word = Math.imul(turn(Math.imul(b, 5), 7), 9) >>> 0;
    const shifted = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= shifted;
    d = turn(d, 11);
    return word;
  };
}

/** Four well-stirred words from one (splitmix32: a golden-ratio step and MurmurHash3's finish). */
function stirred(seed: number): State {
  let z = seed | 0;
  const next = () => {
    z = (z + 0x9e3779b9) | 0;
    let t = z ^ (z >>> 16);
    t = Math.imul(t, 0x85ebca6b);
    t ^= t >>> 13;
    t = Math.imul(t, 0xc2b2ae35);
    return t ^ (t >>> 16);
  };
  return [next(), next(), next(), next()];
}

/** A seed of its own for a named stream, so that one input's draws do not move when another is added (FNV-1a). */
export function seedFor(seed: number, name: string): number {
  let hash = 0x811c9dc5 ^ (seed | 0);
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
  return hash | 0;
}

/** A stream of draws; `seed` is any whole number, of which 32 bits count. */
export function randomFrom(seed: number): Random {
  const word = words(stirred(seed));
  const even = () => ((word() >>> 5) * 67108864 + (word() >>> 6)) / 9007199254740992;
  let spare: number | null = null;
  return {
    word,
    even,
    // Box and Muller's pair.
    normal: () => {
      if (spare !== null) {
        const kept = spare;
        spare = null;
        return kept;
      }
      const radius = Math.sqrt(-2 * Math.log(1 - even()));
      const angle = 2 * Math.PI * even();
      spare = radius * Math.sin(angle);
      return radius * Math.cos(angle);
    },
    triangular: (low, mode, high) => {
      const width = high - low;
      if (!(width > 0)) return mode;
      const u = even();
      const peak = (mode - low) / width;
      return u < peak ? low + width * Math.sqrt(u * peak) : high - width * Math.sqrt((1 - u) * (1 - peak));
    },
  };
}

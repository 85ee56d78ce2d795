/** Hands counted before a class: typed, kept for as long as the page is open, never sent or stored. */
export type Count = readonly (number | undefined)[];

/** Counts by question and round. */
const kept = new Map<string, Count>();

/** What was counted under a key, or nothing yet for each option. */
export function keptCounts(key: string, options: number): (number | undefined)[] {
  return [...(kept.get(key) ?? Array.from({ length: options }, () => undefined))];
}

export function keepCounts(key: string, count: Count): void {
  kept.set(key, count);
}

/** Share of all hands for each option, whole percent; nothing where no hand is counted. */
export function sharesOf(count: Count): number[] | undefined {
  const hands = count.map((each) => (each !== undefined && each > 0 ? Math.floor(each) : 0));
  const all = hands.reduce((sum, each) => sum + each, 0);
  return all > 0 ? hands.map((each) => Math.round((100 * each) / all)) : undefined;
}

/** What to do next by the share that is right: a rule of thumb (from memory, no source seen). */
export function adviceFor(share: number): 'low' | 'middle' | 'high' {
  return share < 100 / 3 ? 'low' : share <= 200 / 3 ? 'middle' : 'high';
}

/** Checks a lesson and works its bands out, off the page's thread: the bands take seconds on a phone. */
import type { File } from '#lesson-author';
import type { Likely } from '#lesson-engine';
import { bandsOf, check, type Checked } from './check.ts';

export interface Asked {
  readonly structure: File;
  readonly words: File;
  readonly bands: boolean;
}
export type Told =
  | { readonly kind: 'checked'; readonly checked: Checked }
  | { readonly kind: 'band'; readonly stage: string; readonly band: Likely }
  | { readonly kind: 'done' };

const thread = globalThis as unknown as {
  onmessage: (event: MessageEvent<Asked>) => void;
  postMessage: (told: Told) => void;
};

thread.onmessage = ({ data: { structure, words, bands } }) => {
  const checked = check(structure, words);
  thread.postMessage({ kind: 'checked', checked });
  if (checked.ok && bands)
    for (const [stage, band] of bandsOf(checked.playable)) thread.postMessage({ kind: 'band', stage, band });
  thread.postMessage({ kind: 'done' });
};

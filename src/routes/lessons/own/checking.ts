/** The check of a lesson under way in a thread of its own; fetched only where a lesson is checked. */
import Thread from './check.worker.ts?worker&inline';
import type { Likely } from '#session';
import type { Checked } from './check.ts';
import type { Asked, Told } from './check.worker.ts';

/** A lesson that takes longer than this to check is not one a reader could be handed. */
const PATIENCE_MS = 60_000;

export interface Checking {
  /** Undefined where no answer came. */
  readonly checked: Promise<Checked | undefined>;
  readonly stop: () => void;
}

/** `onband` is told each likely band as it comes; `ondone` that there are no more to come. */
export function checking(
  { structure, words }: Omit<Asked, 'bands'>,
  { onband, ondone = () => {} }: { onband?: (stage: string, band: Likely) => void; ondone?: () => void } = {},
): Checking {
  const thread = new Thread();
  let patience: ReturnType<typeof setTimeout>;
  const stop = () => {
    clearTimeout(patience);
    thread.terminate();
  };
  const checked = new Promise<Checked | undefined>((resolve) => {
    const give = () => {
      stop();
      resolve(undefined);
      ondone();
    };
    patience = setTimeout(give, PATIENCE_MS);
    thread.onerror = give;
    thread.onmessage = ({ data }: MessageEvent<Told>) => {
      if (data.kind === 'band') return onband?.(data.stage, data.band);
      if (data.kind === 'done') {
        stop();
        return ondone();
      }
      clearTimeout(patience);
      resolve(data.checked);
    };
  });
  thread.postMessage({ structure, words, bands: onband !== undefined } satisfies Asked);
  return { checked, stop };
}

/** The clicker's keys, fetched when first wanted, since only a class needs them. */
import type { Actions } from './class-keys.ts';

/** Listens from when the keys are there until the function it returns is called. */
export function clickerKeys(actions: Actions): () => void {
  let stop = () => {};
  let gone = false;
  void import('./class-keys.ts').then(({ listen }) => {
    if (!gone) stop = listen(actions);
  });
  return () => {
    gone = true;
    stop();
  };
}

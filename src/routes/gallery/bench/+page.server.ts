/** The fullest rig of the catalogue, with a fault of every kind in it, for `npm run -s bench:browser`. */
import { say } from '#i18n';
import { lessonRig, stockFor } from '#session';

export const prerender = true;

export function load() {
  const rig = lessonRig('leaky-loft-run');
  return {
    rig,
    stock: stockFor(rig),
    words: { title: say('gallery.bench.title'), lead: say('gallery.bench.lead') },
  };
}

/** The fullest rig of the catalogue, with a fault of every kind in it, for `npm run -s bench:browser`. */
import { say } from '#i18n';
import { seedRig, stockOf } from '#session';

export const prerender = true;

export function load() {
  const rig = seedRig('leaky-loft-run');
  return {
    rig,
    stock: stockOf(rig),
    words: { title: say('gallery.bench.title'), lead: say('gallery.bench.lead') },
  };
}

/** Every state is solved while the pages are built. */
import { say } from '#i18n';
import { groups } from './states.ts';

export const prerender = true;

export function load() {
  const count = groups.reduce((sum, { states }) => sum + states.length, 0);
  return { groups, words: { title: say('gallery.title'), lead: say('gallery.lead', { count }) } };
}

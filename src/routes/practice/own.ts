/** The reader's own lessons as the record needs them; fetched only where the record has any. */
import { language, say } from '#i18n';
import { ownSlug } from '#lesson-own';
import { checking } from '../lessons/own/checking.ts';
import { findOwn } from '../lessons/own/visit.ts';
import { summaryOf, type Summary } from './summary.ts';

/** A lesson that is gone, or holds no more, is still told of by what the record itself says. */
async function ownSummary(place: string, slug: string): Promise<Summary> {
  const own = findOwn(slug);
  const checked = own && (await checking(own).checked);
  if (checked?.ok) return summaryOf(checked.playable.lesson, checked.playable.text, place);
  const title = own?.title ?? say('practice.own.gone', { slug });
  return { language, place, title, aims: [], items: [], words: {}, ideas: {} };
}

/** One after the other, for those of these places that are a reader's own. */
export async function ownSummaries(places: readonly string[]): Promise<Summary[]> {
  const found: Summary[] = [];
  for (const place of places) {
    const slug = ownSlug(place);
    if (slug !== undefined) found.push(await ownSummary(place, slug));
  }
  return found;
}

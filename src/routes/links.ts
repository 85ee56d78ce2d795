/** Links to pages in this language or another: each language is built into a folder of its own, English above all. */
import { resolve } from '$app/paths';
import { language, type Language } from '#i18n';

/** Address of a page, `/` first, in a language. */
function addressOf(path: string, wanted: Language): string {
  const here = resolve('/');
  if (wanted === language) return here + path.slice(1);
  const top = language === 'en' ? here : `${here}../`;
  return top + (wanted === 'en' ? '' : `${wanted}/`) + path.slice(1);
}

/** What an `<a>` to a page carries; one in another language leaves this build, and says its language. */
export function pageLink(path: string, wanted: Language) {
  const href = addressOf(path, wanted);
  return wanted === language ? { href } : { href, lang: wanted, hreflang: wanted, rel: 'external' };
}

export const lessonLink = ({ slug, language: wanted }: { slug: string; language: Language }) =>
  pageLink(`/lessons/${slug}`, wanted);

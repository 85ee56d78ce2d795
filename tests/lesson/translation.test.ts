/** A lesson in another language: held against the English one section by section, or wholly English. */
import { expect, it } from 'vitest';
import { languages } from '#i18n';
import { translationProblems } from '#lesson-author';
import { loadGlossary, loadLesson, loadLessons } from '#lesson-load';
import { problemText } from '#lesson';

const ENGLISH = `# Small

## sag: Sag

### brief

It hangs {sag} deep.

### observe: What did the line do?

#### shifted: It slid

**The toll idea.** No.
`;
const file = (name: string, content: string) => ({ name, content });
const none = { common: file('common', '# Common'), glossary: file('glossary', '# Words') };
const english = { words: file('text.en.md', ENGLISH), ...none };
const told = (content: string, shared: Partial<typeof none> = {}) =>
  translationProblems({ words: file('text.de.md', content), ...none, ...shared }, english).map(problemText);

const GERMAN = ENGLISH.replace('hangs {sag} deep', 'hängt {sag} durch').replace('It slid', 'Verschoben');

it('takes a text that says the same under the same ids', () => {
  expect(told(GERMAN)).toEqual([]);
});

it('refuses a section that is missing, and one that is not in the English text', () => {
  expect(told(GERMAN.replace(/#### shifted[\s\S]*/, ''))).toEqual([
    expect.stringMatching(/^text\.de\.md, sag\/observe\/shifted, line 9: found nothing; .*"#### shifted"/),
  ]);
  expect(told(GERMAN.replace('#### shifted', '#### verschoben'))).toEqual([
    expect.stringContaining('sag/observe/shifted, line 9: found nothing'),
    expect.stringContaining(
      'sag/observe/verschoben, line 11: found words for something the English text does not have',
    ),
  ]);
});

it('refuses a number of the engine left out or put in, and a mistaken idea without its name', () => {
  expect(told(GERMAN.replace(' {sag}', ''))).toEqual([
    'text.de.md, sag/brief, line 5: found words; allowed is words {sag}.',
  ]);
  expect(told(GERMAN.replace('{sag}', '{sag} {loss}'))).toHaveLength(1);
  expect(told(GERMAN.replace(/\*\*/g, ''))).toEqual([
    expect.stringContaining('found heading words; allowed'),
  ]);
});

it('lets what lessons share be shorter, and refuses a term of its own', () => {
  const glossary = (content: string) => ({ glossary: file('glossary.de.md', content) });
  expect(told(GERMAN, glossary('# Wörter'))).toEqual([]);
  expect(told(GERMAN, glossary('# Wörter\n\n## eigen: Eigen\n\nWort.\n'))).toEqual([
    expect.stringContaining('glossary.de.md, eigen'),
  ]);
});

it('has the main lesson in every language, and every other lesson whole in one', () => {
  for (const language of languages) {
    expect(loadLesson('five-small-faults', language).language).toBe(language);
    expect(loadLesson('five-small-faults', language).languages).toEqual(languages);
    for (const each of loadLessons(language)) {
      if (each.language === language) continue;
      const { text } = loadLesson(each.lesson.slug, 'en');
      expect(each.text).toEqual(text);
      expect(each.languages).not.toContain(language);
    }
    const taught = loadLessons(language).filter((each) => each.language === language);
    const terms = Object.keys(loadGlossary(language));
    expect(taught.flatMap(({ lesson }) => lesson.terms).filter((term) => !terms.includes(term))).toEqual([]);
  }
});

it('keys mistaken ideas by id, so that what was done in one language counts in the other', () => {
  const ideas = (language: 'en' | 'de') =>
    Object.entries(loadLesson('five-small-faults', language).text.sections)
      .filter(([, section]) => section.idea)
      .map(([key]) => key)
      .sort();
  expect(ideas('en').length).toBeGreaterThan(20);
  expect(ideas('de')).toEqual(ideas('en'));
});

/** Words of a lesson: headings to sections, numbers into placeholders, and what is refused. */
import { describe, expect, it } from 'vitest';
import { checkText, fill, fillWords, judgePrediction, partsOf } from '#lesson';
import { readText } from '../../src/lesson/text.ts';
import { smallLesson, wideLesson } from './small.ts';

const FILE = 'lessons/09-two-faults/text.en.md';
const lesson = smallLesson();

/** A text with every part the lesson needs. */
function whole(change: (markdown: string) => string = (markdown) => markdown): string {
  const sections = partsOf(lesson).map(({ key, wrong }) => {
    const ids = key.split('/');
    return `${'#'.repeat(ids.length + 1)} ${ids.at(-1)}: Title of ${ids.at(-1)}\n\n${wrong ? `**The ${key} idea.** ` : ''}Words.\n`;
  });
  return change(`# Two faults\n\n${sections.join('\n')}`);
}

function problemsOf(markdown: string): string[] {
  const { text, problems } = readText(markdown, FILE);
  return [...problems, ...checkText(lesson, text, FILE)].map(({ path, found }) => `${path} | ${found}`);
}

describe('readText', () => {
  it('maps headings to sections by their path of ids', () => {
    const { text, problems } = readText(
      '# Title\n\n## sag: Sag in *it*\n### observe: What?\n\n#### steeper: It climbs\n\n**The toll idea.** No *toll*.\n\n- one\n\n## mend\n\nWords & more.',
      FILE,
    );
    expect(problems).toEqual([]);
    expect(text.title).toBe('Title');
    expect(text.sections['sag/observe/steeper']).toEqual({
      title: 'It climbs',
      html: '<p><strong>The toll idea.</strong> No <em>toll</em>.</p>\n<ul>\n<li>one</li>\n</ul>',
      idea: 'The toll idea',
    });
    expect(text.sections.mend).toEqual({ title: '', html: '<p>Words &amp; more.</p>' });
  });

  it('takes a whole text', () => {
    expect(problemsOf(whole())).toEqual([]);
  });

  it.each<[string, (markdown: string) => string, string]>([
    ['a missing section', (text) => text.replace(/### power[^#]*/, ''), 'cautions/power | nothing'],
    ['a section too many', (text) => `${text}\n## third\n\nWords.`, 'third | words for something'],
    [
      'the same heading twice',
      (text) => `${text}\n## intro: Again\n\nWords.`,
      'intro | the same heading twice',
    ],
    [
      'a heading with no words',
      (text) => text.replace('## intro: Title of intro', '## intro'),
      'intro | a heading with no words',
    ],
    [
      'nothing under a heading',
      (text) => text.replace('Title of intro\n\nWords.', 'Title of intro'),
      'intro | a heading with nothing under it',
    ],
    [
      'a wrong answer with no idea named',
      (text) => text.replace('**The first/observe/shifted idea.** ', ''),
      'first/observe/shifted | ',
    ],
    ['an unknown placeholder', (text) => text.replace('Title of intro', 'Flow {flwo}'), 'intro | {flwo}'],
    [
      'the outcome told before the reveal',
      (text) => text.replace('Title of intro', 'Soon {flow}'),
      'intro | {flow}',
    ],
    ['HTML in a paragraph', (text) => text.replace('Words.', 'Words <b>here</b>.'), 'intro | "<b>"'],
    ['HTML in a block', (text) => text.replace('Words.', '<script>alert(1)</script>'), 'intro | "<script>'],
    ['HTML in a list', (text) => text.replace('Words.', '- one <i>two</i>'), 'intro | "<i>"'],
    ['a heading that is no id', (text) => `${text}\n## Third Thing\n\nWords.`, 'Third Thing | ##'],
    ['a level skipped', (text) => `${text}\n##### deep: Deep\n\nWords.`, 'deep: Deep | #####'],
    [
      'words under no heading',
      (text) => text.replace('# Two faults\n', '# Two faults\n\nStray words.\n'),
      '# | ',
    ],
    ['no title', (text) => text.replace('# Two faults\n', ''), '# | nothing'],
  ])('refuses %s', (_name, change, expected) => {
    expect(problemsOf(whole(change)).join('\n')).toContain(expected);
  });
});

describe('readings', () => {
  const { steps, ...rest } = wideLesson();
  const problems = (of: 'from' | 'both', name: string) => {
    const held = steps.map((step) =>
      step.id === 'second' && step.kind === 'case'
        ? { ...step, meter: { kind: 'bag' as const, at: 'grille', seed: 1, of } }
        : step,
    );
    const sections = { 'second/brief': { title: '', html: `<p>It shows {${name}}.</p>` } };
    const found = checkText({ ...rest, steps: held }, { title: 'Two', sections }, FILE);
    return found.filter(({ path }) => path === 'second/brief').map((each) => each.found);
  };
  it.each([
    ['of the run before the change is told at once', 'from', 'reading', []],
    ['of the run after it is not told before the reveal', 'both', 'reading', ['{reading}']],
    ['of both is told at once for the run before', 'both', 'reading_before', []],
  ] as const)('%s', (_name, of, name, expected) => {
    expect(problems(of, name)).toEqual(expected);
  });
});

describe('fill', () => {
  it('sets values in, escaped in HTML, a number and its unit on one line', () => {
    expect(fill('<p>It is {flow}.</p>', { flow: '<b>"33.8" L/s' })).toBe(
      '<p>It is &#60;b&#62;&#34;33.8&#34;\u00a0L/s.</p>',
    );
    expect(fillWords('Meet at {flow} & stop', { flow: '33.8 L/s' })).toBe('Meet at 33.8\u00a0L/s & stop');
  });

  it('throws, naming section, placeholder and remedy, where there is no value', () => {
    expect(() => fill('{sag}', { flow: '1' }, 'sag/brief')).toThrow(/sag\/brief.*"sag".*values\.ts/);
  });
});

describe('judgePrediction', () => {
  it.each<[number, number, number, string]>([
    [40, 40, 33, 'same'],
    [39.2, 40, 33, 'same'],
    [45, 40, 33, 'rose'],
    [37, 40, 33, 'too-small'],
    [34, 40, 33, 'about-right'],
    [31, 40, 33, 'about-right'],
    [20, 40, 33, 'too-big'],
    [29, 29, 27.2, 'same'],
    [27.5, 29, 27.2, 'about-right'],
    [0, 29, 27.2, 'too-big'],
  ])('said %d, was %d, is %d: %s', (said, before, is, verdict) => {
    expect(judgePrediction(said, before, is)).toBe(verdict);
  });
});

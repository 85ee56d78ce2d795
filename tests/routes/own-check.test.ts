/** A lesson dropped into the app is held to what `npm run -s lessons` holds it to, and told of in the same words. */
import { mkdirSync, mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadExample } from '#lesson-load';
import { lessonFacts, lessonRigs, stockFor } from '#lesson-engine';
import { checkFolder } from '../../src/commands/check-lesson.ts';
import { bandsOf, check } from '../../src/routes/lessons/own/check.ts';

const example = loadExample();
const structure = JSON.parse(example.structure.content);

/** Lines for the example with its files changed. */
function linesOf(change: (content: string) => string, of: 'structure' | 'words' = 'words'): string[] {
  const files = { ...example, [of]: { ...example[of], content: change(example[of].content) } };
  expect(files[of].content).not.toBe(example[of].content);
  const checked = check(files.structure, files.words);
  return checked.ok ? [] : [...checked.lines];
}
const inIntro = (words: string) => (text: string) =>
  text.replace('A bathroom sits', `${words} A bathroom sits`);

describe('the example of lessons/README.md', () => {
  it('is whole, and holds', () => {
    expect(structure.slug).toBe('one-small-fault');
    expect(check(example.structure, example.words)).toMatchObject({ ok: true });
  });

  it(
    'plays with what a built-in lesson is sent: rigs, values, assumptions, bands',
    { timeout: 60_000 },
    () => {
      const checked = check(example.structure, example.words);
      if (!checked.ok) throw new Error(checked.lines.join('\n'));
      const { playable } = checked;
      const { lesson, text } = playable;
      const rigs = lessonRigs(lesson);
      const stock = stockFor(lesson, rigs);
      const { bands, built } = lessonFacts(lesson, text, rigs, stock);
      expect(playable).toMatchObject({ rigs, stock, built });
      expect(playable.assumptions.sag!.join(' ')).toMatch(/\w/);
      expect(Object.keys(bands).length).toBeGreaterThan(1);
      expect(Object.fromEntries(bandsOf(playable))).toEqual(bands);
      expect(structuredClone(playable)).toEqual(playable);
    },
  );
});

describe('a number with a unit that was typed', () => {
  const written = (words: string) => ({
    ...example.words,
    content: example.words.content.replace('It was {before}.', words),
  });

  it('is warned of in the same words by the command, and the lesson holds', () => {
    const words = written('It was 39.8 L/s.');
    const checked = check(example.structure, words);
    const line = words.content.split('\n').indexOf('It was 39.8 L/s.') + 1;
    expect(checked).toMatchObject({ ok: true, warnings: [expect.stringContaining('"39.8 L/s" is typed')] });
    const warnings = checked.ok ? checked.warnings : [];
    expect(warnings[0]).toContain(`text.en.md, sag/predict, line ${line}: `);
    const folder = join(mkdtempSync(join(tmpdir(), 'lesson-')), '99-one-small-fault');
    mkdirSync(folder);
    for (const file of [example.structure, words]) writeFileSync(join(folder, file.name), file.content);
    const byCommand = checkFolder(folder);
    expect(byCommand.lines).toEqual([]);
    expect(byCommand.warnings?.map((each) => each.replaceAll(`${folder}/`, ''))).toEqual(warnings);
  });

  it('is left alone where it is published, or a placeholder', () => {
    for (const words of ['It was {before}, at 2 steps.', 'At most 1.5 m (a source).'])
      expect(check(example.structure, written(words))).toMatchObject({ ok: true, warnings: [] });
  });
});

describe('a lesson that does not hold', () => {
  it.each<[string, 'structure' | 'words', (content: string) => string]>([
    ['broken JSON', 'structure', (text) => text.slice(0, 200)],
    ['an unknown fault', 'structure', (text) => text.replace('"sag", "at"', '"rust", "at"')],
    [
      'an answer no engine gives',
      'structure',
      (text) => text.replace('"right": "steeper"', '"right": "shifted"'),
    ],
    ['a fault where it cannot be', 'structure', (text) => text.replace('"at": "out"', '"at": "cowl"')],
    ['a rig there is not', 'structure', (text) => text.replace('upstairs-bathroom', 'castle')],
    ['letters of another encoding', 'words', (text) => text.replace('A bathroom', 'A caf\ufffd')],
    ['JSON of another encoding', 'structure', (text) => [...text].join('\0')],
    [
      'an answer no engine gives, and words that want mending',
      'structure',
      (text) => text.replace('"right": "steeper"', '"right": "shifted"').replace('"falls", ', '"fall", '),
    ],
    ['a number with its unit', 'structure', (text) => text.replace('"high_L_s": 60', '"high_L_s": "60 L/s"')],
    ['a term there is not', 'structure', (text) => text.replace('"fan-curve"', '"fan-line"')],
    ['a piece there is not', 'structure', (text) => text.replace('"at": "out"', '"at": "riser"')],
    ['missing feedback', 'words', (text) => text.replace(/#### shifted[^#]*/, '')],
    ['words for a step that is not there', 'words', (text) => `${text}\n## crimp\n\nWords.`],
    [
      'a value this step has not',
      'words',
      (text) => text.replace('bellies, {sag} deep', 'bellies, {ties} deep'),
    ],
  ])('is told as the command tells it: %s', (_name, of, change) => {
    const content = change(example[of].content);
    const files = { ...example, [of]: { ...example[of], content } };
    const folder = join(mkdtempSync(join(tmpdir(), 'lesson-')), '99-one-small-fault');
    mkdirSync(folder);
    for (const file of Object.values(files)) writeFileSync(join(folder, file.name), file.content);
    const byCommand = checkFolder(folder).lines.map((line) => line.replaceAll(`${folder}/`, ''));
    const lines = linesOf(change, of);
    expect(lines).toEqual(byCommand);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of lines)
      expect(line).toMatch(/^(lesson\.json|text\.en\.md), .+: found .+; allowed is .+\.$/);
  });

  it('is told by the line of the heading in the words, and by line and column in the structure', () => {
    const line = example.words.content.split('\n').indexOf('#### shifted: It slid across') + 1;
    expect(linesOf((text) => text.replace('**The fixed-toll idea.** ', ''))).toEqual([
      expect.stringMatching(
        new RegExp(`^text.en.md, sag/observe/shifted, line ${line}: .*names the mistaken idea`),
      ),
    ]);
    // Of a heading that is missing, the one it would stand under.
    expect(linesOf((text) => text.replace(/#### shifted[^#]*/, ''))[0]).toContain(
      `text.en.md, sag/observe, line ${line - 6}: `.replace('observe,', 'observe/shifted,'),
    );
    expect(linesOf((text) => text.replace('"minutes": 8,', '"minutes": 8'), 'structure')).toEqual([
      expect.stringMatching(/^lesson.json, line 8, column 3: found "aims"; .*put a comma before it/),
    ]);
  });

  it.each<[string, (content: string) => string, string]>([
    [
      'a piece there is not',
      (text) => text.replace('"at": "out"', '"at": "riser"'),
      'steps[0].fault.at: found sag at "riser", which is no piece of this rig; allowed is out.',
    ],
    [
      'a piece a fault does not fit',
      (text) => text.replace('"at": "out"', '"at": "cowl"'),
      'steps[0].fault.at: found sag at "cowl"; allowed is out.',
    ],
    [
      'a rig there is not',
      (text) => text.replace('upstairs-bathroom', 'castle'),
      'rig: found "castle"; allowed is upstairs-bathroom, long-laundry-run, base-case, leaky-loft-run.',
    ],
    [
      'a piece a link points at',
      (text) => text.replace('"piece": "out"', '"piece": "duct"'),
      'steps[0].chain[0].piece: found "duct"; allowed is grille, inlet, fan, out, cowl.',
    ],
    [
      'a rig of its own with a mistake in it',
      (text) => text.replace('"minutes"', '"rigs": { "upstairs-bathroom": { "format": 1 } }, "minutes"'),
      'rigs.upstairs-bathroom: ',
    ],
  ])('names the place once, and the step it stands in: %s', (_name, change, expected) => {
    const lines = linesOf(change, 'structure');
    expect(lines[0]).toContain(`lesson.json, ${expected}`);
    if (expected.endsWith('.')) expect(lines).toEqual([`lesson.json, ${expected}`]);
    for (const line of lines) expect(line.match(/found/g)).toHaveLength(1);
  });

  it('is told of the terms and cautions there are', () => {
    const told = (of: string, as: string) => linesOf((text) => text.replace(of, as), 'structure');
    expect(told('"fan-curve"', '"fan-line"')).toEqual([
      expect.stringMatching(/terms\/fan-line: .* one of total-pressure, fan-curve, .*"### fan-line"\.$/),
    ]);
    expect(told('"falls"', '"fall"')).toEqual([
      expect.stringMatching(/cautions\/fall: .* one of power, wiring, falls, .*"### fall"\.$/),
    ]);
  });

  it('is told once of each placeholder without a value, by its section and line', () => {
    const spoilt = (text: string) =>
      text
        .replace('It moves {healthy}', 'It moves {ties}')
        .replace('{sag} deep.\n', '{ties} deep, {dents}.\n');
    const lines = linesOf(spoilt);
    expect(lines.map((line) => line.replace(/, line \d+: /, ' | '))).toEqual([
      expect.stringMatching(/^text.en.md, intro \| found \{ties\}, which has no value here; /),
      expect.stringMatching(/^text.en.md, sag\/brief \| found \{ties\}, which has no value here; /),
      expect.stringMatching(/^text.en.md, sag\/brief \| found \{dents\}, which has no value here; /),
    ]);
  });

  it('is told of every step whose answer is wrong, and of one mistake once', () => {
    const [sag, mend] = structure.steps;
    const more = { ...sag.fault, amount: 0.9 };
    const second = { ...sag, id: 'sag-more', fault: more, observe: { ...sag.observe, right: 'unchanged' } };
    const first = { ...sag, observe: { ...sag.observe, right: 'shifted' } };
    const lines = linesOf(() => JSON.stringify({ ...structure, steps: [first, second, mend] }), 'structure');
    expect(lines.filter((line) => line.includes('the engine shows'))).toHaveLength(2);
    const astray = { ...sag, fault: { ...sag.fault, at: 'riser' } };
    const again = linesOf(() => JSON.stringify({ ...structure, steps: [astray, second, mend] }), 'structure');
    expect(again.filter((line) => line.includes('riser'))).toHaveLength(1);
  });

  it('is told of its folder, and of a file that is not there, by the command', () => {
    const folder = join(mkdtempSync(join(tmpdir(), 'lesson-')), 'mine');
    mkdirSync(folder);
    writeFileSync(join(folder, 'lesson.json'), example.structure.content);
    expect(checkFolder(folder).lines).toEqual([`${join(folder, 'text.en.md')}: there is no such file.`]);
    writeFileSync(join(folder, 'text.en.md'), example.words.content);
    expect(checkFolder(folder).lines).toEqual([`${folder}: rename it to 99-one-small-fault.`]);
  });

  it.each([
    ['Latin letters', Buffer.from('# Caf\u00e9\n', 'latin1'), 1],
    ['UTF-16', Buffer.from('\ufeff# Title\n', 'utf16le'), 1],
    ['one letter further down', Buffer.concat([Buffer.from('# Title\n\n## a'), Buffer.from([0xe9])]), 3],
  ])('is one line where a file is not saved as UTF-8: %s', (_name, bytes, line) => {
    const lines = linesOf(() => bytes.toString('utf8'));
    expect(lines).toEqual([
      `text.en.md, line ${line}: found a letter not saved as UTF-8; allowed is UTF-8 only; save the file again as UTF-8.`,
    ]);
    expect(linesOf(() => bytes.toString('utf8'), 'structure')).toHaveLength(1);
  });

  it('is told what the engine shows first, and never asked to call the true answer mistaken', () => {
    const spoilt = (text: string) => text.replace('"right": "steeper"', '"right": "shifted"');
    const wrong = linesOf(spoilt, 'structure');
    expect(wrong).toEqual([
      'lesson.json, steps[0].observe.right: found "shifted"; allowed is what the engine shows: "steeper".',
    ]);
    const files = {
      structure: { ...example.structure, content: spoilt(example.structure.content) },
      // Another question's words are held to their right answer all the same.
      words: { ...example.words, content: example.words.content.replace('**The metres idea.** ', '') },
    };
    const checked = check(files.structure, files.words);
    const lines = checked.ok ? [] : checked.lines;
    expect(lines).toHaveLength(2);
    expect(lines[0]).toBe(wrong[0]);
    expect(lines[1]).toContain('sag/explain/metres');
  });

  it.each([
    ['passes its rate as it is found', 0.05, 'found 39.5 L/s as found'],
    ['names a value a job has not', 1, '{drop}, which has no value here'],
  ])('has no job that %s', (_name, amount, found) => {
    const faults = [
      { id: 'belly', kind: 'sag', at: 'out', amount },
      { id: 'ties', kind: 'tight-ties', at: 'out', amount: amount * 0.9 },
    ];
    const steps = [...structure.steps, { id: 'attic', kind: 'mend', faults }];
    const words =
      '## attic: An attic\n\n### brief\n\nMend it.\n\n### belly: Bellies\n\n### ties: Ties\n\n### done\n\n' +
      (amount === 1 ? 'It was {drop}.' : 'It is done.');
    const checked = check(
      { ...example.structure, content: JSON.stringify({ ...structure, steps }) },
      { ...example.words, content: `${example.words.content}\n${words}\n` },
    );
    const lines = checked.ok ? [] : checked.lines;
    expect(lines).toHaveLength(1);
    expect(lines[0]).toContain(found);
    expect(lines[0]).toMatch(
      amount === 1 ? /^text.en.md, attic\/done/ : /a rig whose required rate lies between the two/,
    );
  });

  it.each([
    ['a script', '<script>alert(1)</script>', 'no HTML tags'],
    ['a handler', '<img src=x onerror=alert(1)>', 'no HTML tags'],
    ['a tag in a table', '\n\n| a |\n| - |\n| <img src=x onerror=alert(1)> |\n\n', 'no HTML tags'],
    ['a tag in a list', '\n\n- a\n  - <svg onload=alert(1)>\n\n', 'no HTML tags'],
    ['a tag in a quotation', '\n\n> <iframe src=x>\n\n', 'no HTML tags'],
    ['a link that runs', '[a](javascript:alert(1))', 'https://'],
    ['the same in disguise', '[a](&#106;avascript:alert(1))', 'https://'],
    ['the same with a capital', '[a](JavaScript:alert(1))', 'https://'],
    ['the same by reference', '[a][b]\n\n[b]: javascript:alert(1)\n\n', 'https://'],
    ['the same in angle brackets', '<javascript:alert(1)>', 'https://'],
    ['a link that carries a page', '[a](data:text/html;base64,PHNjcmlwdD4=)', 'https://'],
    ['a link to an open connection', '[a](http://example.org)', 'https://'],
    ['a picture from elsewhere', '![a](https://example.org/a.png)', 'the engine draws the pictures'],
    ['a picture in a link', '[![a](x.png)](https://example.org)', 'the engine draws the pictures'],
  ])('has no words that run: %s', (_name, words, remedy) => {
    expect(linesOf(inIntro(words)).join('\n')).toMatch(
      new RegExp(`^text.en.md, intro, line 3: found .*${remedy}`),
    );
  });

  it('nor in a heading', () => {
    const into = (words: string) => (text: string) => text.replace('It slid across', words);
    expect(linesOf(into('It <img src=x onerror=alert(1)> slid')).join('\n')).toContain('no HTML tags');
    expect(linesOf(into('It [slid](javascript:alert(1))')).join('\n')).toContain('https://');
    expect(
      linesOf((text) => text.replace('# One small fault', '# One <b>small</b> fault')).join('\n'),
    ).toContain('no HTML tags');
  });

  it('keeps what only looks like a tag as words', () => {
    const files = {
      ...example.words,
      content: inIntro('`<b>` and 3 < 4 &lt;script&gt;')(example.words.content),
    };
    const checked = check(example.structure, files);
    expect(checked.ok && checked.playable.text.sections.intro?.html).toContain(
      '<code>&lt;b&gt;</code> and 3 &lt; 4 &lt;script&gt;',
    );
  });

  it('takes an open link to a source', () => {
    const files = {
      ...example.words,
      content: inIntro('[guide](https://example.org/a?b=1)')(example.words.content),
    };
    const checked = check(example.structure, files);
    expect(checked.ok && checked.playable.text.sections.intro?.html).toContain(
      '<a href="https://example.org/a?b=1">guide</a>',
    );
  });

  it('is refused before it can keep a browser busy for ever', () => {
    const many = Array.from({ length: 30 }, (_, i) => ({ ...structure.steps[0], id: `sag-${i}` }));
    const steps = [...many, { id: 'mend', kind: 'mend' }];
    const started = performance.now();
    expect(linesOf(() => JSON.stringify({ ...structure, steps }), 'structure').join('\n')).toContain(
      'steps: found 30 with a fault; allowed is up to 8',
    );
    expect(performance.now() - started).toBeLessThan(2000);
  });

  it('has no id that every object answers to', () => {
    const spoilt = (text: string) => text.replaceAll('"sag",\n      "kind"', '"constructor",\n      "kind"');
    expect(linesOf(spoilt, 'structure').join('\n')).toContain('steps[0].id: found "constructor"');
  });

  it.each(['', 'null', '[]', '7', '{"__proto__":{"a":1}}'])('is told of, not thrown over: %j', (content) => {
    expect(linesOf(() => content, 'structure').length).toBeGreaterThan(0);
    expect(linesOf(() => content).length).toBeGreaterThan(0);
  });
});

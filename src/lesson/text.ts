/**
 * A lesson's words, from Markdown to HTML by section. A heading is `id` or `id: words to show`; deeper
 * headings nest, so that `#### steeper: ...` under `### observe` under `## sag` is `sag/observe/steeper`.
 * Runs when the pages are built and where a reader's own lesson is checked; no other page carries `marked`.
 */
import { marked, type Token, type Tokens } from 'marked';
import { say } from '#i18n';
import type { LessonText, Section } from './parts.ts';
import { shown, type Problem } from './problems.ts';

const HEADING = /^([a-z][a-z0-9]*(?:-[a-z0-9]+)*)(?::\s+(.+))?$/s;
const IDEA = /^<p><strong>(.+?)\.?<\/strong>/;

/** Addresses a lesson may point at: another page, openly. Anything else could run, or call without being asked. */
const LINK = /^https:\/\/[^\s"'<>\\]+$/;

/** What may not stand in a lesson's words, and what may: tags, pictures, and links that are more than an address. */
function unsafe(tokens: readonly Token[]): { readonly found: string; readonly allowed: string } | undefined {
  let first: { found: string; allowed: string } | undefined;
  marked.walkTokens([...tokens], (token) => {
    if (first) return;
    const note = (allowed: string) => void (first = { found: shown(token.raw.trim()), allowed });
    if (token.type === 'html') note(say('lesson.problem.no-tags'));
    else if (token.type === 'image') note(say('lesson.problem.no-pictures'));
    else if (token.type === 'link' && !LINK.test((token as Tokens.Link).href))
      note(say('lesson.problem.links'));
  });
  return first;
}

const SIGNS: Readonly<Record<string, string>> = {
  '&amp;': '&',
  '&lt;': '<',
  '&gt;': '>',
  '&quot;': '"',
  '&#39;': "'",
};

/** Words out of HTML. */
const plain = (html: string) =>
  html.replace(/<[^>]+>/g, '').replace(/&(?:amp|lt|gt|quot|#39);/g, (sign) => SIGNS[sign]!);

/** Lines of headings, by the key of their section. */
export type Lines = ReadonlyMap<string, number>;

/** Line of a section's heading, or of the heading it would stand under. */
export function nearestHeading(key: string, lines: Lines): number | undefined {
  const ids = key.split('/');
  return ids
    .map((_, i) => lines.get(ids.slice(0, ids.length - i).join('/')))
    .find((line) => line !== undefined);
}

export function readText(
  markdown: string,
  file: string,
): { text: LessonText; problems: Problem[]; lines: Lines } {
  const problems: Problem[] = [];
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed, ...(path === '#' ? {} : { line: began }) });
  const sections: Record<string, Section> = {};
  const lines = new Map<string, number>();
  /** Line being read, and that of the heading above it. */
  let line = 1;
  let began = 1;
  let title = '';
  let path: string[] = [];
  let heading = '';
  let body: Token[] = [];
  /** The words of the heading itself, as they were read. */
  let titled: Token[] = [];

  const close = () => {
    const key = path.join('/');
    const wrong = unsafe([...titled, ...body]);
    if (wrong) note(key || '#', wrong.found, wrong.allowed);
    const html = marked.parser(body).trim();
    if (!key) {
      if (html) note('#', shown(html), say('lesson.problem.words-under-heading'));
    } else if (sections[key]) note(key, say('lesson.problem.twice'), say('lesson.problem.once'));
    else {
      lines.set(key, began);
      const idea = IDEA.exec(html)?.[1];
      sections[key] = { title: heading, html, ...(idea ? { idea: plain(idea) } : {}) };
    }
    body = [];
  };

  for (const token of marked.lexer(markdown.replace(/^\uFEFF/, ''))) {
    const here = line;
    line += token.raw.split('\n').length - 1;
    if (token.type !== 'heading') {
      if (token.type !== 'space') body.push(token);
      continue;
    }
    close();
    began = here;
    const { depth, text, tokens } = token as Tokens.Heading;
    titled = tokens;
    if (depth === 1) {
      title = text;
      path = [];
      continue;
    }
    const parts = HEADING.exec(text);
    if (!parts || depth - 2 > path.length) note(text, '#'.repeat(depth), say('lesson.problem.heading-form'));
    path = [...path.slice(0, depth - 2), parts?.[1] ?? text];
    heading = parts?.[2] ?? '';
  }
  close();
  if (!title) note('#', say('lesson.problem.nothing'), say('lesson.problem.add-section', { heading: '#' }));
  return { text: { title, sections }, problems, lines };
}

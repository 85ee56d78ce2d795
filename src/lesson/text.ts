/**
 * A lesson's words, from Markdown to HTML by section. A heading is `id` or `id: words to show`; deeper
 * headings nest, so that `#### steeper: ...` under `### observe` under `## sag` is `sag/observe/steeper`.
 * Runs when the pages are built; `marked` is not sent to a reader.
 */
import { marked, type Token, type Tokens } from 'marked';
import { say } from '#i18n';
import type { LessonText, Section } from './parts.ts';
import { shown, type Problem } from './problems.ts';

const HEADING = /^([a-z][a-z0-9]*(?:-[a-z0-9]+)*)(?::\s+(.+))?$/s;
const IDEA = /^<p><strong>(.+?)\.?<\/strong>/;

function htmlIn(tokens: readonly Token[]): string | undefined {
  for (const token of tokens) {
    if (token.type === 'html') return token.raw.trim();
    const inner = 'tokens' in token ? token.tokens : undefined;
    const found = inner && htmlIn(inner);
    if (found) return found;
    if (token.type === 'list') {
      const inList = htmlIn((token as Tokens.List).items);
      if (inList) return inList;
    }
  }
  return undefined;
}

export function readText(markdown: string, file: string): { text: LessonText; problems: Problem[] } {
  const problems: Problem[] = [];
  const note = (path: string, found: string, allowed: string) =>
    problems.push({ file, path, found, allowed });
  const sections: Record<string, Section> = {};
  let title = '';
  let path: string[] = [];
  let heading = '';
  let body: Token[] = [];

  const close = () => {
    const key = path.join('/');
    const tag = htmlIn(body);
    if (tag) note(key || file, shown(tag), say('lesson.problem.no-tags'));
    const html = marked.parser(body).trim();
    if (!key) {
      if (html) note('#', shown(html), say('lesson.problem.words-under-heading'));
    } else if (sections[key]) note(key, say('lesson.problem.twice'), say('lesson.problem.once'));
    else {
      const idea = IDEA.exec(html)?.[1];
      sections[key] = { title: heading, html, ...(idea ? { idea } : {}) };
    }
    body = [];
  };

  for (const token of marked.lexer(markdown)) {
    if (token.type !== 'heading') {
      if (token.type !== 'space') body.push(token);
      continue;
    }
    close();
    const { depth, text } = token as Tokens.Heading;
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
  return { text: { title, sections }, problems };
}

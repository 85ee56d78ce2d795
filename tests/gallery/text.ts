/** A drawn state as text that reads line by line: one tag a line, three decimals, no marks of the framework. */

const INDENT = '  ';
const VOID = new Set(['input', 'br', 'img', 'hr']);

/** Numbers to three decimals, so that the last bits of a machine's arithmetic never show. */
export const rounded = (text: string): string =>
  text.replace(/-?\d+\.\d{4,}(?:e-?\d+)?/g, (number) => String(Number(Number(number).toFixed(3)) + 0));

/** Ids the framework counts up, renamed in the order they come. */
function renamed(html: string): string {
  const names = new Map<string, string>();
  return html.replace(/\b(?:s\d+|c\d+|svelte-?\d+)(?=[-"')])/g, (id) => {
    if (!names.has(id)) names.set(id, `id${names.size + 1}`);
    return names.get(id)!;
  });
}

/** Attributes of a tag, one a line where there are many, path data a move or curve a line where it is long. */
function tagLines(tag: string, pad: string): string[] {
  const whole = pad + tag;
  if (whole.length <= 160) return [whole];
  const parts = tag.match(/^<[\w:-]+|\s[\w:-]+="[^"]*"|\s[\w:-]+|\/?>$/g) ?? [tag];
  const [name = tag, ...rest] = parts;
  const end = rest.pop() ?? '>';
  return [
    pad + name,
    ...rest.flatMap((attribute) => {
      const line = pad + INDENT + attribute.trim();
      return / d="/.test(` ${attribute.trim()}`) ? wrapped(line, `${pad}${INDENT}   `) : [line];
    }),
    pad + end,
  ];
}

/** Path data broken before a move, and after so many commands. */
function wrapped(line: string, pad: string): string[] {
  const out: string[] = [];
  let current = '';
  for (const piece of line.split(/(?=[MLCQAHVZSTmlcqahvzst](?=[\d\s.,"-]))/)) {
    if (current.length + piece.length > 150 && current.trim() !== '') {
      out.push(current.trimEnd());
      current = pad;
    }
    current += piece;
  }
  out.push(current);
  return out;
}

/** Markup one element a line. Text of an element without children stays on its line. */
export function pretty(html: string): string {
  const tokens = html.match(/<[^>]+>|[^<]+/g) ?? [];
  const lines: string[] = [];
  let depth = 0;
  for (const token of tokens) {
    const text = token.replace(/\s+/g, ' ').trim();
    if (text === '') continue;
    if (text.startsWith('</')) {
      depth -= 1;
      lines.push(INDENT.repeat(depth) + text);
    } else if (text.startsWith('<')) {
      lines.push(...tagLines(text, INDENT.repeat(depth)));
      const name = /^<([\w:-]+)/.exec(text)?.[1] ?? '';
      if (!text.endsWith('/>') && !VOID.has(name)) depth += 1;
    } else lines.push(INDENT.repeat(depth) + text);
  }
  // An element with nothing or only words inside takes one line.
  return `${lines
    .join('\n')
    .replace(/(<([\w:-]+)(?: [^<>\n]*)?>)\n\s*([^<\n]*)\n\s*(<\/\2>)/g, '$1$3$4')
    .replace(/(<([\w:-]+)(?: [^<>\n]*)?>)\n\s*(<\/\2>)/g, '$1$3')
    .replace(/\n(\s*)>\n\s*<\/[\w:-]+>/g, '\n$1/>')}\n`;
}

/** What server rendering leaves out of sight: comments, and the classes that tie rules to a component. */
const stripped = (html: string): string =>
  html
    .replace(/<!--[\s\S]*?-->/g, '')
    .replace(/\s*\bsvelte-[a-z0-9]+\b/g, '')
    .replace(/ class=""/g, '')
    .replace(/ style=""/g, '');

const NAMESPACE = 'xmlns="http://www.w3.org/2000/svg"';

/** A whole SVG file: a scene as it is, anything that has words around its drawing inside a foreign object. */
export function storedText(
  html: string,
  title: string,
  scene: boolean,
  shorter: (svg: string) => string = (svg) => svg,
): string {
  const clean = rounded(renamed(stripped(html)));
  const drawing = scene ? /<svg[\s\S]*<\/svg>/.exec(clean)?.[0] : undefined;
  const body = drawing
    ? shorter(drawing).replace('<svg', `<svg ${NAMESPACE}`)
    : `<svg ${NAMESPACE} width="660" height="420"><foreignObject width="660" height="420"><div xmlns="http://www.w3.org/1999/xhtml">${clean}</div></foreignObject></svg>`;
  return pretty(body.replace(/(<svg [^>]*>)/, `$1<title>${title}</title>`));
}

/** Path data shorter than this is quicker read than looked up. */
const SHORT = 160;

/**
 * House, room and most of the run are the same behind most drawings: a long path that another state has shown
 * already is named by that state's file. `seen` keeps what was drawn first where.
 */
export function onlyNew(svg: string, id: string, seen: Map<string, string>): string {
  return svg.replace(/ d="([^"]*)"/g, (whole, data: string) => {
    if (data.length < SHORT) return whole;
    const first = seen.get(data) ?? id;
    seen.set(data, first);
    return first === id ? whole : ` d="as in ${first}.svg"`;
  });
}

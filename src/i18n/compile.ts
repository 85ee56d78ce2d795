/**
 * For the build alone: messages are parsed while the pages are built, and what says them is `message.ts`, so
 * that the message library is not sent to a reader. On the server, in tests and in commands they are parsed
 * when first said, and said by the library.
 */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { parse } from '@formatjs/icu-messageformat-parser';
import type { Plugin } from 'vite';

const MESSAGES = /\/src\/i18n\/messages\/[^/]+\.json$/;
/** Said only while pages are built, so that no reader has to fetch them. */
const BUILT_ONLY =
  /^((know|home|assumption|gallery|glossary|refusal|warning|noise|consequence)\.|lesson\.problem\.(?!no-value)|verdict\.(?!local-code))/;
/** Said by one part of the app alone, and sent with it. */
export const SAID_WITH: readonly { readonly keys: RegExp; readonly by: RegExp }[] = [
  { keys: /^chart\.steam\./, by: /\/src\/charts\/steam(Words)?\.ts$/ },
  { keys: /^chart\.watts\./, by: /\/src\/charts\/watts(Words)?\.ts$/ },
  { keys: /^practice\./, by: /\/src\/routes\/practice\/(\+page\.svelte|Record\.svelte|own\.ts)$/ },
  {
    keys: /^play\.end\./,
    by: /\/src\/routes\/(lessons\/\[slug\]\/(Ended|RoomEnd)|practice\/Record)\.svelte$/,
  },
  { keys: /^play\.entry\./, by: /\/src\/routes\/lessons\/\[slug\]\/Entry\.svelte$/ },
];
const WITH = 'said-with:';

/** A message without placeholders stays a string; any other becomes its parsed form. */
export function compiled(message: string): string | ReturnType<typeof parse> {
  return message.includes('{') ? parse(message) : message;
}

type Messages = Record<string, string>;

/** Those of the messages that `wanted` names, as the code of a JSON module. */
function sent(messages: Messages, wanted: (key: string) => boolean): string {
  const entries = Object.entries(messages).filter(([key]) => wanted(key));
  return JSON.stringify(Object.fromEntries(entries.map(([key, message]) => [key, compiled(message)])));
}

/** `language`: the one whose messages the build sends. */
export function messageCompiler(language: string): Plugin[] {
  const central = `/src/i18n/messages/${language}.json`;
  const forPages = {
    apply: 'build',
    applyToEnvironment: (environment) => environment.name === 'client',
  } satisfies Partial<Plugin>;
  const everywhere = (key: string) => !BUILT_ONLY.test(key) && !SAID_WITH.some(({ keys }) => keys.test(key));
  return [
    {
      ...forPages,
      name: 'compile-messages',
      enforce: 'pre',
      resolveId(source) {
        if (source.startsWith(WITH)) return `\0${source}`;
        return source === 'intl-messageformat'
          ? fileURLToPath(new URL('./message.ts', import.meta.url))
          : null;
      },
      load(id) {
        if (!id.startsWith(`\0${WITH}`)) return null;
        const { keys } = SAID_WITH[Number(id.slice(WITH.length + 1))]!;
        const messages = JSON.parse(
          readFileSync(new URL(`./messages/${language}.json`, import.meta.url), 'utf8'),
        ) as Messages;
        const own = sent(messages, (key) => keys.test(key));
        return {
          code: `import all from '${central}' with { type: 'json' };\nObject.assign(all, ${own});`,
          moduleSideEffects: true,
        };
      },
      transform(code, id) {
        if (!MESSAGES.test(id)) return null;
        return { code: sent(JSON.parse(code) as Messages, everywhere), map: null };
      },
    },
    {
      ...forPages,
      name: 'say-with',
      enforce: 'post',
      transform(code, id) {
        const own = SAID_WITH.flatMap(({ by }, i) => (by.test(id) ? [`import '${WITH}${i}';\n`] : []));
        return own.length === 0 ? null : { code: own.join('') + code, map: null };
      },
    },
  ];
}

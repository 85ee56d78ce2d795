/**
 * For the build alone: messages are parsed while the pages are built, so that the parser, the larger half
 * of the message library, is not sent to a reader. On the server, in tests and in commands they are parsed
 * when first said.
 */
import { createRequire } from 'node:module';
import { parse } from '@formatjs/icu-messageformat-parser';
import type { Plugin } from 'vite';

const MESSAGES = /\/src\/i18n\/messages\/[^/]+\.json$/;
/** Said only while pages are built, so that no reader has to fetch them. */
const BUILT_ONLY =
  /^((know|home|assumption|gallery|glossary|refusal|warning|noise|consequence)\.|lesson\.problem\.(?!no-value)|verdict\.(?!local-code))/;
const PARSER = '@formatjs/icu-messageformat-parser';

/** A message without placeholders stays a string; any other becomes its parsed form. */
export function compiled(message: string): string | ReturnType<typeof parse> {
  return message.includes('{') ? parse(message) : message;
}

export function messageCompiler(): Plugin {
  return {
    name: 'compile-messages',
    enforce: 'pre',
    apply: 'build',
    applyToEnvironment: (environment) => environment.name === 'client',
    resolveId(source) {
      return source === PARSER ? createRequire(import.meta.url).resolve(`${PARSER}/no-parser.js`) : null;
    },
    transform(code, id) {
      if (!MESSAGES.test(id)) return null;
      const messages = JSON.parse(code) as Record<string, string>;
      const entries = Object.entries(messages)
        .filter(([key]) => !BUILT_ONLY.test(key))
        .map(([key, message]) => [key, compiled(message)]);
      return { code: JSON.stringify(Object.fromEntries(entries)), map: null };
    },
  };
}

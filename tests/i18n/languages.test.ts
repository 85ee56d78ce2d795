/** Every language says the same things: the same messages, each with the same values set in. */
import { parse, TYPE, type MessageFormatElement } from '@formatjs/icu-messageformat-parser';
import { expect, test } from 'vitest';
import { languages } from '#i18n';
import de from '../../src/i18n/messages/de.json' with { type: 'json' };
import en from '../../src/i18n/messages/en.json' with { type: 'json' };

const translations: Readonly<Record<string, Readonly<Record<string, string>>>> = { de };
const english: Readonly<Record<string, string>> = en;
/** Of pages built in English alone. */
const ENGLISH_ONLY = /^(know|gallery)\./;

/** What a message asks for: `flow`, `way: less, other`, `count: plural`. A plural's own forms are a language's own. */
function asked(elements: readonly MessageFormatElement[]): string[] {
  return elements.flatMap((element): string[] => {
    if (element.type === TYPE.argument) return [element.value];
    if (element.type === TYPE.number) return [`${element.value}: number`];
    if (element.type === TYPE.select || element.type === TYPE.plural) {
      const forms = Object.entries(element.options);
      const names = forms.map(([name]) => name).sort();
      const kind = element.type === TYPE.plural ? 'plural' : names.join(', ');
      return [`${element.value}: ${kind}`, ...forms.flatMap(([, form]) => asked(form.value))];
    }
    return [];
  });
}
const valuesOf = (message: string) => [...new Set(asked(parse(message)))].sort();

test('every language but English is held against it here', () => {
  expect(Object.keys(translations)).toEqual(languages.filter((language) => language !== 'en'));
});

test.each(Object.entries(translations))('%s has every message and no other', (_, messages) => {
  const wanted = Object.keys(english).filter((key) => !ENGLISH_ONLY.test(key));
  expect(Object.keys(messages).sort()).toEqual(wanted.sort());
});

test.each(Object.entries(translations))('%s sets the same values into each', (_, messages) => {
  const apart = Object.entries(messages).filter(
    ([key, message]) => String(valuesOf(message)) !== String(valuesOf(english[key]!)),
  );
  expect(apart).toEqual([]);
});

test('a value left out, or a choice not offered, would be found', () => {
  expect(valuesOf('{flow} out')).not.toEqual(valuesOf('out'));
  const choice = '{way, select, less {{flow} less} other {more}}';
  expect(valuesOf(choice)).toEqual(['flow', 'way: less, other']);
  expect(valuesOf('{way, select, other {{flow}}}')).not.toEqual(valuesOf(choice));
});

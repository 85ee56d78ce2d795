/**
 * Every code the engine may hand out has words. The types at the top fail to compile for a code without
 * them; the tests fail for a list that is short of its type's words, and for words nobody can say.
 */
import { describe, expect, test } from 'vitest';
import { has, say, type MessageKey } from '#i18n';
import {
  ASSUMPTIONS,
  CONSEQUENCE_LIMITS,
  REFUSALS,
  VERDICT_REASONS,
  WARNINGS,
  type AssumptionCode,
  type ConsequenceLimit,
  type FaultKind,
  type NoiseChanges,
  type RefusalCode,
  type VerdictReason,
  type WarningCode,
} from '#physics';
import messages from '../../src/i18n/messages/en.json' with { type: 'json' };

type Coded =
  | `warning.${WarningCode}`
  | `assumption.${AssumptionCode}`
  | `refusal.${RefusalCode}`
  | `noise.${NonNullable<NoiseChanges['note']>}`
  | `consequence.${ConsequenceLimit}`
  | `fault.${FaultKind}`
  | VerdictReason;

/** Does not compile while a code has no message: the name of the missing key stands in the error. */
const spoken: Exclude<Coded, MessageKey> extends never ? true : Exclude<Coded, MessageKey> = true;

const lists = {
  warning: WARNINGS,
  assumption: Object.keys(ASSUMPTIONS),
  refusal: REFUSALS,
  consequence: CONSEQUENCE_LIMITS,
  noise: ['fan-works-harder'],
} as const;

describe.each(Object.entries(lists))('%s', (prefix, codes) => {
  test('every code has words', () => {
    expect(spoken).toBe(true);
    expect(codes.filter((code) => !has(`${prefix}.${code}`))).toEqual([]);
  });

  test('no words are left over', () => {
    const keys = Object.keys(messages).filter((key) => key.startsWith(`${prefix}.`));
    expect(keys.sort()).toEqual(codes.map((code) => `${prefix}.${code}`).sort());
  });
});

test('verdict reasons have words', () => {
  expect(VERDICT_REASONS.filter((key) => !has(key))).toEqual([]);
});

test('a refusal says what was asked for, and its numbers with their unit', () => {
  for (const code of REFUSALS) {
    const values = { found: '31', low: '9', high: '27', unit: 'L/s' };
    const words = say(`refusal.${code}`, values);
    expect(words, code).not.toContain('{');
    if (code !== 'no-power-stated') expect(words, code).toContain('31');
  }
});

/**
 * What was shown in one version of a lesson, in words that last: a later version may have none for it. Kept
 * with the place in a lesson, and in the practice record.
 */
import * as v from 'valibot';

const count = v.pipe(v.number(), v.integer(), v.minValue(0));
const words = v.optional(v.string());
const said = v.union([v.string(), v.pipe(v.number(), v.finite())]);

/** The parts of an account; `title` and the like are missing in records of before they were kept. */
export const accountParts = {
  version: count,
  aims: v.array(v.strictObject({ aim: v.string(), title: words, asked: count, right: count })),
  ideas: v.array(
    v.strictObject({ section: v.string(), aim: v.optional(v.string()), title: words, changed: v.boolean() }),
  ),
  /** Of each question the first answer and the last: words of cards, or a flow in L/s. */
  answers: v.optional(
    v.array(
      v.strictObject({
        section: v.string(),
        aim: v.optional(v.string()),
        title: words,
        first: said,
        last: said,
        right: v.boolean(),
      }),
    ),
  ),
};
export const accountSchema = v.strictObject(accountParts);
export type Account = v.InferOutput<typeof accountSchema>;

/**
 * The record of a review (`isobath-review`): who looked at which stages of which plan, and what they remarked. It carries the
 * plan that was looked at, whole, so that years later a new plan can be held against it.
 */
import * as z from 'zod/mini';
import { planFileSchema } from './plan-file.ts';
import type { Format } from './read-format.ts';

const MOST_TEXT = 2000;
const stageNumber = z.number().check(z.gte(1), z.multipleOf(1));
const sentence = z.string().check(z.minLength(1), z.maxLength(MOST_TEXT));
const place = z.tuple([z.number(), z.number()]);

export const remarkSchema = z.strictObject({
  /** Stage that was on show. */
  stage: stageNumber,
  /** mm in the drawing's frame; left out when the remark is about the stage as a whole. */
  at: z.optional(place),
  text: sentence,
});

const schema = z.strictObject({
  format: z.literal('isobath-review'),
  version: z.literal(1),
  /** As typed. */
  reviewer: sentence,
  /** Year, month and day, by the reviewer's own calendar. */
  date: z.string().check(z.regex(/^\d{4}-\d{2}-\d{2}$/)),
  /** Numbers of the stages found in order. */
  checked: z.array(stageNumber),
  remarks: z.array(remarkSchema),
  plan: z.strictObject({ sha256: z.string().check(z.regex(/^[0-9a-f]{64}$/)), file: planFileSchema }),
});

export type ReviewFile = z.infer<typeof schema>;
export type Remark = z.infer<typeof remarkSchema>;

export const REVIEW_FORMAT: Format<ReviewFile> = {
  format: 'isobath-review',
  version: 1,
  schema,
  check: () => [],
};

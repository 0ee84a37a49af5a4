/** The record of a run (`isobath-run`): its readings as the operator wrote them down, and what was answered. */
import * as z from 'zod/mini';

const seal = z.string().check(z.regex(/^[0-9a-f]{64}$/));

/** Number of an earlier row of the run, from 1; an answer to a question may stand in the row itself. */
const rowNumber = z.exactOptional(z.number().check(z.gte(1)));

/** One row of readings, nothing resolved: lengths in the job's units or the row's own, points in drawing coordinates. */
const row = z.strictObject({
  /** 0 is before the first dip. */
  stage: z.number(),
  /** Minutes that this stage had in the bath when the reading was taken. */
  minutes: z.exactOptional(z.number()),
  region: z.exactOptional(z.string()),
  x: z.exactOptional(z.number()),
  y: z.exactOptional(z.number()),
  depth: z.exactOptional(z.number()),
  thickness: z.exactOptional(z.number()),
  /** Of depth and thickness; left out, the job's. */
  unit: z.exactOptional(z.enum(['mm', 'in'])),
  who: z.exactOptional(z.string()),
  when: z.exactOptional(z.string()),
  gauge: z.exactOptional(z.string()),
  /** The row that no longer counts; the note says why. */
  strike: rowNumber,
  /** The row that counts although it was asked about; the note says why. */
  confirm: rowNumber,
  note: z.exactOptional(z.string()),
});

export const runFileSchema = z.strictObject({
  format: z.literal('isobath-run'),
  version: z.literal(1),
  /** SHA-256 of plan.json. */
  plan: seal,
  entries: z.array(
    z.strictObject({
      rows: z.array(row),
      /** What was reported then: minutes left by stage. */
      minutesLeft: z.array(z.number()),
      /** SHA-256 of plan, rows and all entries before. */
      seal,
    }),
  ),
});

/** Undefined where the text is no record of a run. */
export function readRunFile(text: string): RunFile | undefined {
  try {
    return runFileSchema.safeParse(JSON.parse(text)).data;
  } catch {
    return undefined;
  }
}

export type ReadingGiven = z.infer<typeof row>;
export type RunFile = z.infer<typeof runFileSchema>;

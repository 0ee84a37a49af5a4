/**
 * How scribe lines are gone along by a machine: where a closed line starts, which side the tool keeps to, how far it goes on
 * past the start, in which order the lines come, and one file or one a stage. In the job, lengths are in its own unit.
 */
import * as z from 'zod/mini';
import { assert } from '#geometry/assert.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { jobMillimetres } from './job-figures.ts';
import { fillPost, PLAIN_POST, type Post, postSchema } from './post-file.ts';

const cutting = {
  start: z.optional(z.enum(['as-planned', 'corner', 'mid-side'])),
  direction: z.optional(z.enum(['climb', 'conventional'])),
  overcut: z.optional(z.number().check(z.gte(0), z.lte(1e7))),
  order: z.optional(z.enum(['as-planned', 'short-travel'])),
  split: z.optional(z.enum(['one-file', 'by-stage'])),
};

export const cuttingSchema = z.strictObject(cutting);
/** The post itself, or the name of a file with it beside the job. */
export const programSchema = z.strictObject({
  ...cutting,
  post: z.optional(z.union([z.string().check(z.minLength(1)), postSchema])),
});

export interface CuttingChoices {
  readonly start: 'as-planned' | 'corner' | 'mid-side';
  readonly direction: 'climb' | 'conventional';
  /** mm past the start of a closed line. */
  readonly overcut: number;
  readonly order: 'as-planned' | 'short-travel';
  readonly split: 'one-file' | 'by-stage';
}

export interface ProgramChoices extends CuttingChoices {
  readonly post: Post;
}

export function resolveCutting(
  given: z.infer<typeof cuttingSchema> | undefined,
  unit: LengthUnit,
): CuttingChoices {
  return {
    start: given?.start ?? 'as-planned',
    direction: given?.direction ?? 'climb',
    overcut: jobMillimetres(given?.overcut ?? 0, unit),
    order: given?.order ?? 'as-planned',
    split: given?.split ?? 'one-file',
  };
}

export function resolveProgram(
  given: z.infer<typeof programSchema> | undefined,
  unit: LengthUnit,
): ProgramChoices {
  const post = given?.post ?? PLAIN_POST;
  assert(typeof post !== 'string', 'a post file is taken into the job before the job is resolved');
  return { ...resolveCutting(given, unit), post: fillPost(post) };
}

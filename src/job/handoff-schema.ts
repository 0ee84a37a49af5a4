/** What the job chooses to hand off beside plan.json and scribe.dxf: the `handoff` key of the job file, all of it optional. */
import * as z from 'zod/mini';
import { cuttingSchema, programSchema } from './cutting-choices.ts';
import { templateSchema } from './template-choices.ts';

/** Files to choose from, by the word that the job says. */
export const HANDOFF_FILES = [
  'traveller',
  'review',
  'inspection',
  'program',
  'scribe-r12',
  'template',
  'section-dxf',
  'section-svg',
  'glb',
  'stl',
] as const;

const length = z.number().check(z.gte(1e-6), z.lte(1e7));
const coordinate = z.number().check(z.gte(-1e12), z.lte(1e12));
const point = z.tuple([coordinate, coordinate]);

/** More than a reviewer looks through, and as many as two digits of a file's name can count. */
export const MOST_SECTIONS = 99;

/** As much as the head of a sheet has room for. */
const words = z.string().check(z.minLength(1), z.maxLength(40));

/** A cut through the finished part, in drawing coordinates. */
const section = z.strictObject({
  from: point,
  to: point,
  name: z.optional(words),
});

export const handoffSchema = z.strictObject({
  files: z.optional(z.array(z.enum(HANDOFF_FILES))),
  paper: z.optional(z.enum(['a4', 'a3'])),
  /** The day that the sheets carry. */
  date: z.optional(z.iso.date()),
  /** What this issue of the plan is called, and who made it. */
  issue: z.optional(z.strictObject({ number: z.optional(words), by: z.optional(words) })),
  inspection: z.optional(z.strictObject({ margin: z.optional(length), spacing: z.optional(length) })),
  sections: z.optional(z.array(section).check(z.maxLength(MOST_SECTIONS))),
  scribe: z.optional(cuttingSchema),
  program: z.optional(programSchema),
  template: z.optional(templateSchema),
});

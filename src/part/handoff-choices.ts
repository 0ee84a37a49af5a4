/**
 * What the job chooses for its hand-off files. Lengths in the job's units, places in the drawing's frame and unit. Every
 * choice may be left out; `resolve-handoff.ts` fills in the rest. The choices of one file stand in one key.
 */
import * as z from 'zod/mini';
import { postSchema } from './post-file.ts';

const LARGEST = 1e7;
const finite = z.number().check(z.gte(-LARGEST), z.lte(LARGEST));
const positive = z.number().check(z.gte(1e-6), z.lte(LARGEST));
const notNegative = z.number().check(z.gte(0), z.lte(LARGEST));
const point = z.tuple([finite, finite]);

/** Where a closed line starts, which side the tool keeps to, how far it goes on past the start, and the order of the lines. */
const cutting = {
  start: z.optional(z.enum(['as-planned', 'corner', 'mid-side'])),
  direction: z.optional(z.enum(['climb', 'conventional'])),
  overcut: z.optional(notNegative),
  order: z.optional(z.enum(['as-planned', 'short-travel'])),
  split: z.optional(z.enum(['one-file', 'by-stage'])),
};

const scribe = z.strictObject({ ...cutting, release: z.optional(z.enum(['AC1015', 'R12'])) });

const program = z.strictObject({ ...cutting, post: z.optional(postSchema) });

const template = z.strictObject({
  slotWidth: z.optional(positive),
  knife: z.optional(
    z.strictObject({ width: positive, rides: z.optional(z.enum(['centre', 'peeled-side', 'kept-side'])) }),
  ),
  bridge: z.optional(positive),
  bridgeSpacing: z.optional(positive),
  cornerClearance: z.optional(notNegative),
  web: z.optional(positive),
  margin: z.optional(positive),
  holes: z.optional(z.array(z.strictObject({ at: point, diameter: positive }))),
  allowance: z.optional(z.strictObject({ x: positive, y: positive })),
});

/** Names of the files that a job may ask for. */
export const HANDOFF_FILES = ['scribe', 'program', 'template'] as const;
export type HandoffFile = (typeof HANDOFF_FILES)[number];

export const handoffSchema = z.strictObject({
  files: z.optional(z.array(z.enum(HANDOFF_FILES))),
  scribe: z.optional(scribe),
  program: z.optional(program),
  template: z.optional(template),
});

export type HandoffChoices = z.infer<typeof handoffSchema>;

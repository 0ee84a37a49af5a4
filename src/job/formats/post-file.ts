/**
 * The post: how a machine's control wants its program to begin, to end and to write numbers. A programmer edits it; feeds
 * and heights are in its own `unit` (and units a minute), never in the job's. Words are passed on as they are.
 */
import * as z from 'zod/mini';

const LARGEST = 1e6;
const height = z.number().check(z.gte(-LARGEST), z.lte(LARGEST));
const feed = z.number().check(z.gt(0), z.lte(LARGEST));
const block = z.string().check(z.maxLength(200));
const blocks = z.array(block);

/** Endings of a program's file name. */
export const POST_ENDINGS = ['nc', 'ngc', 'tap', 'cnc'] as const;

export const postSchema = z.strictObject({
  format: z.literal('isobath-post'),
  version: z.literal(1),
  unit: z.enum(['mm', 'in']),
  decimals: z.optional(z.number().check(z.gte(3), z.lte(8), z.multipleOf(1))),
  feed,
  plungeFeed: z.optional(feed),
  safeHeight: height,
  cutHeight: height,
  toolOn: z.optional(blocks),
  toolOff: z.optional(blocks),
  header: z.optional(blocks),
  footer: z.optional(blocks),
  lineNumberStep: z.optional(z.number().check(z.gte(0), z.lte(1000), z.multipleOf(1))),
  ending: z.optional(z.enum(POST_ENDINGS)),
});

export type PostFile = z.infer<typeof postSchema>;

/** With every choice filled in. */
export type Post = { readonly [Key in keyof PostFile]-?: Exclude<PostFile[Key], undefined> };

/** A post for a knife or a light cutter that rides on the maskant: figures from memory, to be replaced by the shop's own. */
export const PLAIN_POST: PostFile = {
  format: 'isobath-post',
  version: 1,
  unit: 'mm',
  feed: 1000,
  plungeFeed: 200,
  safeHeight: 10,
  cutHeight: 0,
  header: ['%'],
  footer: ['M2', '%'],
};

/** Decimals that keep a written path within 0.0005 mm: 4 of a millimetre, 6 of an inch. */
const DECIMALS = { mm: 4, in: 6 } as const;

export function fillPost(given: PostFile): Post {
  return {
    ...given,
    decimals: given.decimals ?? DECIMALS[given.unit],
    plungeFeed: given.plungeFeed ?? given.feed,
    toolOn: given.toolOn ?? [],
    toolOff: given.toolOff ?? [],
    header: given.header ?? [],
    footer: given.footer ?? ['M2'],
    lineNumberStep: given.lineNumberStep ?? 0,
    ending: given.ending ?? 'nc',
  };
}

/** The JSON Schemas of Isobath's own files (draft 2020-12), as they are published: derived from what reads the files. */
import * as z from 'zod/mini';
import { figuresSchema } from '#bath/figures-file.ts';
import { planFileSchema } from '#job/formats/plan-file.ts';
import { postSchema } from '#job/formats/post-file.ts';
import { REVIEW_FORMAT } from '#job/formats/review-file.ts';
import { runFileSchema } from '#job/formats/run-file.ts';
import { JOB } from '#job/job-file.ts';
import { jobRows } from './job-rows.ts';

/** By the name of the file's kind. */
export const READ_BY = {
  job: JOB.schema,
  plan: planFileSchema,
  readings: runFileSchema,
  review: REVIEW_FORMAT.schema,
  figures: figuresSchema,
  post: postSchema,
} as const;

export type FileKind = keyof typeof READ_BY;

export function jsonSchemaOf(kind: FileKind): z.core.JSONSchema.BaseSchema {
  const metadata = z.registry<{ readonly title: string; readonly description: string }>();
  for (const { field, usual } of jobRows()) {
    const help = field.help.replace(/\[([^\]]*)\]\([^)]*\)/g, '$1');
    metadata.add(field.schema, {
      title: field.label,
      description: usual === 'needed' ? help : `${help}. Left out: ${usual}.`,
    });
  }
  const schema = z.toJSONSchema(READ_BY[kind], { metadata, io: 'input', target: 'draft-2020-12' });
  return { ...schema, title: `Isobath ${kind}` };
}

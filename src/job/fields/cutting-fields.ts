/**
 * How scribe lines are gone along by a machine: where a closed line starts, which side the tool keeps to, how far it goes on
 * past the start, in which order the lines come, and one file or one a stage.
 */
import * as z from 'zod/mini';
import { type Post, postSchema } from '#job/formats/post-file.ts';
import { open, usually, type ValuesOf } from './field.ts';
import { optionalGroup } from './group.ts';
import { choice, length, raw } from './kinds.ts';

const cutting = {
  start: usually(
    choice({
      'as-planned': 'as planned',
      corner: 'at a corner',
      'mid-side': 'in the middle of the longest side',
    }),
    {
      label: 'Closed lines start',
      help: 'where a closed line starts: `"as-planned"`, `"corner"` or `"mid-side"`, see [files](files.md#machine-program)',
      usual: { value: 'as-planned' },
    },
  ),
  direction: usually(choice({ climb: 'climb', conventional: 'conventional' }), {
    label: 'Direction',
    help: 'cutting direction: `"climb"` or `"conventional"`',
    usual: { value: 'climb' },
  }),
  overcut: usually(length(), {
    label: 'Overcut',
    help: 'how far a cut continues past the start of a closed line',
    usual: { value: 0 },
  }),
  order: usually(choice({ 'as-planned': 'as planned', 'short-travel': 'by short travel' }), {
    label: 'Order of lines',
    help: 'order of the lines: `"as-planned"` or `"short-travel"`',
    usual: { value: 'as-planned' },
  }),
  split: usually(choice({ 'one-file': 'one file', 'by-stage': 'one file per stage' }), {
    label: 'Files',
    help: '`"one-file"`, or `"by-stage"`: one per stage',
    usual: { value: 'one-file' },
  }),
};

/** Of scribe.dxf. */
export const scribe = optionalGroup(cutting);

export const program = optionalGroup({
  ...cutting,
  post: open(raw(z.union([z.string().check(z.minLength(1)), postSchema])), {
    label: 'Post',
    help: 'format that the machine control needs: [a post](files.md#machine-program), or the name of a post file beside the job',
    usual: 'a plain one, from memory',
  }),
});

export type CuttingChoices = ValuesOf<typeof cutting>;

export interface ProgramChoices extends CuttingChoices {
  readonly post: Post;
}

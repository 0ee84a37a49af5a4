/** Reads the text of a post file that stands beside the job. */
import { checkPost } from './check-post.ts';
import { type PostFile, postSchema } from './post-file.ts';
import { type Format, type FormatReading, readFormat } from './read-format.ts';

const POST: Format<PostFile> = {
  format: 'isobath-post',
  version: 1,
  schema: postSchema,
  check: (value, placeOf) => checkPost(value, [], placeOf),
};

export function readPost(text: string, file: string): FormatReading<PostFile> {
  return readFormat(text, POST, file);
}

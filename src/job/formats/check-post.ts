/** What a post must keep to beyond the shape of its values: heights in order, figures fine enough, blocks that a control can read. */
import { type Finding, finding } from '#findings/finding.ts';
import { type PostFile, postSchema } from './post-file.ts';
import type { Format } from './read-format.ts';
import type { JsonPath, PlaceOf } from './read-json.ts';

/** A post that stands beside the job. */
export const POST_FORMAT: Format<PostFile> = {
  format: 'isobath-post',
  version: 1,
  schema: postSchema,
  check: (value, placeOf) => checkPost(value, [], placeOf),
};

/** With fewer places a path in inches strays by more than 0.002 mm from the line. */
const LEAST_INCH_DECIMALS = 5;

/** `path` leads to the post in the file that holds it. */
export function checkPost(post: unknown, path: JsonPath, placeOf: PlaceOf): Finding[] {
  if (typeof post !== 'object' || post === null) return [];
  const { unit, decimals, safeHeight, cutHeight } = post as Readonly<Record<string, unknown>>;
  const findings: Finding[] = [];
  if (unit === 'in' && typeof decimals === 'number' && decimals < LEAST_INCH_DECIMALS) {
    const facts = {
      found: `${decimals} decimals of an inch`,
      expected: `at least ${LEAST_INCH_DECIMALS}, or lines stray by more than 0.002 mm`,
    };
    findings.push(finding('job-value-wrong', facts, placeOf([...path, 'decimals'])));
  }
  if (typeof safeHeight === 'number' && typeof cutHeight === 'number' && safeHeight <= cutHeight) {
    const facts = {
      found: `a safe height of ${safeHeight} and a cut height of ${cutHeight}`,
      expected: 'a safe height above the cut height, or the tool drags from line to line',
    };
    findings.push(finding('job-value-wrong', facts, placeOf([...path, 'safeHeight'])));
  }
  return [...findings, ...BLOCK_KEYS.flatMap((key) => checkBlocks(post, key, path, placeOf))];
}

const BLOCK_KEYS = ['toolOn', 'toolOff', 'header', 'footer'] as const;

/** A block is a line of its own in ASCII: a line break inside one would start another, past the line numbers. */
function checkBlocks(post: object, key: string, path: JsonPath, placeOf: PlaceOf): Finding[] {
  const blocks = (post as Readonly<Record<string, unknown>>)[key];
  if (!Array.isArray(blocks)) return [];
  return blocks.flatMap((block, index) => {
    if (typeof block !== 'string' || /^[ -~]*$/.test(block)) return [];
    const facts = {
      found: `the block ${JSON.stringify(block)}`,
      expected: 'one line of ASCII letters, digits and signs',
    };
    return [finding('job-value-wrong', facts, placeOf([...path, key, index]))];
  });
}

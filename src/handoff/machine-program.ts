/**
 * The machine program: scribe lines in RS-274 words, line by line, in the drawing's frame and the post's unit. Straight moves
 * are G1, arcs G2 and G3 of at most half a turn with the centre as I and J from the arc's start. Segments are those of scribe.dxf,
 * which the post's figures round and do not merge again. Source of the words: NIST RS274NGC interpreter report, NISTIR 6556 (2000), sections 3.3 to 3.5.
 */
import { asciiOnly } from '#drawing/write/ascii-text.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Post } from '#job/formats/post-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { contourOfPath, pathOfContour } from './contour.ts';
import type { CutLine } from './cut-lines.ts';
import { LEAST_SEGMENT } from './followable-line.ts';
import { mergeMicroSegments } from './merge-micro-segments.ts';

/**
 * mm. Rounded to as few decimals as a post may have, segments of LEAST_SEGMENT lose up to 0.0015 mm and stay; what is shorter comes of
 * an overcut that ends just past a vertex.
 */
const SHORTEST = 0.8 * LEAST_SEGMENT;

export interface MachineProgramInput {
  readonly name: string;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
  readonly lines: readonly CutLine[];
  readonly post: Post;
  /** Of the job: where the post's is another, the program says so. */
  readonly jobUnit: ShownUnit;
}

/** A block of the program; a shop's own is passed on unchanged. */
type Block = string | { readonly own: string };

/** The program's text: ASCII, a block a line. */
export function machineProgram({ name, planHash, lines, post, jobUnit }: MachineProgramInput): string {
  const blocks: Block[] = [
    ...ownBlocks(post.header),
    comment(`Scribe lines: ${name}`),
    comment(`Plan ${planHash}`),
    comment('Computed, not approved: prove it on scrap first, at safe height'),
    comment(unitWords(post.unit, jobUnit)),
    `G17 ${UNIT_WORDS[post.unit]} G90 G94`,
    `G0 Z${figure(post.safeHeight, post)}`,
  ];
  let stage = 0;
  lines.forEach((line, index) => {
    if (line.stage.number !== stage) {
      stage = line.stage.number;
      blocks.push(comment(`Stage ${stage}, ${stage} ${stage === 1 ? 'tick' : 'ticks'}`));
    }
    blocks.push(comment(`Line ${index + 1} of ${lines.length}`), ...lineBlocks(line, post));
  });
  blocks.push(...ownBlocks(post.footer));
  return `${numbered(blocks, post.lineNumberStep).join('\r\n')}\r\n`;
}

const UNIT_NAMES = { mm: 'millimetres', in: 'inches' } as const;
const UNIT_WORDS = { mm: 'G21', in: 'G20' } as const;

/** The unit of a program's lengths in words, and the job's where that is another. */
function unitWords(unit: Post['unit'], jobUnit: ShownUnit): string {
  const job = jobUnit === unit ? '' : `; the job is in ${UNIT_NAMES[jobUnit]}`;
  return `Lengths in ${UNIT_NAMES[unit]}, ${UNIT_WORDS[unit]}${job}`;
}

/** For sentences: `millimetres (G21)`. */
export function programUnit(unit: Post['unit']): string {
  return `${UNIT_NAMES[unit]} (${UNIT_WORDS[unit]})`;
}

function ownBlocks(blocks: readonly string[]): Block[] {
  return blocks.map((own) => ({ own }));
}

function lineBlocks({ path }: CutLine, post: Post): Block[] {
  const scale = 1 / millimetresIn(post.unit);
  const { closed, vertices } = contourOfPath(path);
  const merged = mergeMicroSegments(
    { closed, vertices: vertices.map(([x, y, bulge]) => [x * scale, y * scale, bulge]) },
    { least: SHORTEST * scale, round: (value) => Number(value.toFixed(post.decimals)) },
  );
  if (merged === undefined) return [];
  const [x, y] = itemAt(merged.vertices, 0);
  const write = (value: number): string => figure(value, post);
  const moves = pathOfContour(merged).spans.map((span) => {
    const end = `X${write(span.end.x)} Y${write(span.end.y)}`;
    if (span.kind === 'line') return `G1 ${end}`;
    const center = `I${write(span.center.x - span.start.x)} J${write(span.center.y - span.start.y)}`;
    return `${span.sweep > 0 ? 'G3' : 'G2'} ${end} ${center}`;
  });
  return [
    `G0 X${write(x)} Y${write(y)}`,
    ...ownBlocks(post.toolOn),
    `G1 Z${write(post.cutHeight)} F${write(post.plungeFeed)}`,
    ...moves.map((move, index) => (index === 0 ? `${move} F${write(post.feed)}` : move)),
    ...ownBlocks(post.toolOff),
    `G0 Z${write(post.safeHeight)}`,
  ];
}

/** Fixed point, never an exponent, never −0. */
function figure(value: number, { decimals }: Pick<Post, 'decimals'>): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? (0).toFixed(decimals) : text;
}

/** A comment ends at the first bracket (NISTIR 6556, 3.3.4), and controls read ASCII. */
function comment(text: string): string {
  return `(${asciiOnly(text).replace(/[()]/g, ' ')})`;
}

/** Comments and a shop's own blocks carry no line number: a program number, `O`, may not stand behind one. */
function numbered(blocks: readonly Block[], step: number): readonly string[] {
  let number = 0;
  return blocks.map((block) => {
    if (typeof block === 'object') return block.own;
    if (step === 0 || block.startsWith('(')) return block;
    number += step;
    return `N${number % 100_000} ${block}`;
  });
}

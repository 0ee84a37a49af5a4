/**
 * Lines that came back in a scribe drawing or a machine program, in millimetres in the frame of the plan. Of a drawing those on layers
 * SCRIBE-… where there are such, else all that are not on layers of outlines and notes.
 */
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import { mirrorPath, mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import { movePath } from '#geometry/spans/move-spans.ts';
import type { SheetSide } from '#job/job.ts';
import { FAR_FACE, MIRROR } from '#run/far-side.ts';
import { HAND } from '#run/opposite-hand.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { readProgram } from './read-program.ts';

export interface ReturnedFile {
  readonly kind: 'scribe' | 'program';
  /** As the engineer named it, for words. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface ReturnedLines {
  readonly face: SheetSide;
  /** The file names the opposite hand: its lines are mirrored back (M9.8). */
  readonly isOpposite: boolean;
  /** Those of the far face, which are drawn as seen from it (M9.7), as seen through the part. */
  readonly paths: readonly Path[];
  /** A `stop` among them: the file could not be used. */
  readonly findings: readonly Finding[];
}

interface Frame {
  /** Of the plan's drawing: counts where the file itself names none. */
  readonly unit: LengthUnit;
  /** mm: where the frame of the plan has its origin in the drawing's own. */
  readonly origin: Point;
  /** That the lines are cut on; counts where the file itself names none. Left out, it is the near one. */
  readonly face?: SheetSide | undefined;
}

export function returnedLines(file: ReturnedFile, { unit, origin, face: asked }: Frame): ReturnedLines {
  const read = file.kind === 'program' ? fromProgram(file) : fromDrawing(file, unit);
  const { findings } = read;
  const face = holdsWords(file.bytes, FAR_WORDS) ? 'far' : (asked ?? 'near');
  const isOpposite = HAND_WORDS.some((words) => holdsWords(file.bytes, words));
  // The far face of the opposite hand is mirrored twice.
  const { paths, from } = (face === 'far') === isOpposite ? read : mirrored(read);
  const by = { x: from.x - origin.x, y: from.y - origin.y };
  const moved = by.x === 0 && by.y === 0 ? paths : paths.map((path) => movePath(path, by));
  return {
    face,
    isOpposite,
    paths: moved,
    findings: findings.map((each) => ({ ...each, place: { ...each.place, file: file.name } })),
  };
}

interface Read extends Omit<ReturnedLines, 'face' | 'isOpposite'> {
  /** mm: where the paths are counted from in the file. */
  readonly from: Point;
}

/** As a note or a comment of ours says what the lines are. */
const FAR_WORDS = `Scribe lines: ${FAR_FACE}`;

/** In a program's comment there are no brackets within. */
const HAND_WORDS = [HAND, HAND.replaceAll(/[()]/g, ' ')];

/** Of ASCII words, wherever they stand: layers of notes may be switched off. */
function holdsWords(bytes: Uint8Array, words: string): boolean {
  const codes = Array.from(words, (letter) => letter.charCodeAt(0));
  const first = itemAt(codes, 0);
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    if (codes.every((code, index) => bytes[at + index] === code)) return true;
  }
  return false;
}

function mirrored({ paths, from }: Read): Pick<Read, 'paths' | 'from'> {
  return { paths: paths.map((path) => mirrorPath(path, MIRROR)), from: mirrorPoint(from, MIRROR) };
}

const HERE: Point = { x: 0, y: 0 };

function fromProgram({ bytes }: ReturnedFile): Read {
  // Words of a program are ASCII; any other byte can only stand in a comment.
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return { ...readProgram(text), from: HERE };
}

const SCRIBE_LAYER = /^SCRIBE(-|$)/i;

/** A layer that holds scribe lines by its name, as those of our files do. */
export function isScribeLayer(layer: string): boolean {
  return SCRIBE_LAYER.test(layer);
}

/** Layers of our own files, and of most others, that hold nothing to cut. */
const NO_LINES = /^(OUTLINE|SHEET|EDGES|NOTES?|TEXT|WORDS|SCALE|MARK.*|HOLES|DIM.*|DEFPOINTS)$/i;

/** What the reader says of the file counts only where it stops it, or nothing is left to compare. */
function fromDrawing({ bytes }: ReturnedFile, unit: LengthUnit): Read {
  const stated = readDrawing(bytes);
  const drawing = stated.unit === undefined ? readDrawing(bytes, { unit }) : stated;
  const isScribed = drawing.curves.some(({ layer }) => isScribeLayer(layer));
  const curves = drawing.curves.filter(({ layer }) =>
    isScribed ? isScribeLayer(layer) : !NO_LINES.test(layer),
  );
  const stops = drawing.findings.filter(({ severity }) => severity === 'stop');
  const none =
    curves.length === 0 && stops.length === 0
      ? [finding('returned-without-lines', { curves: drawing.curves.length })]
      : [];
  return {
    paths: curves.map(({ closed, spans }) => ({ closed, spans })),
    findings: [...stops, ...none],
    from: drawing.origin ?? HERE,
  };
}

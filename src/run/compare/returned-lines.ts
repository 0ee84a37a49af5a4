/**
 * Lines that came back in a scribe drawing or a machine program, in millimetres in the frame of the plan. Of a drawing those on layers
 * SCRIBE-… where there are such, else all that are not on layers of outlines and notes.
 */
import { readDrawing } from '#drawing/read/read-drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import { movePath } from '#geometry/spans/move-spans.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { readProgram } from './read-program.ts';

export interface ReturnedFile {
  readonly kind: 'scribe' | 'program';
  /** As the engineer named it, for words. */
  readonly name: string;
  readonly bytes: Uint8Array;
}

export interface ReturnedLines {
  readonly paths: readonly Path[];
  /** A `stop` among them: the file could not be used. */
  readonly findings: readonly Finding[];
}

interface Frame {
  /** Of the plan's drawing: counts where the file itself names none. */
  readonly unit: LengthUnit;
  /** mm: where the frame of the plan has its origin in the drawing's own. */
  readonly origin: Point;
}

export function returnedLines(file: ReturnedFile, { unit, origin }: Frame): ReturnedLines {
  const { paths, findings, from } = file.kind === 'program' ? fromProgram(file) : fromDrawing(file, unit);
  const by = { x: from.x - origin.x, y: from.y - origin.y };
  const moved = by.x === 0 && by.y === 0 ? paths : paths.map((path) => movePath(path, by));
  return {
    paths: moved,
    findings: findings.map((each) => ({ ...each, place: { ...each.place, file: file.name } })),
  };
}

interface Read extends ReturnedLines {
  readonly from: Point;
}

const HERE: Point = { x: 0, y: 0 };

function fromProgram({ bytes }: ReturnedFile): Read {
  // Words of a program are ASCII; any other byte can only stand in a comment.
  const text = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return { ...readProgram(text), from: HERE };
}

const SCRIBE_LAYER = /^SCRIBE(-|$)/i;
/** Layers of our own files, and of most others, that hold nothing to cut. */
const NO_LINES = /^(OUTLINE|SHEET|EDGES|NOTES?|TEXT|WORDS|SCALE|MARK.*|HOLES|DIM.*|DEFPOINTS)$/i;

/** What the reader says of the file counts only where it stops it, or nothing is left to compare. */
function fromDrawing({ bytes }: ReturnedFile, unit: LengthUnit): Read {
  const stated = readDrawing(bytes);
  const drawing = stated.unit === undefined ? readDrawing(bytes, { unit }) : stated;
  const isScribed = drawing.curves.some(({ layer }) => SCRIBE_LAYER.test(layer));
  const curves = drawing.curves.filter(({ layer }) =>
    isScribed ? SCRIBE_LAYER.test(layer) : !NO_LINES.test(layer),
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

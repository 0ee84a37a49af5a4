/**
 * A section as a DXF, in millimetres at its true size: x along the cut from its start, y up, 0 the as-received surface. The front
 * within 2 µm of its chords; no ellipses. SHEET the faces as received, FRONT the etched surface, ASKED what was required, TAKEN-01,
 * TAKEN-02, … what each stage took, NOTES (off) where the cut lies and which plan it belongs to.
 */

import type { DrawingOut, OutlineOut } from '#drawing/write/drawing-out.ts';
import { writeDrawing } from '#drawing/write/write-drawing.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import { hypot } from '#maths/hypot.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { CAUTIONS } from './cautions.ts';
import { nearestColorNumber } from './color-number.ts';
import type { NamedSection } from './named-section.ts';
import { bandsOf, leftRuns, metalRuns, type SectionPoints, shownFronts } from './section-shapes.ts';
import { stageLayer } from './stage-layer.ts';

export interface SectionDrawingInput {
  /** Of the job. */
  readonly name: string;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
  readonly section: NamedSection;
  readonly stages: readonly Stage[];
}

export function sectionDrawing(input: SectionDrawingInput): Uint8Array {
  const { section, stages } = input;
  const outlines: OutlineOut[] = [];
  const hasFar = section.points.some(({ far }) => far !== undefined);
  for (const run of metalRuns(section.points)) {
    outlines.push(outlineOf('SHEET', sheetAround(run), true));
    stages.forEach(({ number }, index) => {
      for (const band of bandsOf(run, index)) {
        const top = band.map(({ distance, top: depth }) => at(distance, depth));
        const bottom = band.map(({ distance, bottom: depth }) => at(distance, depth));
        outlines.push(outlineOf(stageLayer('TAKEN', number), [...top, ...bottom.reverse()], true));
      }
    });
    for (const left of leftRuns(run)) {
      const fronts = left.map((point) => ({ distance: point.distance, ...shownFronts(point) }));
      outlines.push(
        outlineOf(
          'FRONT',
          fronts.map(({ distance, near }) => at(distance, near.depth)),
          false,
        ),
      );
      if (!hasFar) continue;
      const far = fronts.map((each) => at(each.distance, each.far.depth));
      outlines.push(outlineOf('FRONT', straightened(far), false));
    }
  }
  for (const line of askedLines(section)) outlines.push(outlineOf('ASKED', line, false));
  for (const line of farAskedLines(section)) outlines.push(outlineOf('ASKED', line, false));
  return writeDrawing({ unit: 'mm', layers: layersOf(stages), outlines, notes: notesOf(input) });
}

function at(distance: number, depth: number): Point {
  return { x: distance, y: -depth };
}

/** Both faces as received, which slope away from each other where the sheet tapers. */
function sheetAround(run: SectionPoints): Point[] {
  const far = run.map((point) => at(point.distance, shownFronts(point).sheet));
  const [first, last] = [itemAt(run, 0), itemAt(run, run.length - 1)];
  return [at(first.distance, 0), at(last.distance, 0), ...straightened(far).reverse()];
}

/** Without the places that lie on the straight between their neighbours, to a nanometre. */
function straightened(points: readonly Point[]): Point[] {
  const kept: Point[] = [];
  points.forEach((point, index) => {
    const [before, next] = [kept.at(-1), points[index + 1]];
    if (before !== undefined && next !== undefined && isBetween(before, point, next)) return;
    kept.push(point);
  });
  return kept;
}

function isBetween(before: Point, point: Point, next: Point): boolean {
  if (next.x <= before.x) return false;
  const share = (point.x - before.x) / (next.x - before.x);
  return Math.abs(before.y + (next.y - before.y) * share - point.y) < ROUNDING;
}

/** As long as metal joins, with the steps between two depths required. */
function askedLines({ asked }: NamedSection): Point[][] {
  const lines: Point[][] = [];
  let joins = false;
  for (const { start, end, depth } of asked) {
    if (depth !== undefined) {
      if (!joins) lines.push([]);
      lines.at(-1)?.push(at(start, depth.start), at(end, depth.end));
    }
    joins = depth !== undefined;
  }
  return lines;
}

/** The same of the far face, up from its own surface, as long as metal joins. */
function farAskedLines({ points }: NamedSection): Point[][] {
  return metalRuns(points).flatMap((run) => {
    const line = run.flatMap(({ distance, far }) =>
      far?.target === undefined ? [] : [at(distance, far.sheet - far.target)],
    );
    return line.length === 0 ? [] : [straightened(line)];
  });
}

/** Two places that are written alike are one vertex. */
function outlineOf(layer: string, points: readonly Point[], closed: boolean): OutlineOut {
  const apart = points.filter((point, index) => {
    const before = index === 0 ? (closed ? points.at(-1) : undefined) : points[index - 1];
    return before === undefined || hypot(point.x - before.x, point.y - before.y) > ROUNDING;
  });
  return { layer, closed, vertices: apart.map(({ x, y }) => [x, y, 0]) };
}

/** 7 is ink: black on white, white on black; 8 grey; 1 red, against which no stage's layer is confused with what was required. */
function layersOf(stages: readonly Stage[]): DrawingOut['layers'] {
  const taken = new Set<number>();
  return [
    { name: 'SHEET', color: 8, shown: true },
    ...stages.map(({ number, color }) => {
      const nearest = nearestColorNumber(color, taken);
      taken.add(nearest);
      return { name: stageLayer('TAKEN', number), color: nearest, shown: true };
    }),
    { name: 'FRONT', color: 7, shown: true },
    { name: 'ASKED', color: 1, shown: true },
    { name: 'NOTES', color: 8, shown: false },
  ];
}

function notesOf({ name, planHash, section, stages }: SectionDrawingInput): DrawingOut['notes'] {
  const { from, to } = section;
  const length = hypot(to.x - from.x, to.y - from.y);
  const deepest = section.points.reduce((most, { depth, thickness }) => Math.max(most, depth + thickness), 0);
  const height = Math.max(1, length / 80);
  const place = ({ x, y }: Point): string => `${x.toFixed(3)}, ${y.toFixed(3)}`;
  const texts = [
    `Section ${section.name}: ${name}`,
    `Plan ${planHash}`,
    `From ${place(from)} to ${place(to)} mm in the drawing. Unit: mm, true size; front within 0.002 mm.`,
    ...stages.map(({ number, level }) => `${stageLayer('TAKEN', number)}: to ${level.toFixed(3)} mm`),
    itemAt(CAUTIONS, 0),
  ];
  return texts.map((text, index) => ({
    layer: 'NOTES',
    at: [0, -deepest - height * 1.8 * (index + 2)],
    height,
    text,
  }));
}

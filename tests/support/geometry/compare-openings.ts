/** Openings and pieces of a plan against the independent engine, place by place along both engines' borders. */
import { expect } from 'vitest';
import { isInside, makeInsideIndex } from '#geometry/loops/inside-index.ts';
import { type Loop, pointAlong, tangentAlong } from '#geometry/span.ts';
import {
  bufferedOpenings,
  bufferedWindows,
  type OracleOpenings,
  type Place,
} from '#oracle/buffered-openings.ts';
import { allowance, type Undercut } from '#plan/allowance.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { tessellate } from './tessellate.ts';

/** Borders may differ by what the contract allows a scribe line to be off, mm. */
const TOLERANCE = 0.005;

/** Expects every opening and piece to agree with the oracle's within the tolerance. */
export function compareOpenings({ regions, stages, masking }: EtchPlan, undercut: Undercut): void {
  const faces = regions.map(({ level, loops }) => ({
    level,
    rings: loops.map((loop) => tessellate(loop, 0.0004)),
  }));
  const oracle =
    masking === 're-mask'
      ? bufferedWindows(faces, {
          factor: undercut.etchFactor[0]?.[1] ?? Number.NaN,
          share: { 'shallow-edge': 0, 'mid-wall': 0.5, 'deep-foot': 1 }[undercut.edgeDatum],
        })
      : bufferedOpenings(faces, (level, depth) => allowance(undercut, { level, depth }));
  expect(stages.map(({ level }) => level)).toEqual(oracle.stages.map(({ level }) => level));
  const ours = stages.flatMap((stage) => besideLoops([...stage.piece, ...stage.opening]));
  const places = [...ours, ...besideRings(oracle)];
  for (const [index, stage] of stages.entries()) {
    const expected = oracle.stages[index];
    if (expected === undefined) continue;
    const [opening, piece] = [makeInsideIndex(stage.opening), makeInsideIndex(stage.piece)];
    const isInOpening = ({ x, y }: Place) => isInside(opening, x, y);
    const isInPiece = ({ x, y }: Place) => isInside(piece, x, y);
    for (const place of places) {
      const where = `(${place.x}, ${place.y}) at level ${stage.level}`;
      expect(agree(isInOpening, expected.isInOpening, place), `opening at ${where}`).toBe(true);
      expect(agree(isInPiece, expected.isInPiece, place), `piece at ${where}`).toBe(true);
    }
  }
}

type IsInside = (place: Place) => boolean;

const DIRECTIONS = Array.from({ length: 16 }, (_, index) => (index * Math.PI) / 8);

/** Whether the oracle says the same of the place, or of one within the tolerance. */
function agree(ours: IsInside, oracle: IsInside, place: Place): boolean {
  const isInside = ours(place);
  if (oracle(place) === isInside || isInSliver(ours, place)) return true;
  return [0.1, 0.2, 0.4, 0.7, 1].some((share) =>
    DIRECTIONS.some((angle) => oracle(stepped(place, angle, share * TOLERANCE)) === isInside),
  );
}

/** Whether the place lies in a sliver thinner than the oracle's chords are true: where two borders cross at a grazing angle. */
function isInSliver(ours: IsInside, place: Place): boolean {
  const isInside = ours(place);
  return DIRECTIONS.some((angle) =>
    [angle, angle + Math.PI].every((each) => ours(stepped(place, each, 0.001)) !== isInside),
  );
}

function stepped({ x, y }: Place, angle: number, by: number): Place {
  return { x: x + by * Math.cos(angle), y: y + by * Math.sin(angle) };
}

/** Places just beside our own borders, on both sides: a border that is off by more than the tolerance shows here. */
function besideLoops(loops: readonly Loop[]): Place[] {
  return loops.flat().flatMap((span) =>
    [0.03, 0.5, 0.97].flatMap((share) => {
      const along = tangentAlong(span, share);
      const { x, y } = pointAlong(span, share);
      return [-0.0005, 0.0005].map((side) => ({ x: x - along.y * side, y: y + along.x * side }));
    }),
  );
}

/** Places beside the oracle's borders: an opening that we lack shows here. */
function besideRings({ borders }: OracleOpenings): Place[] {
  return borders.flat().flatMap((ring) =>
    ring.flatMap(([x, y], index) =>
      index % 25 === 0
        ? [
            { x: x - 0.006, y: y - 0.006 },
            { x: x + 0.006, y: y + 0.006 },
          ]
        : [],
    ),
  );
}

/**
 * Lines that leave most of a plan's pieces uncut may be those of the opposite hand. They are tried mirrored about a line that stands upright in
 * the drawing: where our own files have it, in the middle of the sheet, and where the lines then lie over those of the plan.
 */
import { boxOfSpans } from '#geometry/box.ts';
import type { Path } from '#geometry/span.ts';
import { mirrorPath } from '#geometry/spans/mirror-spans.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type AssignedPieces, assignPieces, piecesOf } from './assign-pieces.ts';

export interface FittedLines {
  readonly paths: readonly Path[];
  readonly assigned: AssignedPieces;
  /** x of the line about which they had to be mirrored, mm; undefined where they fit as they came. */
  readonly mirroredAbout?: number;
}

interface Setting {
  readonly joinTolerance: number;
  /** x where files of the opposite hand have their mirror line, mm. */
  readonly usualMirror: number;
}

/** Of what came, and came mirrored, what leaves fewer pieces out: mirrored only where that mends most of what is missing. */
export function findHand(
  plan: EtchPlan,
  paths: readonly Path[],
  { joinTolerance, usualMirror }: Setting,
): FittedLines {
  const assigned = assignPieces(plan, paths, joinTolerance);
  const pieces = plan.stages.reduce((sum, { piece }) => sum + piecesOf(piece).length, 0);
  const missing = missingIn(assigned);
  if (missing <= pieces / 2) return { paths, assigned };
  const lines = plan.stages.flatMap((stage) => stage.lines.flatMap(({ spans }) => spans));
  const [came, planned, sheet] = [paths.flatMap(({ spans }) => spans), lines, plan.sheet.flat()].map(
    middleOf,
  );
  const mirrors = [
    usualMirror,
    ...(sheet === undefined ? [] : [sheet]),
    ...(came === undefined || planned === undefined ? [] : [(came + planned) / 2]),
  ];
  const fits = mirrors
    .map((mirroredAbout): Required<FittedLines> => {
      const turned = paths.map((path) => mirrorPath(path, mirroredAbout));
      return { paths: turned, assigned: assignPieces(plan, turned, joinTolerance), mirroredAbout };
    })
    .sort((a, b) => missingIn(a.assigned) - missingIn(b.assigned));
  const [best] = fits;
  return best !== undefined && missingIn(best.assigned) < missing / 2 ? best : { paths, assigned };
}

function missingIn({ findings }: AssignedPieces): number {
  return findings.filter(({ code }) => code === 'returned-piece-missing').length;
}

/** x of the middle; undefined where there is nothing. */
function middleOf(spans: Parameters<typeof boxOfSpans>[0]): number | undefined {
  const { minX, maxX } = boxOfSpans(spans);
  return minX > maxX ? undefined : (minX + maxX) / 2;
}

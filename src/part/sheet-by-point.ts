/**
 * The sheet where no layer says which outline is its border: all that lies inside the outermost closed outline, or inside the
 * outline around a point. Outlines that touch count as one tangle, whose outer border is what counts; of several that lie
 * side by side the largest is the outermost. Cost: linear in the edges.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { type Arrangement, type HalfEdge, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea } from '#geometry/span.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { PointedPlace, SheetChoice } from '#job/job.ts';

export interface FacesChosen {
  /** By face: true for metal. */
  readonly isMetal: readonly boolean[];
  /** Finding: `sheet-point-unmet`. */
  readonly findings: readonly Finding[];
}

export function sheetByPoint(arrangement: Arrangement, choice: SheetChoice): FacesChosen {
  const none = { isMetal: arrangement.faces.map(() => false) };
  if (arrangement.faces.length === 1) return { ...none, findings: [] };
  if (choice === 'outermost') {
    return { isMetal: facesInside(arrangement, largestOutside(arrangement)), findings: [] };
  }
  const face = faceAt(arrangement, choice.at);
  if (face === 'on-line' || face === OUTSIDE) {
    return { ...none, findings: [unmet(choice, 'outline', face === 'on-line')] };
  }
  return { isMetal: facesInside(arrangement, borderAround(arrangement, face)), findings: [] };
}

/** Faces that are holes through the sheet, by the points that name them. */
export function punchHoles(
  arrangement: Arrangement,
  isMetal: readonly boolean[],
  holes: readonly PointedPlace[],
): FacesChosen {
  const punched = [...isMetal];
  const findings: Finding[] = [];
  for (const hole of holes) {
    const face = faceAt(arrangement, hole.at);
    if (face !== 'on-line' && isMetal[face] === true) punched[face] = false;
    // A hole in what is no metal anyway is as wanted.
    else if (face === 'on-line' || face === OUTSIDE) findings.push(unmet(hole, 'hole', face === 'on-line'));
  }
  return { isMetal: punched, findings };
}

function unmet({ at, path }: PointedPlace, names: 'outline' | 'hole', isOnLine: boolean): Finding {
  return finding('sheet-point-unmet', { names, at: [at.x, at.y], isOnLine }, { path, at });
}

function faceAt({ faces }: Arrangement, point: Point): number | 'on-line' {
  // The outside comes first; where no other face holds the point it does.
  const { at, bordering } = locateAreas(faces.slice(OUTSIDE + 1).map(({ loops }) => loops));
  return bordering(point, SCRIBE_ACCURACY).length > 0 ? 'on-line' : OUTSIDE + 1 + at(point);
}

type Border = readonly HalfEdge[];

function largestOutside({ faces }: Arrangement): Border {
  const { borders, loops } = itemAt(faces, OUTSIDE);
  const areas = loops.map((loop: Loop) => Math.abs(loopArea(loop)));
  const largest = areas.reduce((most, area) => Math.max(most, area), 0);
  return itemAt(borders, areas.indexOf(largest));
}

/** The outer border of the tangle of lines that the outer border of a face belongs to. */
function borderAround({ edges, faces, vertices }: Arrangement, face: number): Border {
  const tangles = disjointSets(vertices.length);
  for (const { start, end } of edges) tangles.unite(start, end);
  const tangleOf = (border: Border): number => tangles.find(itemAt(edges, itemAt(border, 0).edge).start);
  const own = tangleOf(itemAt(itemAt(faces, face).borders, 0));
  // Seen from outside it is a hole of the face that the tangle lies in.
  for (const [index, { borders }] of faces.entries()) {
    const holes = index === OUTSIDE ? borders : borders.slice(1);
    const found = holes.find((border) => tangleOf(border) === own);
    if (found !== undefined) return found;
  }
  throw new Error('every tangle of lines has an outer border');
}

/** True for the faces that cannot be reached from outside without crossing the border. */
function facesInside({ edges, faces }: Arrangement, border: Border): boolean[] {
  const walls = new Set(border.map(({ edge }) => edge));
  const cells = disjointSets(faces.length);
  edges.forEach(({ left, right }, edge) => {
    if (!walls.has(edge)) cells.unite(left, right);
  });
  // The tangle may lie inside another one: what is outside it is where its border is looked at from.
  const first = itemAt(border, 0);
  const { left, right } = itemAt(edges, first.edge);
  const beyond = cells.find(first.forward ? left : right);
  return faces.map((_, face) => face !== OUTSIDE && cells.find(face) !== beyond);
}

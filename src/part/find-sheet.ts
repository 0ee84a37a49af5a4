/**
 * Which faces are metal. Outlines count by nesting: inside one is metal, inside two is a cutout, and so on. A closed curve is
 * crossed into and out of, whatever it shares with its neighbours; outlines drawn as loose lines count as one for each
 * connected tangle of them, since no line then tells which side of it is in.
 */
import type { DrawnCurve } from '#drawing/drawing.ts';
import { type Arrangement, OUTSIDE } from '#geometry/arrangement.ts';
import { itemAt } from '#geometry/assert.ts';
import { disjointSets } from '#geometry/disjoint-sets.ts';
import { nestCycles } from '#geometry/nest-cycles.ts';
import { type Loop, reverseSpan } from '#geometry/span.ts';
import { traceFaces } from '#geometry/trace-faces.ts';

export interface OutlinedPart {
  readonly arrangement: Arrangement;
  readonly curves: readonly DrawnCurve[];
  /** Indices of the curves that are outlines. */
  readonly outline: readonly number[];
}

/** Nesting depth parity by face: true for metal. */
export function findMetal({ arrangement, curves, outline }: OutlinedPart): boolean[] {
  const isClosed = (number: number) => itemAt(curves, number).closed;
  const closed = new Set(outline.filter(isClosed));
  const inClosed = parityOfClosed(arrangement, drawnOnce(arrangement, closed));
  const depth = depthInLoose(arrangement, new Set(outline.filter((number) => !closed.has(number))));
  return arrangement.faces.map((_, face) => (itemAt(depth, face) + itemAt(inClosed, face)) % 2 === 1);
}

/** One of all curves that run the same way, edge for edge: an outline drawn twice is crossed into once. */
function drawnOnce({ edges }: Arrangement, closed: ReadonlySet<number>): ReadonlySet<number> {
  const ways = new Map<number, number[]>();
  edges.forEach(({ sources }, edge) => {
    for (const source of sources) {
      if (!closed.has(source)) continue;
      const way = ways.get(source);
      if (way === undefined) ways.set(source, [edge]);
      else way.push(edge);
    }
  });
  return new Set(new Map([...ways].map(([source, way]) => [way.join(' '), source])).values());
}

/** 1 for faces inside an odd number of closed curves. */
function parityOfClosed(arrangement: Arrangement, closed: ReadonlySet<number>): number[] {
  const neighbours = neighboursOf(arrangement);
  const parity = arrangement.faces.map(() => -1);
  parity[OUTSIDE] = 0;
  const reached = [OUTSIDE];
  for (let face = reached.pop(); face !== undefined; face = reached.pop()) {
    for (const { edge, other } of itemAt(neighbours, face)) {
      if (parity[other] !== -1) continue;
      const crossed = itemAt(arrangement.edges, edge).sources.filter((source) => closed.has(source)).length;
      parity[other] = (itemAt(parity, face) + crossed) % 2;
      reached.push(other);
    }
  }
  return parity;
}

interface Neighbour {
  readonly edge: number;
  readonly other: number;
}

function neighboursOf({ edges, faces }: Arrangement): Neighbour[][] {
  const neighbours: Neighbour[][] = faces.map(() => []);
  edges.forEach(({ left, right }, edge) => {
    itemAt(neighbours, left).push({ edge, other: right });
    itemAt(neighbours, right).push({ edge, other: left });
  });
  return neighbours;
}

/** In how many tangles of loose outline lines each face lies. */
function depthInLoose(arrangement: Arrangement, loose: ReadonlySet<number>): number[] {
  const { edges, faces, vertices } = arrangement;
  const isLoose = edges.map(({ sources }) => sources.some((source) => loose.has(source)));
  const cells = disjointSets(faces.length);
  const tangles = disjointSets(vertices.length);
  edges.forEach(({ left, right, start, end }, edge) => {
    if (isLoose[edge]) tangles.unite(start, end);
    else cells.unite(left, right);
  });
  const tanglesAt = new Map<number, Set<number>>();
  const cellsAt = new Map<number, Set<number>>();
  edges.forEach(({ left, right, start }, edge) => {
    if (!isLoose[edge]) return;
    const tangle = tangles.find(start);
    for (const cell of [cells.find(left), cells.find(right)]) {
      addTo(tanglesAt, cell, tangle);
      addTo(cellsAt, tangle, cell);
    }
  });
  const depthOfCell = new Map([[cells.find(OUTSIDE), 0]]);
  const seen = new Set<number>();
  for (const [cell, depth] of depthOfCell) {
    for (const tangle of tanglesAt.get(cell) ?? []) {
      if (seen.has(tangle)) continue;
      seen.add(tangle);
      for (const inner of cellsAt.get(tangle) ?? []) {
        if (!depthOfCell.has(inner)) depthOfCell.set(inner, depth + 1);
      }
    }
  }
  return faces.map((_, face) => depthOfCell.get(cells.find(face)) ?? 0);
}

function addTo(sets: Map<number, Set<number>>, key: number, item: number): void {
  const set = sets.get(key);
  if (set === undefined) sets.set(key, new Set([item]));
  else set.add(item);
}

/** Border of all metal: outer loops first, then holes, metal on the left. */
export function sheetLoops({ edges, vertices }: Arrangement, isMetal: readonly boolean[]): Loop[] {
  const border = edges
    .filter(({ left, right }) => isMetal[left] !== isMetal[right])
    .map(({ span, start, end, left }) =>
      isMetal[left] === true ? { span, start, end } : { span: reverseSpan(span), start: end, end: start },
    );
  const faces = nestCycles(traceFaces(border, vertices.length), { edges: border, vertices });
  // Every border edge runs with metal on its left, so a face of metal is one that runs along them.
  const metal = faces.filter(({ borders }) => borders[0]?.[0]?.forward === true);
  return [
    ...metal.flatMap(({ loops }) => loops.slice(0, 1)),
    ...metal.flatMap(({ loops }) => loops.slice(1)),
  ];
}

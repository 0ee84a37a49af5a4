/**
 * Which faces are metal. Outlines count by nesting: inside one is metal, inside two is a cutout, and so on. A closed curve is
 * crossed into and out of, whatever it shares with its neighbours; closed curves that overlap, neither in the other, count as
 * one, and so do outlines drawn as loose lines for each connected tangle of them, since no line then shows which side of it is inside.
 */
import type { DrawnCurve } from '#drawing/drawing.ts';
import { type Arrangement, OUTSIDE } from '#geometry/arrangement/arrangement.ts';
import { nestCycles } from '#geometry/arrangement/nest-cycles.ts';
import { traceFaces } from '#geometry/arrangement/trace-faces.ts';
import { itemAt } from '#geometry/assert.ts';
import { type DisjointSets, disjointSets } from '#geometry/disjoint-sets.ts';
import { type Loop, reverseSpan } from '#geometry/span.ts';

export interface OutlinedPart {
  readonly arrangement: Arrangement;
  readonly curves: readonly DrawnCurve[];
  /** Indices of the curves that are outlines. */
  readonly outline: readonly number[];
}

export interface MetalFound {
  /** By face. */
  readonly isMetal: readonly boolean[];
  /** Closed outlines that overlap without one lying in the other, group by group: each counts as one outline. */
  readonly overlapping: readonly (readonly number[])[];
}

export function findMetal({ arrangement, curves, outline }: OutlinedPart): MetalFound {
  const isClosed = (number: number) => itemAt(curves, number).closed;
  const all = new Set(outline.filter(isClosed));
  const closed = drawnOnce(arrangement, all);
  const { depths, overlapping } = depthInClosed(arrangement, closed);
  const loose = depthInLoose(arrangement, new Set(outline.filter((number) => !all.has(number))), closed);
  const isMetal = arrangement.faces.map((_, face) => (itemAt(loose, face) + itemAt(depths, face)) % 2 === 1);
  return { isMetal, overlapping };
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

/** By face, in how many closed outlines it lies (odd or even is all that counts), those that overlap taken as one. */
function depthInClosed(
  arrangement: Arrangement,
  closed: ReadonlySet<number>,
): { readonly depths: readonly number[]; readonly overlapping: number[][] } {
  const neighbours = neighboursOf(arrangement);
  const overlapping = meetingCurves(arrangement, closed).flatMap((group) =>
    overlaps(new Map(group.map((curve) => [curve, insideOf(arrangement, neighbours, new Set([curve]))]))),
  );
  const inGroups = new Set(overlapping.flat());
  const alone = new Set([...closed].filter((curve) => !inGroups.has(curve)));
  const depths = insideOf(arrangement, neighbours, alone);
  for (const group of overlapping) {
    const each = group.map((curve) => insideOf(arrangement, neighbours, new Set([curve])));
    depths.forEach((depth, face) => {
      depths[face] = depth + (each.some((inside) => inside[face] === 1) ? 1 : 0);
    });
  }
  return { depths, overlapping };
}

/** Closed curves that come to a common vertex, in groups of two or more. */
function meetingCurves({ edges, vertices }: Arrangement, closed: ReadonlySet<number>): number[][] {
  const curves = [...closed];
  const numberOf = new Map(curves.map((curve, number) => [curve, number]));
  const sets = disjointSets(curves.length);
  const firstAt: (number | undefined)[] = vertices.map(() => undefined);
  for (const { sources, start, end } of edges) {
    for (const source of sources) {
      const number = numberOf.get(source);
      if (number === undefined) continue;
      for (const vertex of [start, end]) {
        const first = firstAt[vertex];
        if (first === undefined) firstAt[vertex] = number;
        else sets.unite(first, number);
      }
    }
  }
  return groupsOf(sets, curves);
}

/** Curves that overlap one another without one lying in the other, in groups of two or more. */
function overlaps(insides: ReadonlyMap<number, readonly number[]>): number[][] {
  const curves = [...insides.keys()];
  const sets = disjointSets(curves.length);
  curves.forEach((curve, i) => {
    for (let j = 0; j < i; j++) {
      const [one, other] = [insides.get(curve) ?? [], insides.get(itemAt(curves, j)) ?? []];
      const has = (inOne: number, inOther: number) =>
        one.some((inside, face) => inside === inOne && other[face] === inOther);
      if (has(1, 1) && has(1, 0) && has(0, 1)) sets.unite(i, j);
    }
  });
  return groupsOf(sets, curves);
}

function groupsOf(sets: DisjointSets, items: readonly number[]): number[][] {
  const groups = new Map<number, number[]>();
  items.forEach((item, number) => {
    const root = sets.find(number);
    groups.set(root, [...(groups.get(root) ?? []), item]);
  });
  return [...groups.values()].filter(({ length }) => length > 1);
}

/** 1 for faces inside an odd number of the closed curves. */
function insideOf(
  arrangement: Arrangement,
  neighbours: readonly (readonly Neighbour[])[],
  closed: ReadonlySet<number>,
): number[] {
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

/** In how many tangles of loose outline lines each face lies; a tangle that only repeats closed outlines is none. */
function depthInLoose(
  arrangement: Arrangement,
  loose: ReadonlySet<number>,
  closed: ReadonlySet<number>,
): number[] {
  const { edges, faces, vertices } = arrangement;
  const isLoose = looseEdges(arrangement, loose, closed);
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

function looseEdges(
  { edges, vertices }: Arrangement,
  loose: ReadonlySet<number>,
  closed: ReadonlySet<number>,
): boolean[] {
  const isLoose = edges.map(({ sources }) => sources.some((source) => loose.has(source)));
  const tangles = disjointSets(vertices.length);
  edges.forEach(({ start, end }, edge) => {
    if (isLoose[edge]) tangles.unite(start, end);
  });
  const ofItsOwn = new Set(
    edges.flatMap(({ start, sources }, edge) =>
      isLoose[edge] && !sources.some((source) => closed.has(source)) ? [tangles.find(start)] : [],
    ),
  );
  return edges.map(({ start }, edge) => isLoose[edge] === true && ofItsOwn.has(tangles.find(start)));
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

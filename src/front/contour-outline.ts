/**
 * A contour as mesh vertices: each piece a chain of vertices, pieces that meet sharing one, chains linked into rings.
 * Arcs are divided at absolute angles, whole fractions of a turn by powers of two, so that arcs about one centre have
 * their vertices on the same rays at every depth: the bands between contours come out regular and never cross.
 */

import { itemAt } from '#geometry/assert.ts';
import { acos } from '#maths/arc-cosine.ts';
import { cos, sin } from '#maths/sine.ts';
import { livePieces, nodesOf } from './chain-pieces.ts';
import type { ContourPiece } from './contour-pieces.ts';
import { joinStraight } from './join-straight.ts';
import { addVertex, type MeshDraft } from './mesh-draft.ts';
import { partTouching, turnAt } from './part-touching.ts';

/** A run of vertices from one node to the next. */
export interface Chain {
  readonly vertices: readonly number[];
  /** Index of the stage whose front it is; -1 on the sheet's border. */
  readonly stage: number;
}

/** A closed run of vertices; the first is not repeated. */
export interface Ring {
  readonly vertices: readonly number[];
  /** Stage index of the edge that starts at each vertex. */
  readonly stages: readonly number[];
}

export interface Outline {
  readonly depth: number;
  /** Border with the floor at this depth counted in, and without; the same array where there is no floor. */
  readonly withFloor: readonly Chain[];
  readonly withoutFloor: readonly Chain[];
  /** Vertices where the contour meets the clipping border, with the border's piece. */
  readonly landings: readonly { readonly vertex: number; readonly border: ContourPiece }[];
}

/** Lays the pieces of one depth down as vertices. Chords leave arcs by at most `sag` mm. */
export function outlineOf(
  draft: MeshDraft,
  pieces: readonly ContourPiece[],
  { depth, z, sag }: { depth: number; z: number; sag: number },
): Outline {
  const nodes = nodesOf(pieces);
  const isBorder = pieces.map(({ spread }) => spread.feature.stage < 0);
  const anchors = new Map<number, ContourPiece>();
  pieces.forEach((piece, i) => {
    if (!isBorder[i]) return;
    anchors.set(itemAt(nodes.starts, i), piece);
    anchors.set(itemAt(nodes.ends, i), piece);
  });
  const isAnchored = (node: number): boolean => anchors.has(node);
  const vertices = new Map<number, number>();
  const vertexOf = (node: number): number => {
    let vertex = vertices.get(node);
    if (vertex === undefined) {
      vertex = addVertex(draft, itemAt(nodes.xs, node), itemAt(nodes.ys, node), z);
      vertices.set(node, vertex);
    }
    return vertex;
  };
  const chains = new Map<number, Chain & { readonly vertices: number[] }>();
  const chainOf = (i: number): Chain & { readonly vertices: number[] } => {
    let chain = chains.get(i);
    if (chain === undefined) {
      const piece = itemAt(pieces, i);
      const inner = chainInside(draft, piece, z, sag);
      chain = {
        vertices: [vertexOf(itemAt(nodes.starts, i)), ...inner, vertexOf(itemAt(nodes.ends, i))],
        stage: piece.spread.feature.stage,
      };
      chains.set(i, chain);
    }
    return chain;
  };
  const numbers = pieces.map((_, i) => i).filter((i) => !isBorder[i]);
  const wanted = (key: 'withFloor' | 'withoutFloor') =>
    livePieces(
      nodes,
      numbers.filter((i) => itemAt(pieces, i)[key]),
      isAnchored,
    ).live.map(chainOf);
  const hasFloor = pieces.some((piece) => piece.withFloor !== piece.withoutFloor);
  const withFloor = wanted('withFloor');
  const withoutFloor = hasFloor ? wanted('withoutFloor') : withFloor;
  const fixed = new Set([...anchors.keys()].map((node) => vertices.get(node)));
  partTouching(draft, withFloor, withoutFloor, (vertex) => fixed.has(vertex));
  const landings = [...anchors].flatMap(([node, border]) => {
    const vertex = vertices.get(node);
    return vertex === undefined ? [] : [{ vertex, border }];
  });
  return {
    depth,
    ...joinStraight(draft, { withFloor, withoutFloor }, (vertex) => fixed.has(vertex)),
    landings,
  };
}

/** Vertices inside a piece: none on a line; on an arc those at whole fractions of a turn, and at least one. */
function chainInside(draft: MeshDraft, { spread, from, to }: ContourPiece, z: number, sag: number): number[] {
  if (spread.radius === 0) return [];
  const { feature, radius } = spread;
  const first = feature.from + feature.sweep * from;
  const last = feature.from + feature.sweep * to;
  return turnsBetween(first, last, radius, sag).map((angle) =>
    addVertex(draft, feature.cx + radius * cos(angle), feature.cy + radius * sin(angle), z),
  );
}

/** Angles strictly between two at which an arc is divided; never none, so that two arcs cannot fall into one chord. */
export function turnsBetween(first: number, last: number, radius: number, sag: number): number[] {
  const step = (2 * Math.PI) / divisionsOf(radius, sag);
  const way = Math.sign(last - first);
  const angles: number[] = [];
  // A vertex nearer to an end than a thousandth of a step would only make a sliver.
  const margin = step / 1000;
  let k = way > 0 ? Math.ceil((first + margin) / step) : Math.floor((first - margin) / step);
  while (way * (last - k * step) > margin) {
    angles.push(k * step);
    k += way;
  }
  return angles.length === 0 ? [(first + last) / 2] : angles;
}

/** Chords to a full turn: a power of two, at least 8. */
function divisionsOf(radius: number, sag: number): number {
  if (radius <= sag) return 8;
  const needed = Math.PI / acos(1 - sag / radius);
  let divisions = 8;
  while (divisions < needed) divisions *= 2;
  return divisions;
}

export function reverseRing({ vertices, stages }: Ring): Ring {
  const count = vertices.length;
  return {
    vertices: vertices.map((_, i) => itemAt(vertices, count - 1 - i)),
    stages: stages.map((_, i) => itemAt(stages, (2 * count - 2 - i) % count)),
  };
}

export function reverseChain({ vertices, stage }: Chain): Chain {
  return { vertices: [...vertices].reverse(), stage };
}

/** Rings from chains; where rings touch at a vertex each turns as sharply left as it can, so that none crosses another. */
export function ringsOf(draft: MeshDraft, chains: readonly Chain[]): Ring[] {
  const leaving = new Map<number, Chain[]>();
  for (const chain of chains) {
    const start = itemAt(chain.vertices, 0);
    const list = leaving.get(start);
    if (list === undefined) leaving.set(start, [chain]);
    else list.push(chain);
  }
  const rings: Ring[] = [];
  for (const first of chains) {
    if (!take(leaving, first)) continue;
    const vertices: number[] = [];
    const stages: number[] = [];
    for (let chain: Chain | undefined = first; chain !== undefined; ) {
      for (let i = 0; i + 1 < chain.vertices.length; i++) {
        vertices.push(itemAt(chain.vertices, i));
        stages.push(chain.stage);
      }
      chain = nextChain(draft, leaving, chain, first);
    }
    rings.push({ vertices, stages });
  }
  return rings;
}

function take(leaving: Map<number, Chain[]>, chain: Chain): boolean {
  const list = leaving.get(itemAt(chain.vertices, 0));
  const at = list?.indexOf(chain) ?? -1;
  if (at < 0) return false;
  list?.splice(at, 1);
  return true;
}

/** The chain to follow after one; undefined when the ring is back at its start. */
function nextChain(
  draft: MeshDraft,
  leaving: Map<number, Chain[]>,
  chain: Chain,
  first: Chain,
): Chain | undefined {
  const end = itemAt(chain.vertices, chain.vertices.length - 1);
  const isHome = end === itemAt(first.vertices, 0);
  const choices = leaving.get(end) ?? [];
  if (choices.length === 0) return undefined;
  if (choices.length === 1 && !isHome) return choices.pop();
  const before = itemAt(chain.vertices, chain.vertices.length - 2);
  const candidates = isHome ? [...choices, first] : choices;
  const best = candidates.reduce((a, b) =>
    turnAt(draft, before, end, itemAt(b.vertices, 1)) > turnAt(draft, before, end, itemAt(a.vertices, 1))
      ? b
      : a,
  );
  if (best === first) return undefined;
  take(leaving, best);
  return best;
}

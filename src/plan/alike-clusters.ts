/**
 * Clusters that are each other moved, turned by quarter turns or turned over: what the first of them is opened to is, moved the same way,
 * what all are opened to. They are told by their borders to a picometre, a thousandth of what any line is rounded to. A cluster that
 * touches the sheet's edge is like none: what lies beyond the edge counts, too. Near-linear in the number of edges.
 */
import type { HalfEdges } from '#geometry/arrangement/half-edges.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { asOnGrid } from '#geometry/grow/parallel-loops.ts';
import { listFor } from '#geometry/list-for.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, loopArea, type Path, reverseSpans, type Span, spanLength } from '#geometry/span.ts';
import { movedPoint, movedSpan, type RigidMotion } from '#geometry/spans/rigid-motion.ts';
import type { Cluster } from './find-clusters.ts';
import type { OpenedCluster } from './opened-cluster.ts';

/** Steps of a millimetre in which borders are compared, and their lengths before that. */
const PICOMETRES = 1e9;
const NANOMETRES = 1e6;

/** A quarter turn or none, of the cluster as it lies or turned over. */
type Pose = Pick<RigidMotion, 'isMirrored' | 'cos' | 'sin'>;

const AS_IT_LIES: Pose = { isMirrored: false, cos: 1, sin: 0 };
const POSES: readonly Pose[] = [false, true].flatMap((isMirrored) =>
  [
    [1, 0],
    [0, 1],
    [-1, 0],
    [0, -1],
  ].map(([cos = 1, sin = 0]): Pose => ({ isMirrored, cos, sin })),
);

/** What clusters have in common that are alike but for what is asked of their faces, and how each lies. */
export interface ClusterShape {
  /** The same of all that are alike. */
  readonly text: string;
  /** Brings the cluster, about its middle, to how the text describes it. */
  readonly pose: Pose;
  readonly middle: Point;
  /** The cluster's faces in the order of the text. */
  readonly faces: readonly number[];
}

/**
 * By cluster; undefined where no other is like it.
 * @param isMetal whether a face of the arrangement is metal
 */
export function clusterShapes(
  walk: HalfEdges,
  clusters: readonly Cluster[],
  isMetal: (face: number) => boolean,
): readonly (ClusterShape | undefined)[] {
  const shapes: (ClusterShape | undefined)[] = clusters.map(() => undefined);
  const isInside = ({ halfEdges }: Cluster) => halfEdges.every((each) => isMetal(walk.rightOf(each)));
  const lengths = new Map<string, number[]>();
  clusters.forEach((cluster, at) => {
    if (isInside(cluster)) listFor(lengths, lengthsOf(walk, cluster)).push(at);
  });
  for (const places of lengths.values()) {
    if (places.length < 2) continue;
    const asTheyLie = new Map<string, { at: number; described: Described }[]>();
    for (const at of places) {
      const described = describedAs(walk, itemAt(clusters, at), AS_IT_LIES);
      listFor(asTheyLie, described.text).push({ at, described });
    }
    const isOneShape = asTheyLie.size === 1;
    for (const members of asTheyLie.values()) {
      const [first] = members;
      if (first === undefined) continue;
      const turned = isOneShape
        ? { ...first.described, pose: AS_IT_LIES }
        : leastOfPoses(walk, itemAt(clusters, first.at));
      const order = turned.faces.map((face) => first.described.faces.indexOf(face));
      for (const { at, described } of members) {
        const faces = order.map((each) => itemAt(described.faces, each));
        shapes[at] = { text: turned.text, pose: turned.pose, middle: described.middle, faces };
      }
    }
  }
  return shapes;
}

/** A cluster that is another one, an earlier one, moved. */
export interface Alike {
  /** The place of that one. */
  readonly first: number;
  readonly motion: RigidMotion;
  /** By face of that one, this one's. */
  readonly faceOf: ReadonlyMap<number, number>;
}

/**
 * By cluster; undefined for the first of each kind.
 * @param askedOf what is asked of a face, as text
 */
export function alikeClusters(
  shapes: readonly (ClusterShape | undefined)[],
  askedOf: (face: number) => string,
): readonly (Alike | undefined)[] {
  const firsts = new Map<string, { readonly place: number; readonly shape: ClusterShape }>();
  return shapes.map((shape, place): Alike | undefined => {
    if (shape === undefined) return undefined;
    const key = `${shape.faces.map(askedOf).join(' ')};${shape.text}`;
    const first = firsts.get(key);
    if (first === undefined) {
      firsts.set(key, { place, shape });
      return undefined;
    }
    return {
      first: first.place,
      motion: motionBetween(first.shape, shape),
      faceOf: new Map(first.shape.faces.map((face, at) => [face, itemAt(shape.faces, at)])),
    };
  });
}

/**
 * What another cluster was opened to, moved onto one that is like it.
 * @param origin of the grid on which the one would be opened
 */
export function placedCluster(
  opened: OpenedCluster,
  { motion, faceOf }: Alike,
  { faces, box, origin }: Pick<OpenedCluster, 'faces' | 'box'> & { readonly origin: Point },
): OpenedCluster {
  const moved = new Map<Loop, Loop>();
  const isTurned = motion.isMirrored || motion.cos !== 1;
  const spansAt = (spans: readonly Span[]): Span[] => {
    const there = spans.map((span) => movedSpan(motion, span));
    return motion.isMirrored ? reverseSpans(there) : there;
  };
  const loopAt = (loop: Loop): Loop => {
    const known = moved.get(loop);
    if (known !== undefined) return known;
    const there = isTurned ? begunAsOpened(spansAt(loop), origin) : spansAt(loop);
    moved.set(loop, there);
    return there;
  };
  return {
    faces,
    box,
    stages: opened.stages.map(({ level, piece, opening, lines, chords }) => ({
      level,
      piece: piece.map(loopAt),
      opening: opening.map(loopAt),
      lines: lines.map(
        ({ closed, spans }): Path => ({ closed, spans: closed ? loopAt(spans) : spansAt(spans) }),
      ),
      chords: chords.map((each) => movedPoint(motion, each)),
    })),
    closedFaces: opened.closedFaces.map((face) => faceOf.get(face) ?? face),
  };
}

/** Where it would begin had it been opened there: a knife starts at the same corner whatever else is on the sheet. */
function begunAsOpened(loop: Loop, origin: Point): Loop {
  return loopArea(loop) > 0 ? asOnGrid(loop, origin) : reverseSpans(asOnGrid(reverseSpans(loop), origin));
}

/** What a comparison of borders costs only those clusters that have as many edges of the same length in all. */
function lengthsOf(walk: HalfEdges, { faces, halfEdges }: Cluster): string {
  const length = halfEdges.reduce((sum, each) => sum + spanLength(walk.spanOf(each)), 0);
  return `${faces.length} ${halfEdges.length} ${Math.round(length * NANOMETRES)}`;
}

interface Described extends Pick<ClusterShape, 'text' | 'middle' | 'faces'> {}

/** The cluster's border in a pose, counted from its middle: edge by edge, in an order that follows from what it says. */
function describedAs(walk: HalfEdges, { halfEdges }: Cluster, pose: Pose): Described {
  const spans = halfEdges.map((halfEdge) => walk.spanOf(halfEdge));
  const { minX, minY, maxX, maxY } = boxOfSpans(spans);
  const middle = { x: (minX + maxX) / 2, y: (minY + maxY) / 2 };
  const motion = fromMiddle(pose, middle);
  const placed = (point: Point): string => {
    const { x, y } = movedPoint(motion, point);
    return `${Math.round(x * PICOMETRES)} ${Math.round(y * PICOMETRES)}`;
  };
  const edges = spans.map((span, at) => {
    // Turned over, the border runs the other way, so that its face stays on its left.
    const [from, to] = pose.isMirrored ? [span.end, span.start] : [span.start, span.end];
    const bend = span.kind === 'line' ? '' : ` ${placed(span.center)} ${Math.round(span.sweep * PICOMETRES)}`;
    return { text: `${placed(from)} ${placed(to)}${bend}`, face: walk.leftOf(itemAt(halfEdges, at)) };
  });
  edges.sort((a, b) => (a.text < b.text ? -1 : 1));
  const faces = [...new Set(edges.map(({ face }) => face))];
  const numbers = new Map(faces.map((face, number) => [face, number]));
  return { middle, faces, text: edges.map(({ text, face }) => `${text} ${numbers.get(face)}`).join(',') };
}

/** The pose whose description comes first of all. */
function leastOfPoses(walk: HalfEdges, cluster: Cluster): Described & { readonly pose: Pose } {
  const all = POSES.map((pose) => ({ pose, ...describedAs(walk, cluster, pose) }));
  return all.reduce((least, each) => (each.text < least.text ? each : least));
}

function fromMiddle(pose: Pose, middle: Point): RigidMotion {
  const { x, y } = movedPoint({ ...pose, shift: { x: 0, y: 0 } }, middle);
  return { ...pose, shift: { x: -x, y: -y } };
}

/** Into the pose that both are described in, and out of it again to where the other one lies. */
function motionBetween(from: ClusterShape, to: ClusterShape): RigidMotion {
  const isMirrored = from.pose.isMirrored !== to.pose.isMirrored;
  // Out of a pose that is turned over leads the same way as into it; out of a turned one the turn back.
  const out = to.pose.isMirrored ? to.pose : { ...to.pose, sin: -to.pose.sin };
  const side = out.isMirrored ? -from.pose.sin : from.pose.sin;
  const pose: Pose = {
    isMirrored,
    cos: out.cos * from.pose.cos - out.sin * side,
    sin: out.sin * from.pose.cos + out.cos * side,
  };
  const { x, y } = movedPoint({ ...pose, shift: { x: 0, y: 0 } }, from.middle);
  return { ...pose, shift: { x: to.middle.x - x, y: to.middle.y - y } };
}

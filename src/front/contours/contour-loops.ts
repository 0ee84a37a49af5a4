/** Contours of the front as closed loops of exact spans: what is deeper than a depth at a minute, clipped to the sheet. */

import { momentAt, reachAt } from '#front/front.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { type Loop, lineSpan, type Span } from '#geometry/span.ts';
import { liveSegments, type Nodes, nodesOf } from './chain-segments.ts';
import { type ContourKit, clipNearCluster, makeClipBorder } from './contour-kit.ts';
import { type ContourSegment, contourSegments } from './contour-segments.ts';

export interface ContourLoops {
  readonly loops: Loop[];
  /** A place where a loop does not close, and is left out; undefined where all close. */
  readonly gap: Point | undefined;
}

/** All that is deeper than `depth`: outer loops counter-clockwise, holes clockwise. At the depth of a floor the floor is left out. */
export function contourLoops(
  kit: ContourKit,
  ask: { depth: number; minute?: number | undefined },
): ContourLoops {
  const { front } = kit.index;
  const moment = momentAt(front, ask.minute);
  const reaches = moment.cuts.map((_, stage) => reachAt(moment, stage, ask.depth));
  const sheet = front.sheet.length === 0 ? undefined : makeClipBorder(kit, front.sheet);
  const found = kit.clusters.map((members) => {
    const clip = sheet === undefined ? undefined : clipNearCluster(sheet, members);
    return loopsOf(
      contourSegments(kit, { members, reaches, clip }).filter((segment) => segment.withoutFloor),
    );
  });
  return {
    loops: found.flatMap(({ loops }) => loops),
    gap: found.find(({ gap }) => gap !== undefined)?.gap,
  };
}

function loopsOf(segments: readonly ContourSegment[]): ContourLoops {
  const nodes = nodesOf(segments);
  const leaving = new Map<number, number[]>();
  const { live, gap } = liveSegments(
    nodes,
    segments.map((_, i) => i),
  );
  for (const segment of live) {
    const start = itemAt(nodes.starts, segment);
    leaving.set(start, [...(leaving.get(start) ?? []), segment]);
  }
  const loops: Loop[] = [];
  for (const start of leaving.keys()) {
    for (;;) {
      const loop: Span[] = [];
      let node = start;
      for (
        let segment = leaving.get(node)?.pop();
        segment !== undefined;
        segment = leaving.get(node)?.pop()
      ) {
        loop.push(spanOf(itemAt(segments, segment), nodes, segment));
        node = itemAt(nodes.ends, segment);
        if (node === start) break;
      }
      if (loop.length === 0) break;
      loops.push(loop);
    }
  }
  return { loops, gap };
}

function spanOf({ curve, from, to }: ContourSegment, nodes: Nodes, segment: number): Span {
  const placeOf = (node: number) => ({ x: itemAt(nodes.xs, node), y: itemAt(nodes.ys, node) });
  const start = placeOf(itemAt(nodes.starts, segment));
  const end = placeOf(itemAt(nodes.ends, segment));
  if (curve.radius === 0) return lineSpan(start, end);
  const { cx, cy, sweep } = curve.feature;
  return {
    kind: 'arc',
    start,
    end,
    center: { x: cx, y: cy },
    radius: curve.radius,
    sweep: sweep * (to - from),
  };
}

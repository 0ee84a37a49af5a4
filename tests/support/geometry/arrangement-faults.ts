/** What is wrong with an arrangement, by laws that hold for every planar map. Shares no code with the tracing. */
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import { loopArea, type Span } from '#geometry/span.ts';

/** Empty when the arrangement is sound. */
export function arrangementFaults(arrangement: Arrangement): string[] {
  return [...eulerFaults(arrangement), ...edgeFaults(arrangement), ...faceFaults(arrangement)];
}

/** Euler's formula for plane graphs of several parts: V − E + F = 1 + C. */
function eulerFaults({ vertices, edges, faces }: Arrangement): string[] {
  const next = vertices.map(() => [] as number[]);
  for (const { start, end } of edges) {
    next[start]?.push(end);
    next[end]?.push(start);
  }
  const seen = new Set<number>();
  let parts = 0;
  vertices.forEach((_, root) => {
    if (seen.has(root)) return;
    parts++;
    const reached = [root];
    seen.add(root);
    for (let at = reached.pop(); at !== undefined; at = reached.pop()) {
      for (const other of next[at] ?? []) {
        if (seen.has(other)) continue;
        seen.add(other);
        reached.push(other);
      }
    }
  });
  const euler = vertices.length - edges.length + faces.length;
  const dangling = next.filter((others) => others.length < 2).length;
  return [
    ...(euler === 1 + parts ? [] : [`V − E + F = ${euler}, 1 + C = ${1 + parts}`]),
    ...(dangling === 0 ? [] : [`${dangling} vertices with fewer than two edges`]),
  ];
}

function edgeFaults({ vertices, edges, faces }: Arrangement): string[] {
  const faults: string[] = [];
  const uses = new Map<string, number>();
  faces.forEach(({ borders }, face) => {
    for (const { edge, forward } of borders.flat()) uses.set(`${edge} ${forward}`, face);
  });
  const borderCount = faces.reduce((sum, { borders }) => sum + borders.flat().length, 0);
  if (borderCount !== 2 * edges.length) faults.push(`${borderCount} half-edges of ${edges.length} edges`);
  edges.forEach(({ span, start, end, left, right, sources }, edge) => {
    if (span.start !== vertices[start] || span.end !== vertices[end])
      faults.push(`edge ${edge} is off its vertices`);
    if (uses.get(`${edge} true`) !== left || uses.get(`${edge} false`) !== right)
      faults.push(`edge ${edge} names the wrong faces`);
    if (left === right) faults.push(`edge ${edge} borders nothing`);
    const rising = sources.every((source, i) => i === 0 || source > (sources[i - 1] ?? source));
    if (sources.length === 0 || !rising) faults.push(`edge ${edge} has sources ${sources.join(' ')}`);
  });
  return faults;
}

function faceFaults({ faces }: Arrangement): string[] {
  const faults: string[] = [];
  faces.forEach(({ loops, area, borders }, face) => {
    loops.forEach((loop, ring) => {
      if (loop.length !== borders[ring]?.length) faults.push(`face ${face} has a loop unlike its border`);
      if (!isClosed(loop)) faults.push(`face ${face} has an open loop`);
      const isOuter = face > 0 && ring === 0;
      if (loopArea(loop) > 0 !== isOuter) faults.push(`face ${face} has a loop run the wrong way`);
    });
    if (face === 0 ? area !== 0 : !(area > 0)) faults.push(`face ${face} has area ${area}`);
  });
  const inside = faces.reduce((sum, { area }) => sum + area, 0);
  const outline = (faces[0]?.loops ?? []).reduce((sum, loop) => sum - loopArea(loop), 0);
  if (Math.abs(inside - outline) > 1e-9 * (1 + outline))
    faults.push(`faces of ${inside} in an outline of ${outline}`);
  return faults;
}

function isClosed(loop: readonly Span[]): boolean {
  return loop.every((span, i) => {
    const next = loop[(i + 1) % loop.length];
    return span.end.x === next?.start.x && span.end.y === next.start.y;
  });
}

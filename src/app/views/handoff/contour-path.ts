/** A contour as the path of an SVG picture, y down: bulges become circular arcs. */
import type { Contour } from '#job/formats/plan-file.ts';

export function contourPath({ closed, vertices }: Contour): string {
  const [first, ...rest] = vertices;
  if (first === undefined) return '';
  let path = `M${first[0]} ${-first[1]}`;
  let [fromX, fromY, bulge] = first;
  for (const [x, y, next] of closed ? [...rest, first] : rest) {
    path += bulge === 0 ? `L${x} ${-y}` : arcTo(Math.hypot(x - fromX, y - fromY), bulge, x, -y);
    [fromX, fromY, bulge] = [x, y, next];
  }
  return closed ? `${path}Z` : path;
}

/** Radius from chord and bulge b = tan(angle / 4): chord (1 + b²) / (4 |b|). */
function arcTo(chord: number, bulge: number, x: number, y: number): string {
  const radius = (chord * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${x} ${y}`;
}

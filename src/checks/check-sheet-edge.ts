/** Openings that run off the sheet: regions that are etched right up to its edge, where no maskant stands beyond. */
import { type Finding, finding } from '#findings/finding.ts';
import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import type { PlanPlace } from './making.ts';

/** Stretches worth handing on. */
const MOST_OUTLINES = 200;

export function checkSheetEdge({ plan, around, unopened }: PlanPlace): Finding[] {
  const regions: string[] = [];
  const edges: Span[] = [];
  for (const { id, level, loops } of plan.regions) {
    if (level <= 0 || unopened.has(id)) continue;
    const here = loops.flat().filter((span) => around.levelAcross(span) === undefined);
    if (here.length === 0) continue;
    regions.push(id);
    edges.push(...here);
  }
  const longest = [...edges].sort((a, b) => spanLength(b) - spanLength(a))[0];
  if (longest === undefined) return [];
  const length = edges.reduce((sum, span) => sum + spanLength(span), 0);
  return [
    finding(
      'opening-runs-off-sheet',
      { length, regions: regions.length },
      {
        at: pointAlong(longest, 0.5),
        regions,
        outline: edges.slice(0, MOST_OUTLINES).map((span) => ({ closed: false, spans: [span] })),
      },
    ),
  ];
}

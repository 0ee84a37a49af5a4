/** Openings that run off the sheet: regions that are etched right up to its edge, where no maskant stands beyond. */
import { type Finding, finding } from '#findings/finding.ts';
import { pointAlong, type Span, spanLength } from '#geometry/span.ts';
import type { RegionId } from '#part/part.ts';
import type { MakingPlace, PlaceRule, WholePlan } from './making.ts';

interface RunOff {
  readonly region: RegionId;
  readonly edges: readonly Span[];
}

export const sheetEdge: PlaceRule<RunOff> = { find, report };

/** Stretches worth handing on. */
const MOST_OUTLINES = 200;

function find({ plan, levelAcross, unopened }: MakingPlace): RunOff[] {
  return plan.regions.flatMap(({ id, level, loops }) => {
    if (level <= 0 || unopened.has(id)) return [];
    const edges = loops.flat().filter((span) => levelAcross(span) === undefined);
    return edges.length === 0 ? [] : [{ region: id, edges }];
  });
}

/** In the order of the part's regions. */
function report(found: readonly RunOff[], { plan }: WholePlan): Finding[] {
  if (found.length === 0) return [];
  const byRegion = new Map(found.map(({ region, edges }) => [region, edges]));
  const regions = plan.regions.flatMap(({ id }) => (byRegion.has(id) ? [id] : []));
  const edges = regions.flatMap((id) => byRegion.get(id) ?? []);
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

/** The stage that ends on a region's level: its number and mark in its colour. */
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';

export function RegionChip({ region }: { readonly region: ShownRegion | undefined }) {
  const stages = useWorkbenchState((state) => state.derived.page?.plan?.stages);
  const stage = stages?.find(({ regions }) => region !== undefined && regions.includes(region.id));
  if (stage === undefined) return null;
  return (
    <span className="chip" style={{ background: stage.color, color: inkOn(stage.color) }}>
      <span className="number">{stage.number}</span>
      <StageMark stage={stage.number} />
    </span>
  );
}

/** A bar of what is required of a region, with the place in it where the plan lies. */

import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { ROUNDING } from '#geometry/tolerances.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { lengthFigure, showLength } from '#units/show-length.ts';

/** Share of the bar's room that stands out at each side of what is required, so that a level outside it is seen. */
const OUTSIDE = 0.25;

export function ToleranceBar({ regions }: { readonly regions: readonly ShownRegion[] }) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const [region] = regions;
  if (region === undefined || regions.some(({ asked }) => !isSame(asked, region.asked))) return null;
  const { asked, level } = region;
  const from = asked.depth - asked.minus;
  const to = asked.depth + asked.plus;
  if (asked.depth <= 0 || to <= from) return null;
  const share = OUTSIDE + ((1 - 2 * OUTSIDE) * (level - from)) / (to - from);
  const isIn = level >= from - ROUNDING && level <= to + ROUNDING;
  return (
    <figure
      className={isIn ? 'tolerance-bar' : 'tolerance-bar broken'}
      aria-label="Planned depth within the tolerance required"
    >
      <p style={{ left: `${100 * Math.min(0.86, Math.max(0.14, share))}%` }}>
        planned {lengthFigure(level, unit)}
      </p>
      <div>
        <i className="band" />
        <i className="planned" style={{ left: `${100 * Math.min(1, Math.max(0, share))}%` }} />
      </div>
      <figcaption>
        <span>{lengthFigure(from, unit)}</span>
        <span className="aside">required</span>
        <span>{showLength(to, unit)}</span>
      </figcaption>
    </figure>
  );
}

function isSame(a: ShownRegion['asked'], b: ShownRegion['asked']): boolean {
  return a.depth === b.depth && a.plus === b.plus && a.minus === b.minus;
}

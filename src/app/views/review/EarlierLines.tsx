/** The lines of a stage as they were when the plan was reviewed, dashed beside the ones that they have become. */
import { useEffect, useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { drawingOrigin } from '#app/state/region-targets.ts';
import { isOfOtherPlan } from '#app/state/review-draft.ts';
import { contourPath } from '#app/views/handoff/contour-path.ts';
import { keepInPose } from '#app/views/sheet/pose-matrix.ts';
import { usePlanText } from '#app/views/use-plan-text.ts';
import type { Size } from '#app/views/use-size.ts';
import { useMode, useWorkbenchState } from '#app/views/workbench-context.ts';
import { linesBefore } from '#run/review.ts';

interface EarlierLinesProps {
  readonly stage: number;
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

export function EarlierLines({ stage, pose, size }: EarlierLinesProps) {
  const draft = useMode((state) => state.draft);
  const planText = usePlanText();
  const { x, y } = useWorkbenchState(drawingOrigin);
  const moved = useRef<SVGGElement>(null);
  const reviewed = isOfOtherPlan(draft, planText) ? draft.planText : undefined;
  const byStage = useMemo(
    () => (reviewed === undefined || planText === undefined ? undefined : linesBefore(reviewed, planText)),
    [reviewed, planText],
  );
  const path = byStage?.get(stage)?.map(contourPath).join('') ?? '';
  useEffect(() => {
    if (size === undefined || path === '') return undefined;
    return keepInPose(moved, pose, size);
  }, [pose, size, path]);
  if (path === '') return null;
  return (
    <svg className="earlier-lines" aria-hidden="true">
      <g ref={moved}>
        <path d={path} transform={`translate(${-x} ${y})`} />
      </g>
    </svg>
  );
}

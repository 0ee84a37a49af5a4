/** Leads to a place on the sheet: picks its regions and flies there. The panel that is open stays open. */

import { useCallback } from 'react';
import { boxOfShapes } from '#app/state/region-shape.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import type { Place } from '#findings/finding.ts';
import { distance } from '#geometry/point.ts';
import { TOUCHING } from '#geometry/tolerances.ts';
import type { SheetSide } from '#job/job.ts';
import { useWorkbench } from './workbench-context.ts';

/** The face to turn to, where regions are named and none of them is on the one on show. */
function sideOf(state: WorkbenchState, ids: readonly string[]): SheetSide | undefined {
  const { faces } = state.derived.page ?? {};
  const has = (side: SheetSide) => faces?.[side]?.regions.some(({ id }) => ids.includes(id)) === true;
  const now = faceOnShow(state);
  const other = now === 'near' ? 'far' : 'near';
  return !has(now) && has(other) ? other : undefined;
}

export function useGoTo(): (place: Place) => void {
  const { store, actions, layout } = useWorkbench();
  return useCallback(
    ({ at, regions, outline }: Place) => {
      const side = sideOf(store.getState(), regions ?? []);
      if (side !== undefined) actions.turnOver(side);
      const { shapes } = store.getState().derived;
      const { panel } = layout.getState();
      const known = (regions ?? []).filter((id) => shapes.some((shape) => shape.region.id === id));
      if (known.length > 0) actions.select(known);
      layout.setState({ panel });
      const label = shapes.find((shape) => shape.region.id === known[0])?.region.label;
      const middle = label && { x: label[0], y: label[1] };
      const to = at ?? middle;
      if (to === undefined) return;
      // A place that is no more than where the region's name stands means all of the region.
      const isWhole = middle !== undefined && distance(to, middle) < TOUCHING;
      const around = isWhole
        ? boxOfShapes(shapes.filter(({ region }) => known.includes(region.id)))
        : undefined;
      actions.flyTo({ to, outline, around });
    },
    [store, actions, layout],
  );
}

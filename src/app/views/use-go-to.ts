/** Leads to a place on the sheet: picks its regions and flies there. The panel that is open stays open. */
import { useCallback } from 'react';
import { boxOfShapes } from '#app/state/region-shape.ts';
import type { Place } from '#findings/finding.ts';
import { distance } from '#geometry/point.ts';
import { useWorkbench } from './workbench-context.ts';

/** mm; coordinates of a plan are rounded to a millionth. */
const SAME_VIEW = 1e-5;

export function useGoTo(): (place: Place) => void {
  const { store, actions, layout } = useWorkbench();
  return useCallback(
    ({ at, regions, outline }: Place) => {
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
      const isWhole = middle !== undefined && distance(to, middle) < SAME_VIEW;
      const around = isWhole
        ? boxOfShapes(shapes.filter(({ region }) => known.includes(region.id)))
        : undefined;
      actions.flyTo({ to, outline, around });
    },
    [store, actions, layout],
  );
}

/** Moves the view when the workbench asks for it: the whole part after opening, tilt for the relief, flights to places. */
import { useCallback, useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { fitPose, type ViewPose } from '#app/scene/view-pose.ts';
import { boxOfLines } from '#app/state/box-of-lines.ts';
import { boxOfShapes } from '#app/state/region-shape.ts';
import type { SheetView } from '#app/state/workbench-state.ts';
import { flyTo } from './sheet-fly.ts';
import type { Size } from './use-size.ts';
import { useBench, useDocument, useWorkbench } from './workbench-context.ts';

/** From the front left and high enough that no pocket hides behind its wall. */
const RELIEF = { azimuth: -0.42, tilt: 0.86 };
const PLAN = { azimuth: 0, tilt: 0 };
/** A place flown to shows at least this much around it, mm, and comes no nearer when the view is nearer already. */
const FLIGHT_WIDTH = 40;

export function usePoseKeeper(pose: StoreApi<ViewPose>, size: Size | undefined): { fitAll: () => void } {
  const { store } = useWorkbench();
  const { view, flight } = useBench((state) => state.session);
  const page = useBench((state) => state.derived.page);
  const drawing = useDocument()?.drawing;
  const fitted = useRef<{ drawing: unknown; size: Size } | undefined>(undefined);
  const seen = useRef<SheetView>(view);

  const fitAll = useCallback(() => {
    const { derived, session } = store.getState();
    const box = boxOfShapes(derived.shapes) ?? boxOfLines(derived.page?.lines ?? []);
    if (box === undefined || size === undefined) return;
    flyTo(pose, fitPose(box, size, session.view === 'relief' ? RELIEF : PLAN));
  }, [store, pose, size]);

  // A drawing seen for the first time is shown whole, at once.
  useEffect(() => {
    if (page === undefined || size === undefined || store.getState().derived.isStale) return;
    const isFirst = fitted.current === undefined || fitted.current.drawing !== drawing;
    if (!isFirst) return;
    const box = boxOfShapes(store.getState().derived.shapes) ?? boxOfLines(page.lines);
    if (box === undefined) return;
    fitted.current = { drawing, size };
    pose.setState(fitPose(box, size, seen.current === 'relief' ? RELIEF : PLAN), true);
  }, [page, size, drawing, pose, store]);

  useEffect(() => {
    if (seen.current === view) return;
    seen.current = view;
    flyTo(pose, { ...pose.getState(), ...(view === 'relief' ? RELIEF : PLAN) });
  }, [view, pose]);

  useEffect(() => {
    if (flight === undefined || size === undefined) return;
    const pixelsPerMm = Math.max(pose.getState().pixelsPerMm, size.width / FLIGHT_WIDTH / 4);
    flyTo(pose, { ...pose.getState(), target: flight.to, pixelsPerMm });
  }, [flight, pose, size]);

  return { fitAll };
}

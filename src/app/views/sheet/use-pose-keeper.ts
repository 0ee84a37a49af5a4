/** Moves the view when the workbench asks for it: the whole part after opening, tilt for the relief, flights to places. */
import { useCallback, useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { fitPose, type ViewPose } from '#app/scene/view-pose.ts';
import { boxOfLines } from '#app/state/box-of-lines.ts';
import { boxOfShapes } from '#app/state/region-shape.ts';
import type { Flight, SheetView } from '#app/state/workbench-state.ts';
import type { Size } from '#app/views/use-size.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { flyTo } from './sheet-fly.ts';

/** From the front left and high enough that no pocket hides behind its wall. */
const RELIEF = { azimuth: -0.42, tilt: 0.86 };
const PLAN = { azimuth: 0, tilt: 0 };
/** A place flown to shows at least this much around it, mm, and comes no nearer when the view is nearer already. */
const FLIGHT_WIDTH = 40;

/** Pixels that choices above and readings below take of the view, together. */
const OVERLAYS = 56;

/** The drawing that was last shown whole, and the pose that showed it. */
interface Fitted {
  readonly drawing: DrawingFile | undefined;
  readonly pose: ViewPose | undefined;
}

export function usePoseKeeper(pose: StoreApi<ViewPose>, size: Size | undefined): { fitAll: () => void } {
  const { store } = useWorkbench();
  const { view, flight } = useWorkbenchState((state) => state.session);
  const page = useWorkbenchState((state) => state.derived.page);
  const drawing = useDocument()?.drawing;
  const fitted = useRef<Fitted>({ drawing: undefined, pose: undefined });
  const seen = useRef<SheetView>(view);
  const flown = useRef(flight);

  const whole = useCallback(() => {
    const { derived, session } = store.getState();
    const box = boxOfShapes(derived.shapes) ?? boxOfLines(derived.page?.lines ?? []);
    if (box === undefined || size === undefined) return undefined;
    return fitPose(box, freeOf(size), session.view === 'relief' ? RELIEF : PLAN);
  }, [store, size]);

  const fitAll = useCallback(() => {
    const goal = whole();
    if (goal === undefined) return;
    fitted.current = { ...fitted.current, pose: goal };
    flyTo(pose, goal);
  }, [pose, whole]);

  // A drawing seen for the first time is shown whole, at once; so is one still shown whole when the window changes.
  useEffect(() => {
    if (page === undefined || store.getState().derived.isStale) return;
    const isWhole = fitted.current.pose === pose.getState();
    if (fitted.current.drawing === drawing && !isWhole) return;
    const goal = whole();
    if (goal === undefined) return;
    fitted.current = { drawing, pose: goal };
    pose.setState(goal, true);
  }, [page, drawing, pose, store, whole]);

  useEffect(() => {
    if (seen.current === view) return;
    seen.current = view;
    if (fitted.current.pose === pose.getState()) fitAll();
    else flyTo(pose, { ...pose.getState(), ...(view === 'relief' ? RELIEF : PLAN) });
  }, [view, pose, fitAll]);

  // Once each: neither a view opened later nor a window of another size flies again.
  useEffect(() => {
    if (flown.current === flight || size === undefined) return;
    flown.current = flight;
    if (flight !== undefined) flyTo(pose, flightPose(flight, pose.getState(), size));
  }, [flight, pose, size]);

  return { fitAll };
}

function freeOf({ width, height }: Size): Size {
  return { width, height: Math.max(height / 2, height - OVERLAYS) };
}

function flightPose({ to, around }: Flight, now: ViewPose, size: Size): ViewPose {
  const pixelsPerMm = Math.max(now.pixelsPerMm, size.width / FLIGHT_WIDTH / 4);
  if (around === undefined) return { ...now, target: to, pixelsPerMm };
  const fitted = fitPose(around, freeOf(size), now);
  return { ...fitted, pixelsPerMm: Math.min(pixelsPerMm, fitted.pixelsPerMm) };
}

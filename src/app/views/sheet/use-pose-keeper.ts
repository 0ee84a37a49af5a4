/** Moves the view when the workbench asks for it: the whole part after opening, tilt for the relief, flights to places. */
import { useCallback, useEffect, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { isCutAway } from '#app/scene/pick-region.ts';
import { fitHeight } from '#app/scene/relief/fit-height.ts';
import { FILL, fitPoints, fitPose, panned, type ViewPose } from '#app/scene/view-pose.ts';
import { boxOfLines } from '#app/state/box-of-lines.ts';
import { boxOfShapes } from '#app/state/region-shape.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { faceOnShow } from '#app/state/shown-face.ts';
import {
  type Flight,
  heightFactor,
  type SectionLine,
  type WorkbenchState,
} from '#app/state/workbench-state.ts';
import type { Size } from '#app/views/use-size.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { SheetSide } from '#job/job.ts';
import { flyTo } from './sheet-fly.ts';

/** From the front, a little from the left, and high enough that no pocket hides behind its wall: 61° up. */
const DRAWN = { azimuth: -0.24, tilt: 0.506 };
/** Turned over about an upright line, as the sheet is in plan. */
const BELOW = { azimuth: Math.PI - 0.24, tilt: Math.PI - 0.506 };
/** The far face is seen from it: turned about the upright. */
const PLAN: Record<SheetSide, Pick<ViewPose, 'azimuth' | 'tilt'>> = {
  near: { azimuth: 0, tilt: 0 },
  far: { azimuth: Math.PI, tilt: Math.PI },
};
/** A place flown to shows at least this much around it, mm, and comes no nearer when the view is nearer already. */
const FLIGHT_WIDTH = 40;

/**
 * px that a part shown whole keeps clear of: above it for the key of the bath, below it for what is reported of a step, and what the
 * depth key takes of the relief, above it or at its right.
 */
const CLEAR = { above: 44, below: 60, keyRow: 92, keyColumn: 190 };
/** Share of a low view that it has all the same. */
const LEAST = 0.5;
/** A view so wide has the key at its right. */
export const WIDE_VIEW = 1000;

/** The drawing that was last shown whole, and the pose that showed it. */
interface Fitted {
  readonly drawing: DrawingFile | undefined;
  readonly pose: ViewPose | undefined;
}

interface KeeperPlace {
  /** Shows the plan whatever the workbench shows. */
  readonly isFlat?: boolean;
  /** Nothing lies over the sheet. */
  readonly isBare?: boolean;
}

export function usePoseKeeper(
  pose: StoreApi<ViewPose>,
  size: Size | undefined,
  { isFlat = false, isBare = false }: KeeperPlace = {},
): { fitAll: () => void } {
  const { store, actions } = useWorkbench();
  const { view, reliefView, flight } = useWorkbenchState((state) => state.session);
  const factor = useWorkbenchState(heightFactor);
  const face = useWorkbenchState(faceOnShow);
  const page = useWorkbenchState((state) => state.derived.page);
  const drawing = useDocument()?.drawing;
  const fitted = useRef<Fitted>({ drawing: undefined, pose: undefined });
  const seen = useRef('');
  const flown = useRef(flight);
  const shownFace = useRef(face);

  const whole = useCallback(
    () => size && wholePose(store.getState(), size, { isFlat, isBare, tellHeight: actions.fitHeight }),
    [store, size, actions, isFlat, isBare],
  );

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

  // The relief is turned as it is first asked for; a plan that was zoomed into is, too, when it comes back.
  useEffect(() => {
    const look = `${view} ${view === 'relief' ? `${reliefView} ${factor}` : ''}`;
    if (seen.current === look) return;
    const isFirst = seen.current === '';
    seen.current = look;
    if (!isFirst) fitAll();
  }, [view, reliefView, factor, fitAll]);

  // At once: halfway the sheet would be seen edge on.
  useEffect(() => {
    if (shownFace.current === face) return;
    shownFace.current = face;
    const goal = whole();
    if (goal === undefined) return;
    fitted.current = { ...fitted.current, pose: goal };
    pose.setState(goal, true);
  }, [face, pose, whole]);

  // Once each: neither a view opened later nor a window of another size flies again.
  useEffect(() => {
    if (flown.current === flight || size === undefined) return;
    flown.current = flight;
    if (flight !== undefined) flyTo(pose, flightPose(flight, pose.getState(), size));
  }, [flight, pose, size]);

  return { fitAll };
}

interface WholeLook {
  readonly isFlat: boolean;
  readonly isBare: boolean;
  readonly tellHeight: (factor: number) => void;
}

/** The part as large as it may lie on the sheet; undefined where there is none. */
function wholePose(
  state: WorkbenchState,
  size: Size,
  { isFlat, isBare, tellHeight }: WholeLook,
): ViewPose | undefined {
  const { derived, session } = state;
  const box = boxOfShapes(derived.shapes) ?? boxOfLines(derived.page?.lines ?? []);
  if (box === undefined) return undefined;
  const isPlan = isFlat || session.view === 'plan';
  const room = isBare ? { size, by: { x: 0, y: 0 } } : roomIn(size, isPlan);
  const fitted = isPlan
    ? fitPose(box, room.size, PLAN[faceOnShow(state)])
    : fitRelief(state, box, room.size, tellHeight);
  return panned(fitted, size, room.by);
}

/** The relief whole, its heights as large as the plan asks for; they are set before it is shown. */
function fitRelief(
  state: WorkbenchState,
  box: Box,
  free: Size,
  tellHeight: (factor: number) => void,
): ViewPose {
  const look = state.session.reliefView === 'below' ? BELOW : DRAWN;
  const document = state.history?.present.document;
  const thickness = document === undefined ? 0 : sheetThickness(document.job);
  const levels = state.derived.page?.plan?.stages.map(({ level }) => level) ?? [];
  const deep = Math.max(0, ...levels);
  const deepest = state.derived.shapes
    .filter(({ region }) => region.level === deep)
    .map((shape) => shape.box)
    .sort((a, b) => b.maxY - b.minY - (a.maxY - a.minY))[0];
  const { cut, reliefView } = state.session;
  const points = keptCorners(box, reliefView === 'cut' ? cut : undefined, look);
  const factor = fitHeight({
    levels,
    thickness,
    points,
    size: free,
    look: DRAWN,
    deepest,
    hasNumbers: reliefView === 'cut',
  });
  if (factor !== state.fittedHeight) tellHeight(factor);
  const used = heightFactor({ ...state, fittedHeight: factor });
  return fitPoints(points, free, { ...look, height: thickness * used });
}

/** Corners of what the cut leaves of the box. */
function keptCorners(
  { minX, minY, maxX, maxY }: Box,
  cut: SectionLine | undefined,
  look: Pick<ViewPose, 'azimuth' | 'tilt'>,
): Point[] {
  const corners = [
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ];
  if (cut === undefined) return corners;
  const pose = { ...look, target: { x: 0, y: 0 }, pixelsPerMm: 1 };
  const kept = corners.filter((corner) => !isCutAway(cut, pose, corner));
  return kept.length === 0 ? corners : [...kept, cut.from, cut.to];
}

interface Room {
  /** A view of this size has the part where it may lie. */
  readonly size: Size;
  /** px from the middle of the view to the middle of the room. */
  readonly by: Point;
}

/** What lies over the sheet leaves so much of it. */
function roomIn({ width, height }: Size, isPlan: boolean): Room {
  const isBeside = !isPlan && width >= WIDE_VIEW;
  const above = isPlan || isBeside ? CLEAR.above : CLEAR.keyRow;
  const right = isBeside ? CLEAR.keyColumn : 0;
  const free = Math.max(LEAST * height, height - above - CLEAR.below);
  return {
    size: { width: width - right, height: Math.min(height, free / FILL) },
    by: { x: -right / 2, y: (above - CLEAR.below) / 2 },
  };
}

function flightPose({ to, around }: Flight, now: ViewPose, size: Size): ViewPose {
  const pixelsPerMm = Math.max(now.pixelsPerMm, size.width / FLIGHT_WIDTH / 4);
  if (around === undefined) return { ...now, target: to, pixelsPerMm };
  const fitted = fitPose(around, size, now);
  return { ...fitted, pixelsPerMm: Math.min(pixelsPerMm, fitted.pixelsPerMm) };
}

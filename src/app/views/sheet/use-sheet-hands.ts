/** Joins hands on the sheet to the workbench: picking, boxes, and the reading under the pointer. */

import { type RefObject, useEffect } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { type Picked, pickRegion, regionsInBox, type Seen } from '#app/scene/pick-region.ts';
import { type GestureHost, listenToHands } from '#app/scene/sheet-gestures.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { keepLatest } from '#app/state/keeping/keep-latest.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import { drawingOrigin } from '#app/state/region-targets.ts';
import { thicknessAbove } from '#app/state/shown-face.ts';
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import { heightFactor, type WorkbenchState } from '#app/state/workbench-state.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbench, type Workbench } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import type { ShownRegion } from '#job/formats/plan-file.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';
import type { Rested } from './HoverCard.tsx';
import { restedAt, restTimer } from './rested-at.ts';
import { drawBox, sayHover, showCarried } from './sheet-overlays.ts';

interface SheetHands {
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly hover: RefObject<HTMLParagraphElement | null>;
  readonly box: RefObject<HTMLDivElement | null>;
  readonly carried: RefObject<HTMLParagraphElement | null>;
  readonly pose: StoreApi<ViewPose>;
  readonly size: RefObject<Size>;
  /** A while after the pointer came to rest on a region, and at once when it goes. */
  readonly onRest: (rested: Rested | undefined) => void;
}

export function useSheetHands(hands: SheetHands): void {
  const { frame, hover, box, carried, pose, size, onRest } = hands;
  const workbench = useWorkbench();
  useEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    const host = gestureHost(workbench, { frame, hover, box, carried, pose, size, onRest });
    const unlisten = listenToHands(element, host);
    // What is read under a resting pointer changes with the plan.
    const unsubscribe = workbench.store.subscribe(({ derived }, before) => {
      if (derived.shapes !== before.derived.shapes) host.onPlan();
    });
    return () => {
      unsubscribe();
      unlisten();
    };
  }, [workbench, frame, hover, box, carried, pose, size, onRest]);
}

function gestureHost(
  { store, actions, follower }: Workbench,
  { hover, box, carried, pose, size, onRest }: SheetHands,
): GestureHost & { readonly onPlan: () => void } {
  const shapes = () => store.getState().derived.shapes;
  const seen = (): Seen => {
    const { view, reliefView, cut } = store.getState().session;
    const isRelief = view === 'relief';
    const above = thicknessAbove(store.getState());
    return {
      ...(above === undefined ? {} : { below: above * heightFactor(store.getState()) }),
      pose: pose.getState(),
      size: size.current,
      exaggeration: isRelief ? heightFactor(store.getState()) : 0,
      ...(isRelief && reliefView === 'cut' ? { cut } : {}),
    };
  };
  const frame = () => ({
    unit: store.getState().session.unit,
    origin: drawingOrigin(store.getState()),
    scale: pose.getState().pixelsPerMm,
  });
  let hovered: Picked | undefined;
  let pointer: Point | undefined;
  const rest = restTimer(onRest);
  const measure = keepLatest(
    ({ point }: Picked) => follower.gauge(point),
    (reading, picked) => {
      if (picked !== hovered || pointer === undefined) return;
      const at = pointer;
      rest.begin(() => restedAt(store.getState(), { picked, pointer: at, reading, seen: seen() }));
    },
    () => undefined,
  );
  const read = () => {
    const isReliefBelow = store.getState().session.view === 'relief' && pose.getState().tilt > Math.PI / 2;
    hovered = isReliefBelow ? undefined : pointer && pickRegion(shapes(), pointer, seen());
    sayHover(hover.current, hovered, frame());
    rest.end();
    const region = hovered?.shape?.region;
    lightRegion(store.getState(), actions.light, region);
    if (hovered !== undefined) measure(hovered);
  };
  return {
    pose,
    size: () => size.current,
    view: () => store.getState().session.view,
    onPick: (pixel, adds) => {
      const { shape } = pickRegion(shapes(), pixel, seen());
      if (shape !== undefined) actions.select([shape.region.id], adds ? 'toggle' : 'only');
      else if (!adds) actions.select([]);
    },
    onHover: (pixel) => {
      pointer = pixel;
      read();
    },
    onPlan: read,
    isPicked: (pixel) => {
      const { shape } = pickRegion(shapes(), pixel, seen());
      return shape !== undefined && store.getState().session.selection.includes(shape.region.id);
    },
    onCarry: (place, done) => {
      const level = place === undefined ? undefined : levelAt(place);
      const { unit, selection } = store.getState().session;
      showCarried(carried.current, done ? undefined : place, carriedWords(selection, level, unit));
      if (done && level !== undefined) actions.joinSelection(level, `join level ${showLength(level, unit)}`);
    },
    onBox: (from, to, done) => {
      drawBox(box.current, done ? undefined : { from, to });
      if (done) actions.select(idsInBox(shapes(), from, to, seen()), 'add');
    },
  };
}

function idsInBox(shapes: readonly RegionShape[], from: Point, to: Point, seen: Seen): string[] {
  return regionsInBox(shapes, from, to, seen).map(({ region }) => region.id);
}

/** Lights what is pointed at in every view; land is not worth it. */
function lightRegion(
  { lit, derived }: WorkbenchState,
  light: WorkbenchActions['light'],
  region: ShownRegion | undefined,
): void {
  const stage = derived.page?.plan?.stages.find(
    ({ regions }) => region !== undefined && regions.includes(region.id),
  );
  if (region === undefined || stage === undefined) {
    if (lit !== undefined) light(undefined);
  } else if (lit?.regions.length !== 1 || lit.regions[0] !== region.id) {
    light({ regions: [region.id], stage: stage.number });
  }
}

/** Level on the ladder at a place of the window, mm. */
function levelAt({ x, y }: Point): number | undefined {
  const row = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-level]');
  return row === null || row === undefined ? undefined : Number(row.dataset['level']);
}

function carriedWords(selection: readonly string[], level: number | undefined, unit: ShownUnit): string {
  const what = selection.length === 1 ? selection[0] : `${selection.length} regions`;
  return level === undefined ? `${what}: drop on a level` : `${what} to ${showLength(level, unit)}`;
}

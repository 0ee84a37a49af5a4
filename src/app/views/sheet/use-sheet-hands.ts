/** Joins hands on the sheet to the workbench: picking, boxes, and the reading under the pointer. */
import { type RefObject, useEffect } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { type Picked, pickRegion, regionsInBox, type Seen } from '#app/scene/pick-region.ts';
import { type GestureHost, listenToHands } from '#app/scene/sheet-gestures.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { keepLatest } from '#app/state/keep-latest.ts';
import { drawingOrigin } from '#app/state/region-targets.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbench, type Workbench } from '#app/views/workbench-context.ts';
import type { Point } from '#geometry/point.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';
import { drawBox, sayHover, showCarried } from './sheet-overlays.ts';

interface SheetHands {
  readonly frame: RefObject<HTMLDivElement | null>;
  readonly hover: RefObject<HTMLParagraphElement | null>;
  readonly box: RefObject<HTMLDivElement | null>;
  readonly carried: RefObject<HTMLParagraphElement | null>;
  readonly pose: StoreApi<ViewPose>;
  readonly size: RefObject<Size>;
}

export function useSheetHands(hands: SheetHands): void {
  const { frame, hover, box, carried, pose, size } = hands;
  const workbench = useWorkbench();
  useEffect(() => {
    const element = frame.current;
    if (element === null) return undefined;
    const host = gestureHost(workbench, { frame, hover, box, carried, pose, size });
    const unlisten = listenToHands(element, host);
    // What is read under a resting pointer changes with the plan.
    const unsubscribe = workbench.store.subscribe(({ derived }, before) => {
      if (derived.shapes !== before.derived.shapes) host.onPlan();
    });
    return () => {
      unsubscribe();
      unlisten();
    };
  }, [workbench, frame, hover, box, carried, pose, size]);
}

function gestureHost(
  { store, actions, follower }: Workbench,
  { hover, box, carried, pose, size }: SheetHands,
): GestureHost & { readonly onPlan: () => void } {
  const shapes = () => store.getState().derived.shapes;
  const seen = (): Seen => {
    const { view, exaggeration } = store.getState().session;
    return {
      pose: pose.getState(),
      size: size.current,
      exaggeration: view === 'relief' ? exaggeration : 0,
    };
  };
  const frame = () => ({ unit: store.getState().session.unit, origin: drawingOrigin(store.getState()) });
  let hovered: Picked | undefined;
  let pointer: Point | undefined;
  const measure = keepLatest(
    ({ point }: Picked) => follower.gauge(point),
    (reading, picked) => {
      if (picked === hovered) sayHover(hover.current, picked, frame(), reading);
    },
    () => undefined,
  );
  const read = () => {
    hovered = pointer && pickRegion(shapes(), pointer, seen());
    sayHover(hover.current, hovered, frame());
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
      if (done && level !== undefined)
        actions.askOfSelection({ depth: level }, `join level ${showLength(level, unit)}`);
    },
    onBox: (from, to, done) => {
      drawBox(box.current, done ? undefined : { from, to });
      if (!done) return;
      const found = regionsInBox(shapes(), from, to, seen());
      actions.select(
        found.map((shape) => shape.region.id),
        'add',
      );
    },
  };
}

/** Level of the rung at a place of the window, mm. */
function levelAt({ x, y }: Point): number | undefined {
  const rung = document.elementFromPoint(x, y)?.closest<HTMLElement>('[data-level]');
  return rung === null || rung === undefined ? undefined : Number(rung.dataset['level']);
}

function carriedWords(selection: readonly string[], level: number | undefined, unit: ShownUnit): string {
  const what = selection.length === 1 ? selection[0] : `${selection.length} regions`;
  return level === undefined ? `${what}: drop on a level` : `${what} to ${showLength(level, unit)}`;
}

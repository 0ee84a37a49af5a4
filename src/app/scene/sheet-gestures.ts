/**
 * What hands do on the sheet. Plan: drag moves, Shift with drag draws a box; dragged from a picked region, what is picked is
 * carried off the sheet. Relief: drag turns, the other buttons move.
 * Click picks (Shift or Ctrl adds or takes away), the wheel zooms about the pointer, two fingers move and zoom.
 */
import type { StoreApi } from 'zustand/vanilla';
import type { SheetView } from '#app/state/workbench-state.ts';
import type { Point } from '#geometry/point.ts';
import { panned, turned, type ViewPose, type ViewSize, zoomed } from './view-pose.ts';

export interface GestureHost {
  readonly pose: StoreApi<ViewPose>;
  readonly size: () => ViewSize;
  readonly view: () => SheetView;
  readonly onPick: (pixel: Point, adds: boolean) => void;
  readonly onHover: (pixel: Point | undefined) => void;
  /** While a box is drawn, and once more with `done`. */
  readonly onBox: (from: Point, to: Point, done: boolean) => void;
  readonly isPicked: (pixel: Point) => boolean;
  /** While picked regions are dragged, in window pixels, and once when they are dropped; undefined when the drag is cancelled. */
  readonly onCarry: (place: Point | undefined, done: boolean) => void;
}

/** A pointer that moved less than this, in pixels, has clicked. */
const CLICK_SLOP = 4;
const RADIANS_PER_PIXEL = 0.008;
const ZOOM_PER_WHEEL_PIXEL = 0.0016;

type Doing = 'move' | 'turn' | 'box' | 'carry';

/** Listens on the element until the function given back is called. */
export function listenToHands(element: HTMLElement, host: GestureHost): () => void {
  const down = new Map<number, Point>();
  let begun: { readonly at: Point; readonly doing: Doing; moved: boolean } | undefined;

  const pixelOfEvent = (event: PointerEvent | WheelEvent): Point => {
    const { left, top } = element.getBoundingClientRect();
    return { x: event.clientX - left, y: event.clientY - top };
  };
  const onDown = (event: PointerEvent) => {
    const at = pixelOfEvent(event);
    element.setPointerCapture(event.pointerId);
    down.set(event.pointerId, at);
    if (down.size === 1) begun = { at, doing: doingOf(event, at, host), moved: false };
  };
  const onMove = (event: PointerEvent) => {
    const now = pixelOfEvent(event);
    const before = down.get(event.pointerId);
    if (before === undefined || begun === undefined) return host.onHover(now);
    if (!begun.moved) {
      if (Math.hypot(now.x - begun.at.x, now.y - begun.at.y) <= CLICK_SLOP) return;
      begun.moved = true;
      // What lay under the pointer moves away from it.
      host.onHover(undefined);
    }
    const others = [...down].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
    down.set(event.pointerId, now);
    const other = others[0];
    if (other !== undefined) pinch(host, other, before, now);
    else if (begun.doing === 'box') host.onBox(begun.at, now, false);
    else if (begun.doing === 'carry') host.onCarry({ x: event.clientX, y: event.clientY }, false);
    else drag(host, begun.doing, { x: now.x - before.x, y: now.y - before.y });
  };
  const onUp = (event: PointerEvent) => {
    const at = pixelOfEvent(event);
    down.delete(event.pointerId);
    if (begun === undefined || down.size > 0) return;
    const { moved, doing, at: from } = begun;
    begun = undefined;
    if (event.type === 'pointercancel') giveUp(host, doing, at);
    else if (!moved && event.button === 0) host.onPick(at, event.shiftKey || event.ctrlKey || event.metaKey);
    else if (moved && doing === 'box') host.onBox(from, at, true);
    else if (moved && doing === 'carry') host.onCarry({ x: event.clientX, y: event.clientY }, true);
  };
  const onWheel = (event: WheelEvent) => {
    event.preventDefault();
    const factor = Math.exp(-event.deltaY * ZOOM_PER_WHEEL_PIXEL);
    host.pose.setState(zoomed(host.pose.getState(), host.size(), pixelOfEvent(event), factor), true);
  };
  const onLeave = () => host.onHover(undefined);
  const noMenu = (event: Event) => event.preventDefault();

  const listening = new AbortController();
  const { signal } = listening;
  element.addEventListener('pointerdown', onDown, { signal });
  element.addEventListener('pointermove', onMove, { signal });
  element.addEventListener('pointerup', onUp, { signal });
  element.addEventListener('pointercancel', onUp, { signal });
  element.addEventListener('pointerleave', onLeave, { signal });
  element.addEventListener('wheel', onWheel, { signal, passive: false });
  element.addEventListener('contextmenu', noMenu, { signal });
  return () => listening.abort();
}

function doingOf(event: PointerEvent, at: Point, { view, isPicked }: GestureHost): Doing {
  if (event.button !== 0) return 'move';
  if (view() === 'relief') return event.shiftKey ? 'move' : 'turn';
  if (event.shiftKey) return 'box';
  return isPicked(at) ? 'carry' : 'move';
}

function giveUp({ onBox, onCarry }: GestureHost, doing: Doing, at: Point): void {
  if (doing === 'box') onBox(at, at, true);
  if (doing === 'carry') onCarry(undefined, true);
}

function drag({ pose, size }: GestureHost, doing: Doing, by: Point): void {
  const now = pose.getState();
  const next =
    doing === 'turn'
      ? turned(now, { azimuth: -by.x * RADIANS_PER_PIXEL, tilt: -by.y * RADIANS_PER_PIXEL })
      : panned(now, size(), by);
  pose.setState(next, true);
}

/** The second finger rests while the first one moves: their middle moves the sheet, their distance zooms it. */
function pinch({ pose, size }: GestureHost, rest: Point, before: Point, now: Point): void {
  const middle = { x: (rest.x + now.x) / 2, y: (rest.y + now.y) / 2 };
  const factor =
    Math.hypot(now.x - rest.x, now.y - rest.y) /
    Math.max(1, Math.hypot(before.x - rest.x, before.y - rest.y));
  const moved = panned(pose.getState(), size(), { x: (now.x - before.x) / 2, y: (now.y - before.y) / 2 });
  pose.setState(zoomed(moved, size(), middle, factor), true);
}

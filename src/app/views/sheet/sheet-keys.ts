/** What keys do on the sheet. */
import type { StoreApi } from 'zustand/vanilla';
import { panned, turned, type ViewPose, type ViewSize, zoomed } from '#app/scene/view-pose.ts';
import { faceOnShow, hasFarFace } from '#app/state/shown-face.ts';
import type { WorkbenchActions } from '#app/state/workbench-actions.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import { pointAt } from './sheet-fly.ts';

interface KeyHost {
  readonly store: StoreApi<WorkbenchState>;
  readonly actions: WorkbenchActions;
  readonly pose: StoreApi<ViewPose>;
  readonly size: ViewSize;
  readonly fitAll: () => void;
}

const PAN_PIXELS = 60;
const TURN = Math.PI / 24;
const ZOOM = 1.25;

const ARROWS: Record<string, { readonly x: number; readonly y: number }> = {
  ArrowLeft: { x: 1, y: 0 },
  ArrowRight: { x: -1, y: 0 },
  ArrowUp: { x: 0, y: 1 },
  ArrowDown: { x: 0, y: -1 },
};

/** Whether the key meant something here. */
export function sheetKey(event: KeyboardEvent, host: KeyHost): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const { pose, size, actions, store } = host;
  const arrow = ARROWS[event.key];
  const middle = { x: size.width / 2, y: size.height / 2 };
  if (arrow !== undefined) {
    const turns = store.getState().session.view === 'relief' && !event.shiftKey;
    const now = pose.getState();
    const next = turns
      ? turned(now, { azimuth: -arrow.x * TURN, tilt: -arrow.y * TURN })
      : panned(now, size, { x: arrow.x * PAN_PIXELS, y: arrow.y * PAN_PIXELS });
    pose.setState(next, true);
  } else if (event.key === '+' || event.key === '=') {
    pose.setState(zoomed(pose.getState(), size, middle, ZOOM), true);
  } else if (event.key === '-') {
    pose.setState(zoomed(pose.getState(), size, middle, 1 / ZOOM), true);
  } else if (event.key === 'Home') {
    host.fitAll();
  } else if (event.key === 't' && hasFarFace(store.getState())) {
    actions.turnOver(faceOnShow(store.getState()) === 'near' ? 'far' : 'near');
  } else if (event.key === 'Escape') {
    actions.select([]);
  } else if (event.key === 'PageDown' || event.key === 'PageUp') {
    pickNext(host, event.key === 'PageDown' ? 1 : -1);
  } else return false;
  return true;
}

function pickNext({ store, actions, pose, size }: KeyHost, by: number): void {
  const { shapes } = store.getState().derived;
  if (shapes.length === 0) return;
  const last = store.getState().session.selection.at(-1);
  const at = shapes.findIndex((shape) => shape.region.id === last);
  const index = at === -1 ? (by > 0 ? 0 : shapes.length - 1) : (at + by + shapes.length) % shapes.length;
  const next = shapes[index];
  if (next === undefined) return;
  actions.select([next.region.id]);
  const [x, y] = next.region.label;
  pointAt(pose, size, { x, y });
}

/**
 * A canvas in the page, and the worker that draws on it: the page sends what changed, and never waits for a frame. Whether the
 * last picture has been drawn, from where it is looked at now, stands on the holder as `data-drawn`.
 */
import type { StoreApi } from 'zustand/vanilla';
import { nextTask } from '#app/worker/next-task.ts';
import { packContours } from '#app/worker/pack-contours.ts';
import { createPacker, type Packer, packPlan } from '#app/worker/pack-plan.ts';
import type { PictureChange, SceneAnswer, SceneMessage, ScenePicture, SceneSize } from './scene-picture.ts';
import type { ViewPose } from './view-pose.ts';

export interface Painter {
  readonly show: (picture: ScenePicture) => void;
  readonly stop: () => void;
}

interface PainterHost {
  readonly pose: StoreApi<ViewPose>;
  readonly onFail: (message: string) => void;
  /** The worker's canvas has no WebGL. */
  readonly onUnable: () => void;
}

/** Twice the pixels of a fine screen are enough; more only costs time. */
const LARGEST_RATIO = 2;

export function startPainter(holder: HTMLElement, { pose, onFail, onUnable }: PainterHost): Painter {
  const worker = new Worker(new URL('./scene-worker.tsx', import.meta.url), { type: 'module' });
  const post = (message: SceneMessage, transfer: Transferable[] = []) =>
    worker.postMessage(message, transfer);
  worker.onerror = ({ message }) => onFail(message);

  const canvas = document.createElement('canvas');
  canvas.setAttribute('aria-hidden', 'true');
  holder.append(canvas);
  const offscreen = canvas.transferControlToOffscreen();
  let posed = 0;
  const numbered = (now: ViewPose) => ({ ...now, number: posed });
  post({ canvas: offscreen, size: sizeOf(holder), pose: numbered(pose.getState()) }, [offscreen]);

  const watcher = new ResizeObserver(() => post({ size: sizeOf(holder) }));
  watcher.observe(holder);
  const leavePose = pose.subscribe((now) => {
    posed += 1;
    holder.dataset['drawn'] = 'false';
    post({ pose: numbered(now) });
  });
  const packer = createPacker();
  let last: ScenePicture | undefined;
  let next: ScenePicture | undefined;
  let sent = 0;
  const send = async () => {
    await nextTask();
    if (next === undefined) return;
    const change = changeOf(last, next);
    last = next;
    next = undefined;
    post({ picture: { ...packed(change, packer), number: sent } });
  };
  worker.onmessage = ({ data }: MessageEvent<SceneAnswer>) => {
    if (data === 'unable') onUnable();
    else holder.dataset['drawn'] = String(data.drawn === sent && data.posed === posed);
  };
  return {
    show: (picture) => {
      if (Object.keys(changeOf(next ?? last, picture)).length === 0) return;
      sent += 1;
      holder.dataset['drawn'] = 'false';
      // Packing a large plan is a task of its own; of several pictures before it only the last counts.
      if (next === undefined) void send();
      next = picture;
    },
    stop: () => {
      leavePose();
      watcher.disconnect();
      worker.terminate();
      canvas.remove();
    },
  };
}

function sizeOf(holder: HTMLElement): SceneSize {
  const { clientWidth, clientHeight } = holder;
  const pixelRatio = Math.min(LARGEST_RATIO, Math.max(1, window.devicePixelRatio));
  return { width: clientWidth, height: clientHeight, pixelRatio };
}

/** Only what is another object than before. */
function changeOf(before: ScenePicture | undefined, now: ScenePicture): Partial<ScenePicture> {
  if (before === undefined) return now;
  const names = Object.keys(now) as (keyof ScenePicture)[];
  return Object.fromEntries(
    names.filter((name) => now[name] !== before[name]).map((name) => [name, now[name]]),
  );
}

/** A plan that is gone is reported as undefined. */
function packed(change: Partial<ScenePicture>, packer: Packer): PictureChange {
  const { plan, lines, ...rest } = change;
  return {
    ...rest,
    ...('plan' in change ? { plan: plan && packPlan(packer, plan) } : {}),
    ...(lines === undefined ? {} : { lines: packContours(lines.map(({ contour }) => contour)) }),
  };
}

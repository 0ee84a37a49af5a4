/** The worker that draws the sheet: it holds the one WebGL context, and draws only when something that it shows has changed. */
import { createRoot, extend, type ReconcilerRoot } from '@react-three/fiber';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
} from 'three';
import { createStore } from 'zustand/vanilla';
import { regionShapes } from '#app/state/region-shape.ts';
import { unpackContours } from '#app/worker/pack-contours.ts';
import { type Unpacker, unpackPlan } from '#app/worker/pack-plan.ts';
import { type ScenePainted, SheetScene } from './SheetScene.tsx';
import type { PictureChange, SceneMessage, SceneSize } from './scene-picture.ts';
import type { ViewPose } from './view-pose.ts';

extend({
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  HemisphereLight,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
});

const pose = createStore<ViewPose>(() => ({ target: { x: 0, y: 0 }, pixelsPerMm: 1, azimuth: 0, tilt: 0 }));
const painted = createStore<ScenePainted>(() => ({
  plan: undefined,
  relief: undefined,
  selection: [],
  view: 'plan',
  exaggeration: 1,
  minute: undefined,
  marked: [],
  isDark: false,
  shapes: [],
  linework: [],
  number: 0,
}));
const unpacker: Unpacker = { contours: new Map() };
let size: SceneSize = { width: 1, height: 1, pixelRatio: 1 };
let root: ReconcilerRoot<OffscreenCanvas> | undefined;
let scene: ReturnType<ReconcilerRoot<OffscreenCanvas>['render']> | undefined;

addEventListener('message', async ({ data }: MessageEvent<SceneMessage>) => {
  if (data.pose !== undefined) pose.setState(data.pose, true);
  if (data.picture !== undefined) painted.setState(changed(data.picture));
  size = data.size ?? size;
  if (data.canvas !== undefined) await start(data.canvas);
  if (data.size !== undefined) resize();
});

function changed(change: PictureChange & { readonly number: number }): Partial<ScenePainted> {
  const { plan: wire, lines, ...rest } = change;
  const plan = wire && unpackPlan(unpacker, wire);
  return {
    ...rest,
    ...('plan' in change
      ? { plan, shapes: regionShapes(plan?.regions ?? [], painted.getState().shapes) }
      : {}),
    ...(lines === undefined ? {} : { linework: unpackContours(lines) }),
  };
}

async function start(canvas: OffscreenCanvas): Promise<void> {
  const { pixelRatio, width, height } = size;
  root = createRoot(canvas);
  await root.configure({
    orthographic: true,
    flat: true,
    frameloop: 'demand',
    dpr: pixelRatio,
    size: { width, height, top: 0, left: 0 },
    gl: { antialias: true },
  });
  scene = root.render(<SheetScene painted={painted} pose={pose} />);
}

/** To the size told last: it may have changed while the scene was being started. */
function resize(): void {
  const state = scene?.getState();
  state?.setDpr(size.pixelRatio);
  state?.setSize(size.width, size.height);
}

/** The worker that draws the sheet: it holds the one WebGL context, and draws only when something that it shows has changed. */
import { createRoot, extend, type ReconcilerRoot } from '@react-three/fiber';
import {
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
  Mesh,
  Points,
} from 'three';
import { createStore, type StoreApi } from 'zustand/vanilla';
import { regionShapes } from '#app/state/region-shape.ts';
import { unpackContours } from '#app/worker/pack-contours.ts';
import { type Unpacker, unpackPlan } from '#app/worker/pack-plan.ts';
import { type ScenePainted, SheetScene } from './SheetScene.tsx';
import type { NumberedPose, PictureChange, SceneAnswer, SceneMessage, SceneSize } from './scene-picture.ts';

extend({
  BufferAttribute,
  BufferGeometry,
  Color,
  Group,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
  Mesh,
  Points,
});

/** What the worker owns: what is to be seen, and where it is drawn once the canvas has come. */
interface PaintedScene {
  readonly pose: StoreApi<NumberedPose>;
  readonly painted: StoreApi<ScenePainted>;
  readonly unpacker: Unpacker;
  size: SceneSize;
  scene: StartedScene | undefined;
}

type StartedScene = ReturnType<ReconcilerRoot<OffscreenCanvas>['render']>;

function emptyScene(): PaintedScene {
  return {
    pose: createStore<NumberedPose>(() => ({
      target: { x: 0, y: 0 },
      pixelsPerMm: 1,
      azimuth: 0,
      tilt: 0,
      number: 0,
    })),
    painted: createStore<ScenePainted>(() => ({
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
    })),
    unpacker: { contours: new Map() },
    size: { width: 1, height: 1, pixelRatio: 1 },
    scene: undefined,
  };
}

async function take(scene: PaintedScene, { pose, picture, size, canvas }: SceneMessage): Promise<void> {
  if (pose !== undefined) scene.pose.setState(pose, true);
  if (picture !== undefined) scene.painted.setState(changed(scene, picture));
  scene.size = size ?? scene.size;
  if (canvas !== undefined) scene.scene = await start(scene, canvas);
  if (size !== undefined) resize(scene);
}

function changed(
  { unpacker, painted }: PaintedScene,
  change: PictureChange & { readonly number: number },
): Partial<ScenePainted> {
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

async function start(
  { size, painted, pose }: PaintedScene,
  canvas: OffscreenCanvas,
): Promise<StartedScene | undefined> {
  if (new OffscreenCanvas(1, 1).getContext('webgl2') === null) {
    postMessage('unable' satisfies SceneAnswer);
    return undefined;
  }
  const { pixelRatio, width, height } = size;
  const root = createRoot(canvas);
  await root.configure({
    orthographic: true,
    flat: true,
    frameloop: 'demand',
    dpr: pixelRatio,
    size: { width, height, top: 0, left: 0 },
    gl: { antialias: true },
  });
  return root.render(<SheetScene painted={painted} pose={pose} />);
}

/** To the last size received: it may have changed while the scene was starting. */
function resize({ scene, size }: PaintedScene): void {
  const state = scene?.getState();
  state?.setDpr(size.pixelRatio);
  state?.setSize(size.width, size.height);
}

const scene = emptyScene();
addEventListener('message', ({ data }: MessageEvent<SceneMessage>) => take(scene, data));

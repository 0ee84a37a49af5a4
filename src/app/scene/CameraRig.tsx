/** Holds the camera to the pose: the pose changes outside React, and one frame is drawn for each change. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import type { DirectionalLight, OrthographicCamera } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from './view-pose.ts';

/** Far enough back, and deep enough, for any sheet: a parallel view costs nothing for distance. */
const BACK = 10_000;

export function CameraRig({ pose }: { readonly pose: StoreApi<ViewPose> }) {
  const invalidate = useThree((state) => state.invalidate);
  const light = useRef<DirectionalLight>(null);
  useEffect(() => pose.subscribe(() => invalidate()), [pose, invalidate]);
  useFrame(({ camera }) => {
    const now = pose.getState();
    aim(camera as OrthographicCamera, now);
    if (light.current !== null) shine(light.current, now);
  });
  return (
    <>
      <hemisphereLight args={['#ffffff', '#c9ced6', 1.7]} />
      <directionalLight ref={light} intensity={2} />
    </>
  );
}

function aim(camera: OrthographicCamera, { target, pixelsPerMm, azimuth, tilt }: ViewPose): void {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const [flat, up] = [Math.sin(tilt), Math.cos(tilt)];
  camera.position.set(target.x + s * flat * BACK, target.y - c * flat * BACK, up * BACK);
  camera.up.set(-s * up, c * up, flat);
  camera.near = 0;
  camera.far = 2 * BACK;
  camera.zoom = pixelsPerMm;
  camera.lookAt(target.x, target.y, 0);
  camera.updateProjectionMatrix();
}

/** From the upper left of the view and well above it, so that a step reads the same from every side. */
function shine(light: DirectionalLight, { azimuth, target }: ViewPose): void {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  light.position.set(target.x - 0.8 * c - 0.6 * s, target.y - 0.8 * s + 0.6 * c, 1);
  light.target.position.set(target.x, target.y, 0);
  light.target.updateMatrixWorld();
}

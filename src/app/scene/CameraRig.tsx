/** Holds the camera to the pose: the pose changes outside React, and one frame is drawn for each change. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect } from 'react';
import type { OrthographicCamera } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from './view-pose.ts';

/** Far enough back, and deep enough, for any sheet: a parallel view costs nothing for distance. */
const BACK = 10_000;

export function CameraRig({ pose }: { readonly pose: StoreApi<ViewPose> }) {
  const invalidate = useThree((state) => state.invalidate);
  useEffect(() => pose.subscribe(() => invalidate()), [pose, invalidate]);
  useFrame(({ camera }) => aim(camera as OrthographicCamera, pose.getState()));
  return null;
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

/** Line segments of a width in pixels, whatever the zoom; and, where wanted, of so many millimetres more. */
import { useFrame } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { Vector4, type WebGLRenderer } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import type { StoreApi } from 'zustand/vanilla';
import { fatGeometry } from './fat-geometry.ts';
import type { ViewPose } from './view-pose.ts';

interface FatSegmentsProps {
  /** Six numbers a segment. */
  readonly positions: Float32Array;
  readonly color: string;
  readonly width: number;
  readonly wide?: { readonly mm: number; readonly pose: StoreApi<ViewPose> };
  /** Drawn in this order, over all that came before. */
  readonly order: number;
}

export function FatSegments({ positions, color, width, wide, order }: FatSegmentsProps) {
  const geometry = useMemo(() => fatGeometry(positions), [positions]);
  const material = useMemo(
    () => new LineMaterial({ color, linewidth: width, depthTest: false, depthWrite: false }),
    [color, width],
  );
  useFrame(() => {
    if (wide !== undefined) material.linewidth = width + wide.mm * wide.pose.getState().pixelsPerMm;
  });
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => material.dispose(), [material]);
  if (positions.length === 0) return null;
  return (
    <mesh
      geometry={geometry}
      material={material}
      frustumCulled={false}
      renderOrder={order}
      onBeforeRender={(gl) => sizePixels(gl, material)}
    />
  );
}

/** The material widens its lines by pixels of the view. */
function sizePixels(gl: WebGLRenderer, material: LineMaterial): void {
  const { z, w } = gl.getViewport(new Vector4());
  material.resolution.set(z, w);
}

/** Line segments of a width in pixels, whatever the zoom. */
import { useEffect, useMemo } from 'react';
import { Vector4, type WebGLRenderer } from 'three';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { fatGeometry } from './fat-geometry.ts';

interface FatSegmentsProps {
  /** Six numbers a segment. */
  readonly positions: Float32Array;
  readonly color: string;
  readonly width: number;
  /** Drawn in this order, over all that came before. */
  readonly order: number;
}

export function FatSegments({ positions, color, width, order }: FatSegmentsProps) {
  const geometry = useMemo(() => fatGeometry(positions), [positions]);
  const material = useMemo(
    () => new LineMaterial({ color, linewidth: width, depthTest: false, depthWrite: false }),
    [color, width],
  );
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

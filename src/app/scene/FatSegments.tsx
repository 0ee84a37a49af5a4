/** Line segments of a width in pixels, whatever the zoom. */
import { useEffect, useMemo } from 'react';
import { LineMaterial } from 'three/examples/jsm/lines/LineMaterial.js';
import { LineSegments2 } from 'three/examples/jsm/lines/LineSegments2.js';
import { LineSegmentsGeometry } from 'three/examples/jsm/lines/LineSegmentsGeometry.js';

interface FatSegmentsProps {
  /** Six numbers a segment. */
  readonly positions: Float32Array;
  readonly color: string;
  readonly width: number;
  /** Drawn in this order, over all that came before. */
  readonly order: number;
}

export function FatSegments({ positions, color, width, order }: FatSegmentsProps) {
  const geometry = useMemo(() => {
    const made = new LineSegmentsGeometry();
    made.setPositions(positions);
    return made;
  }, [positions]);
  const material = useMemo(
    () => new LineMaterial({ color, linewidth: width, depthTest: false, depthWrite: false }),
    [color, width],
  );
  const lines = useMemo(() => {
    const made = new LineSegments2(geometry, material);
    made.frustumCulled = false;
    return made;
  }, [geometry, material]);
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => material.dispose(), [material]);
  return positions.length === 0 ? null : <primitive object={lines} renderOrder={order} />;
}

/** Line segments one pixel wide: the cheapest there are, for linework and for lines that only mark where something will be. */
import { useMemo } from 'react';
import { segmentDistances } from './plan-arrays.ts';

interface ThinSegmentsProps {
  /** Six numbers a segment. */
  readonly positions: Float32Array;
  readonly color: string;
  /** Drawn in this order, over all that came before. */
  readonly order: number;
  /** Length of dashes and of the gaps between them, mm; an unbroken line where not given. */
  readonly dash?: number;
}

export function ThinSegments({ positions, color, order, dash }: ThinSegmentsProps) {
  const distances = useMemo(
    () => (dash === undefined ? undefined : segmentDistances(positions)),
    [positions, dash],
  );
  if (positions.length === 0) return null;
  return (
    <lineSegments key={`${positions.length} ${dash !== undefined}`} renderOrder={order} frustumCulled={false}>
      <bufferGeometry>
        <bufferAttribute attach="attributes-position" args={[positions, 3]} />
        {distances !== undefined && (
          <bufferAttribute attach="attributes-lineDistance" args={[distances, 1]} />
        )}
      </bufferGeometry>
      {dash === undefined ? (
        <lineBasicMaterial color={color} depthTest={false} depthWrite={false} />
      ) : (
        <lineDashedMaterial
          color={color}
          dashSize={dash}
          gapSize={dash}
          depthTest={false}
          depthWrite={false}
        />
      )}
    </lineSegments>
  );
}

/** Line segments one pixel wide: the cheapest there are, for linework and for lines too close together to need more. */

interface ThinSegmentsProps {
  /** Six numbers a segment. */
  readonly positions: Float32Array;
  readonly color: string;
  /** Drawn in this order, over all that came before. */
  readonly order: number;
}

export function ThinSegments({ positions, color, order }: ThinSegmentsProps) {
  if (positions.length === 0) return null;
  return (
    <lineSegments key={positions.length} renderOrder={order} frustumCulled={false}>
      <bufferGeometry>
        <bufferAttribute attach="attributes-position" args={[positions, 3]} />
      </bufferGeometry>
      <lineBasicMaterial color={color} depthTest={false} depthWrite={false} />
    </lineSegments>
  );
}

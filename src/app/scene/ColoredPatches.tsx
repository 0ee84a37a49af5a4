/** Flat pieces of the picture in their colours, small ones over large ones; metal that is bare already wears fine dots. */
import { useEffect, useMemo } from 'react';
import { DoubleSide, ShaderMaterial } from 'three';
import { fillArrays, type Patch, type TriangleCache } from './plan-arrays.ts';

interface ColoredPatchesProps {
  readonly patches: readonly Patch[];
  readonly cache: TriangleCache;
}

const VERTEX = `
  attribute vec4 color;
  varying vec4 vColor;
  void main() {
    vColor = color;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;
/** A dot of a pixel and a half every seven pixels, both ways, in rows by turns. */
const FRAGMENT = `
  varying vec4 vColor;
  void main() {
    vec2 place = gl_FragCoord.xy;
    place.x += mod(floor(place.y / 7.0), 2.0) * 3.5;
    float away = length(mod(place, 7.0) - 3.5);
    float dot_ = vColor.a * (1.0 - smoothstep(0.7, 1.5, away));
    gl_FragColor = vec4(vColor.rgb * (1.0 - 0.55 * dot_), 1.0);
    #include <colorspace_fragment>
  }
`;

export function ColoredPatches({ patches, cache }: ColoredPatchesProps) {
  const { positions, colors } = useMemo(() => fillArrays(patches, cache), [patches, cache]);
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: VERTEX,
        fragmentShader: FRAGMENT,
        depthTest: false,
        depthWrite: false,
        side: DoubleSide,
      }),
    [],
  );
  useEffect(() => () => material.dispose(), [material]);
  if (positions.length === 0) return null;
  return (
    <mesh key={positions.length} frustumCulled={false} renderOrder={0} material={material}>
      <bufferGeometry>
        <bufferAttribute attach="attributes-position" args={[positions, 3]} />
        <bufferAttribute attach="attributes-color" args={[colors, 4]} />
      </bufferGeometry>
    </mesh>
  );
}

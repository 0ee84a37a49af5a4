/** What is too small on screen for lines: a dot for each, as large as it is, and as pale as it covers little of a pixel. */
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { BufferAttribute, BufferGeometry, Color, ShaderMaterial } from 'three';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { dotsBelow, type SizedContours } from './sized-contours.ts';

interface DotsProps {
  readonly sized: SizedContours;
  /** Dots stand for what is smaller, mm. */
  readonly below: number;
  /** Side of the cells in which what is less than half as large is one dot, mm. */
  readonly cell: number;
  readonly color: string;
  readonly pose: StoreApi<ViewPose>;
  readonly order: number;
}

const VERTEX = `
  attribute float size;
  uniform float pixels;
  varying float vSize;
  void main() {
    vSize = size * pixels;
    gl_PointSize = max(vSize, 1.0);
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;
/** A disc with an even border; below a pixel its share of the pixel. */
const FRAGMENT = `
  uniform vec3 color;
  varying float vSize;
  void main() {
    float away = length(gl_PointCoord - 0.5) * max(vSize, 1.0);
    float disc = clamp(vSize / 2.0 + 0.5 - away, 0.0, 1.0);
    float share = vSize < 1.0 ? 0.785 * vSize * vSize : disc;
    gl_FragColor = vec4(color, share);
    #include <colorspace_fragment>
  }
`;

export function Dots({ sized, below, cell, color, pose, order }: DotsProps) {
  const pixelRatio = useThree(({ viewport }) => viewport.dpr);
  const dots = useMemo(() => dotsBelow(sized, below, cell), [sized, below, cell]);
  const geometry = useMemo(() => {
    const made = new BufferGeometry();
    made.setAttribute('position', new BufferAttribute(dots.middles, 3));
    made.setAttribute('size', new BufferAttribute(dots.sizes, 1));
    return made;
  }, [dots]);
  const material = useMemo(
    () =>
      new ShaderMaterial({
        vertexShader: VERTEX,
        fragmentShader: FRAGMENT,
        uniforms: { pixels: { value: 1 }, color: { value: new Color(color) } },
        depthTest: false,
        depthWrite: false,
        transparent: true,
      }),
    [color],
  );
  useEffect(() => () => geometry.dispose(), [geometry]);
  useEffect(() => () => material.dispose(), [material]);
  useFrame(() => {
    const { pixels } = material.uniforms;
    if (pixels !== undefined) pixels.value = pose.getState().pixelsPerMm * pixelRatio;
  });
  if (dots.sizes.length === 0) return null;
  return <points geometry={geometry} material={material} renderOrder={order} frustumCulled={false} />;
}

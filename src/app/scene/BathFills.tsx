/**
 * The sheet as it hangs in the bath at a minute: the piece peeled last in the colour of its stage, pieces bare before it dotted
 * metal, or with a new coat for each stage its own window alone; all else under maskant.
 */
import { useMemo, useRef } from 'react';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { isPeeled } from './bath-minute.ts';
import { ColoredPatches } from './ColoredPatches.tsx';
import { linearRgb } from './linear-rgb.ts';
import { type Patch, ringArea, type TriangleCache } from './plan-arrays.ts';
import { RingsAtScale } from './rings-at-scale.ts';
import type { SceneTheme } from './scene-theme.ts';
import { lookOf } from './stage-looks.ts';

interface BathFillsProps {
  readonly plan: ShownPlan;
  readonly minute: number;
  readonly theme: SceneTheme;
  readonly pixelsPerMm: number;
}

export function BathFills({ plan, minute, theme, pixelsPerMm }: BathFillsProps) {
  const triangles = useRef<TriangleCache>(new WeakMap());
  const rings = useRef(new RingsAtScale());
  const peeled = plan.stages.filter((stage) => isPeeled(stage, minute)).length;
  const patches = useMemo(
    () => bathPatches(plan, peeled, theme, (contour) => rings.current.ringOf(contour, pixelsPerMm)),
    [plan, peeled, theme, pixelsPerMm],
  );
  return <ColoredPatches patches={patches} cache={triangles.current} />;
}

function bathPatches(
  plan: ShownPlan,
  peeled: number,
  theme: SceneTheme,
  ringOf: (contour: Contour) => Patch['ring'],
): Patch[] {
  const maskant = linearRgb(theme.maskant);
  const ground = linearRgb(theme.ground);
  const metal = linearRgb(theme.metal);
  const patches: Patch[] = [];
  // An island's rim and the piece that fills it are one ring: the rim comes first, so that the piece lies on it.
  const bare: Patch[] = [];
  for (const stage of plan.stages.slice(plan.masking === 're-mask' ? peeled - 1 : 0, peeled)) {
    const isNow = stage === plan.stages[peeled - 1];
    const look = isNow
      ? { color: linearRgb(lookOf(stage.color, theme).floor) }
      : { color: metal, isDotted: true };
    for (const contour of stage.piece) {
      const ring = ringOf(contour);
      if (ringArea(ring) < 0) patches.push({ ring, color: maskant });
      else bare.push({ ring, ...look });
    }
  }
  const sheet = plan.outline === null ? [] : [{ ring: ringOf(plan.outline), color: maskant }];
  const holes = plan.cutouts.map((contour) => ({ ring: ringOf(contour), color: ground }));
  return [...sheet, ...patches, ...bare, ...holes];
}

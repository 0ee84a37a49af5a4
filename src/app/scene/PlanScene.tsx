/** The sheet from above: regions tinted by level, linework, and scribe lines in the colour and the mark of their stage. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import type { PlanFile, PlanFileStage } from '#handoff/plan-file.ts';
import { FatSegments } from './FatSegments.tsx';
import {
  contourSegments,
  fillArrays,
  markSegments,
  ringSegments,
  type TriangleCache,
} from './plan-arrays.ts';
import type { SceneTheme } from './scene-theme.ts';
import { casingFor, tintOf } from './stage-tint.ts';
import type { ViewPose } from './view-pose.ts';

interface PlanSceneProps {
  readonly planFile: PlanFile | undefined;
  readonly shapes: readonly RegionShape[];
  readonly lines: readonly DrawnLine[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
}

const WIDTH = { linework: 1, casing: 4.6, scribe: 2.4, tickCasing: 3.4, tick: 1.5, selection: 3.5 };
/** Distance and length of the mark's ticks, in pixels. */
const TICK = { pitch: 7, length: 11 };

export function PlanScene({ planFile, shapes, lines, selection, theme, pose }: PlanSceneProps) {
  const chosen = useMemo(() => {
    const ids = new Set(selection);
    return ringSegments(shapes.filter((shape) => ids.has(shape.region.id)).flatMap((shape) => shape.rings));
  }, [shapes, selection]);
  const linework = useMemo(() => contourSegments(lines.map((line) => line.contour)), [lines]);
  const pixelsPerMm = useScaleStep(pose);
  return (
    <>
      <RegionFills planFile={planFile} shapes={shapes} metal={theme.metal} />
      <FatSegments positions={linework} color={theme.ink} width={WIDTH.linework} order={1} />
      {planFile?.stages.map((stage) => (
        <ScribeLines key={stage.number} stage={stage} pixelsPerMm={pixelsPerMm} />
      ))}
      <FatSegments positions={chosen} color={theme.selection} width={WIDTH.selection} order={6} />
    </>
  );
}

/** The scale in steps of a factor √2: marks keep their size on screen to that, and are remade only at a step. */
function useScaleStep(pose: StoreApi<ViewPose>): number {
  const [step, setStep] = useState(() => stepOf(pose.getState()));
  useEffect(() => pose.subscribe((now) => setStep(stepOf(now))), [pose]);
  return 2 ** (step / 2);
}

function stepOf({ pixelsPerMm }: ViewPose): number {
  return Math.round(2 * Math.log2(pixelsPerMm));
}

interface RegionFillsProps {
  readonly planFile: PlanFile | undefined;
  readonly shapes: readonly RegionShape[];
  readonly metal: string;
}

function RegionFills({ planFile, shapes, metal }: RegionFillsProps) {
  const cache = useRef<TriangleCache>(new WeakMap());
  const fills = useMemo(() => {
    const colors = new Map(
      planFile?.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])),
    );
    return fillArrays(shapes, (shape) => tintOf(colors.get(shape.region.id), metal), cache.current);
  }, [planFile, shapes, metal]);
  if (fills.positions.length === 0) return null;
  return (
    <mesh key={fills.positions.length} frustumCulled={false} renderOrder={0}>
      <bufferGeometry>
        <bufferAttribute attach="attributes-position" args={[fills.positions, 3]} />
        <bufferAttribute attach="attributes-color" args={[fills.colors, 3]} />
      </bufferGeometry>
      <meshBasicMaterial vertexColors depthTest={false} depthWrite={false} side={2} />
    </mesh>
  );
}

interface ScribeLinesProps {
  readonly stage: PlanFileStage;
  readonly pixelsPerMm: number;
}

function ScribeLines({ stage, pixelsPerMm }: ScribeLinesProps) {
  const lines = useMemo(() => contourSegments(stage.lines), [stage.lines]);
  const ticks = useMemo(
    () =>
      markSegments(stage.lines, {
        stage: stage.number,
        pitch: TICK.pitch / pixelsPerMm,
        length: TICK.length / pixelsPerMm,
      }),
    [stage.lines, stage.number, pixelsPerMm],
  );
  const casing = casingFor(stage.color);
  return (
    <>
      <FatSegments positions={lines} color={casing} width={WIDTH.casing} order={2} />
      <FatSegments positions={ticks} color={casing} width={WIDTH.tickCasing} order={2} />
      <FatSegments positions={lines} color={stage.color} width={WIDTH.scribe} order={3} />
      <FatSegments positions={ticks} color={stage.color} width={WIDTH.tick} order={3} />
    </>
  );
}

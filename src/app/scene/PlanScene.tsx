/** The sheet from above: regions tinted by level, linework, and scribe lines in the colour and the mark of their stage. */
import { useEffect, useMemo, useRef, useState } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { contourPoints, type RegionShape } from '#app/state/region-shape.ts';
import type { DrawnLine } from '#app/worker/planned-page.ts';
import { itemAt } from '#geometry/assert.ts';
import { spansLength } from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import type { Contour, PlanFile, PlanFileStage } from '#handoff/plan-file.ts';
import { FatSegments } from './FatSegments.tsx';
import {
  contourSegments,
  fillArrays,
  markSegments,
  ringSegments,
  type TriangleCache,
} from './plan-arrays.ts';
import type { SceneTheme } from './scene-theme.ts';
import { casingFor, plainColor, tintOf } from './stage-tint.ts';
import { ThinSegments } from './ThinSegments.tsx';
import type { ViewPose } from './view-pose.ts';

interface PlanSceneProps {
  readonly planFile: PlanFile | undefined;
  readonly shapes: readonly RegionShape[];
  readonly lines: readonly DrawnLine[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
}

const WIDTH = { tickCasing: 3.4, tick: 1.5, selection: 3.5 };
const SCRIBE = { near: { casing: 4.6, core: 2.4 }, far: { casing: 3.2, core: 1.7 } };
/** Distance and length of the mark's ticks, in pixels. */
const TICK = { pitch: 7, length: 11 };
/** Mean length of a stage's lines, in pixels, from which they carry marks, and below which they are one pixel wide. */
const ROOM = { marks: 220, casing: 80 };

export function PlanScene({ planFile, shapes, lines, selection, theme, pose }: PlanSceneProps) {
  const pixelsPerMm = useScaleStep(pose);
  const chosen = useMemo(() => {
    const ids = new Set(selection);
    return ringSegments(shapes.filter((shape) => ids.has(shape.region.id)).flatMap((shape) => shape.rings));
  }, [shapes, selection]);
  const linework = useMemo(
    () =>
      contourSegments(
        lines.map((line) => line.contour),
        pixelsPerMm,
      ),
    [lines, pixelsPerMm],
  );
  return (
    <>
      <RegionFills planFile={planFile} shapes={shapes} theme={theme} />
      <ThinSegments positions={linework} color={theme.ink} order={1} />
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

type RegionFillsProps = Pick<PlanSceneProps, 'planFile' | 'shapes' | 'theme'>;

function RegionFills({ planFile, shapes, theme }: RegionFillsProps) {
  const cache = useRef<TriangleCache>(new WeakMap());
  const fills = useMemo(() => {
    const colors = new Map(
      planFile?.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])),
    );
    const regions = shapes.map(({ rings, region }) => ({
      ring: itemAt(rings, 0),
      color: tintOf(colors.get(region.id), theme.metal),
    }));
    const ground = plainColor(theme.ground);
    const holes = (planFile?.cutouts ?? []).map((contour) => ({
      ring: contourPoints(contour),
      color: ground,
    }));
    return fillArrays([...regions, ...holes], cache.current);
  }, [planFile, shapes, theme]);
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
  const lines = useMemo(() => contourSegments(stage.lines, pixelsPerMm), [stage.lines, pixelsPerMm]);
  const meanLength = useMemo(() => meanLengthOf(stage.lines), [stage.lines]) * pixelsPerMm;
  const hasMarks = meanLength > ROOM.marks;
  const ticks = useMemo(
    () =>
      hasMarks
        ? markSegments(stage.lines, {
            stage: stage.number,
            pitch: TICK.pitch / pixelsPerMm,
            length: TICK.length / pixelsPerMm,
          })
        : new Float32Array(),
    [stage.lines, stage.number, pixelsPerMm, hasMarks],
  );
  const casing = casingFor(stage.color);
  if (meanLength < ROOM.casing) return <ThinSegments positions={lines} color={casing} order={3} />;
  const width = hasMarks ? SCRIBE.near : SCRIBE.far;
  return (
    <>
      <FatSegments positions={lines} color={casing} width={width.casing} order={2} />
      <FatSegments positions={ticks} color={casing} width={WIDTH.tickCasing} order={2} />
      <FatSegments positions={lines} color={stage.color} width={width.core} order={3} />
      <FatSegments positions={ticks} color={stage.color} width={WIDTH.tick} order={3} />
    </>
  );
}

function meanLengthOf(lines: readonly Contour[]): number {
  const total = lines.reduce((sum, line) => sum + spansLength(pathOfContour(line).spans), 0);
  return total / Math.max(1, lines.length);
}

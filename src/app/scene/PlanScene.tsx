/** The sheet from above: regions tinted by level, linework, and scribe lines in the colour and the mark of their stage. */
import { useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Contour, ShownPlan, ShownStage } from '#job/files/plan-file.ts';
import { BathFills } from './BathFills.tsx';
import { cutLines, isPeeled } from './bath-minute.ts';
import { ColoredPatches } from './ColoredPatches.tsx';
import { FatSegments } from './FatSegments.tsx';
import { MARK_ROOM as ROOM, SCRIBE_WIDTH as SCRIBE, TICK, LINE_WIDTH as WIDTH } from './line-looks.ts';
import {
  contourSegments,
  markSegments,
  meanLength,
  type SegmentCache,
  type TriangleCache,
} from './plan-arrays.ts';
import { RingsAtScale } from './rings-at-scale.ts';
import type { SceneTheme } from './scene-theme.ts';
import { casingFor, plainColor, tintOf } from './stage-tint.ts';
import { ThinSegments } from './ThinSegments.tsx';
import { useScaleStep } from './use-scale-step.ts';
import type { ViewPose } from './view-pose.ts';

interface PlanSceneProps {
  readonly plan: ShownPlan | undefined;
  readonly shapes: readonly RegionShape[];
  /** As drawn. */
  readonly linework: readonly Contour[];
  readonly selection: readonly string[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
  /** Immersed; undefined for the end of the run. */
  readonly minute: number | undefined;
  /** The one stage whose lines are drawn; undefined for all. */
  readonly onlyStage: number | undefined;
  /** Outline of the finding that was last flown to. */
  readonly marked: readonly Contour[];
}

/** Numbers of a stage's segments, six each, above which short lines go without a casing: drawn in software, each costs time. */
const MOST_CASED = 12_000;

export function PlanScene(props: PlanSceneProps) {
  const { plan, shapes, linework, selection, theme, pose, minute, onlyStage, marked } = props;
  const pixelsPerMm = useScaleStep(pose);
  const segments = useRef<SegmentCache>(new WeakMap());
  const chosen = useMemo(() => {
    const ids = new Set(selection);
    const contours = shapes
      .filter((shape) => ids.has(shape.region.id))
      .flatMap(({ region }) => region.contours);
    return contourSegments(contours, pixelsPerMm, new WeakMap());
  }, [shapes, selection, pixelsPerMm]);
  const drawn = useMemo(() => contourSegments(linework, pixelsPerMm, new WeakMap()), [linework, pixelsPerMm]);
  const linedStages = cutLines(plan, minute).filter(
    ({ number }) => onlyStage === undefined || number === onlyStage,
  );
  const mark = useMemo(() => contourSegments(marked, pixelsPerMm, new WeakMap()), [marked, pixelsPerMm]);
  return (
    <>
      {plan === undefined || minute === undefined ? (
        <RegionFills plan={plan} shapes={shapes} theme={theme} pixelsPerMm={fillScale(pixelsPerMm)} />
      ) : (
        <BathFills plan={plan} minute={minute} theme={theme} pixelsPerMm={fillScale(pixelsPerMm)} />
      )}
      <ThinSegments positions={drawn} color={theme.ink} order={1} />
      {linedStages.map((stage) => (
        <ScribeLines
          key={stage.number}
          stage={stage}
          pixelsPerMm={pixelsPerMm}
          cache={segments.current}
          sealedColor={isPeeled(stage, minute) ? undefined : theme.sealed}
        />
      ))}
      <FatSegments positions={chosen} color={theme.selection} width={WIDTH.selection} order={6} />
      <FatSegments positions={mark} color={theme.stop} width={WIDTH.mark} order={7} />
    </>
  );
}

/** Fills are made again at each step of four: at least as fine as the lines on them. */
function fillScale(pixelsPerMm: number): number {
  return 4 ** Math.ceil(Math.log2(pixelsPerMm) / 2);
}

type RegionFillsProps = Pick<PlanSceneProps, 'plan' | 'shapes' | 'theme'> & { readonly pixelsPerMm: number };

/** The part as it comes out of the run: regions tinted by the stage that took them to their level. */
function RegionFills({ plan, shapes, theme, pixelsPerMm }: RegionFillsProps) {
  const cache = useRef<TriangleCache>(new WeakMap());
  const rings = useRef(new RingsAtScale());
  const patches = useMemo(() => {
    const colors = new Map(plan?.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])));
    const ringOf = (contour: Contour) => rings.current.ringOf(contour, pixelsPerMm);
    const regions = shapes.map(({ region }) => ({
      ring: ringOf(itemAt(region.contours, 0)),
      color: tintOf(colors.get(region.id), theme.metal),
    }));
    const ground = plainColor(theme.ground);
    const holes = (plan?.cutouts ?? []).map((contour) => ({ ring: ringOf(contour), color: ground }));
    return [...regions, ...holes];
  }, [plan, shapes, theme, pixelsPerMm]);
  return <ColoredPatches patches={patches} cache={cache.current} />;
}

interface ScribeLinesProps {
  readonly stage: ShownStage;
  readonly pixelsPerMm: number;
  /** Set while the line is sealed over. */
  readonly sealedColor: string | undefined;
  readonly cache: SegmentCache;
}

function ScribeLines({ stage, pixelsPerMm, sealedColor, cache }: ScribeLinesProps) {
  const lines = useMemo(
    () => contourSegments(stage.lines, pixelsPerMm, cache),
    [stage.lines, pixelsPerMm, cache],
  );
  const length = useMemo(() => meanLength(lines, stage.lines.length), [lines, stage.lines]) * pixelsPerMm;
  const hasMarks = length > ROOM.marks;
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
  if (sealedColor !== undefined) return <ThinSegments positions={lines} color={sealedColor} order={2} />;
  const casing = casingFor(stage.color);
  const isFar = length < ROOM.casing;
  // Lines too many and too short for a casing keep the stage's own colour: by that they differ from plain borders.
  if (isFar && lines.length > MOST_CASED) {
    return <FatSegments positions={lines} color={stage.color} width={SCRIBE.far.core} order={3} />;
  }
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

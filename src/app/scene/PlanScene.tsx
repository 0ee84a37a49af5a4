/** The sheet from above: regions tinted by level, linework, and scribe lines in the colour and the mark of their stage. */
import { useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { EdgeBand } from '#app/state/shown-bands.ts';
import { itemAt } from '#geometry/assert.ts';
import { growLoops } from '#geometry/grow/grow-loops.ts';
import { contourOfLoop } from '#handoff/contour.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { BathFills } from './BathFills.tsx';
import { cutLines, isPeeled } from './bath-minute.ts';
import { ColoredPatches } from './ColoredPatches.tsx';
import { EdgeBands } from './EdgeBands.tsx';
import { FatSegments } from './FatSegments.tsx';
import { LargePlan } from './large/LargePlan.tsx';
import { MovedPicture } from './large/MovedPicture.tsx';
import { EDGE_WIDTH, RETURNED_WIDTH, RING, THROUGH_DASH } from './line-looks.ts';
import { linearRgb } from './linear-rgb.ts';
import { contourSegments, type SegmentCache, type TriangleCache } from './plan-arrays.ts';
import { RingsAtScale } from './rings-at-scale.ts';
import { ScribeLines } from './ScribeLines.tsx';
import type { SceneTheme } from './scene-theme.ts';
import { lookOf } from './stage-looks.ts';
import { ThinSegments } from './ThinSegments.tsx';
import { useRestScale } from './use-rest-scale.ts';
import { useScaleStep } from './use-scale-step.ts';
import type { ViewPose } from './view-pose.ts';

interface PlanSceneProps {
  readonly plan: ShownPlan | undefined;
  readonly shapes: readonly RegionShape[];
  /** As drawn. */
  readonly linework: readonly Contour[];
  /** Floors of the other face. */
  readonly behind: readonly Contour[];
  /** Where drawn edges will land. */
  readonly bands: readonly EdgeBand[];
  /** Lines that came back. */
  readonly returned: readonly Contour[];
  readonly selection: readonly string[];
  /** Region ids that are pointed at, here or in another view. */
  readonly lit: readonly string[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
  /** Immersed; undefined for the end of the run. */
  readonly minute: number | undefined;
  /** The one stage whose lines are drawn; undefined for all. */
  readonly onlyStage: number | undefined;
  /** Outline of the finding that was last flown to. */
  readonly marked: readonly Contour[];
}

/** More contours than this can't be drawn anew for each frame: without a graphics processor that takes a tenth of a second. */
const MOST_CONTOURS = 3_000;

export function PlanScene(props: PlanSceneProps) {
  const { shapes, linework } = props;
  return Math.max(shapes.length, linework.length) > MOST_CONTOURS ? (
    <LargeScene {...props} />
  ) : (
    <SmallScene {...props} />
  );
}

function LargeScene({ selection, lit, marked, ...props }: PlanSceneProps) {
  const { shapes, theme, pose } = props;
  const { ringed, few } = useMemo(() => {
    const lists = [selection, lit];
    return {
      ringed: lists.filter(({ length }) => length > MOST_OUTSIDE).flat(),
      few: lists.filter(({ length }) => length <= MOST_OUTSIDE),
    };
  }, [selection, lit]);
  const pixelsPerMm = useScaleStep(pose);
  const restScale = useRestScale(pose);
  const mark = useMemo(() => contourSegments(marked, pixelsPerMm, new WeakMap()), [marked, pixelsPerMm]);
  return (
    <MovedPicture
      pose={pose}
      slow={(asked) => <LargePlan {...props} {...asked} ringed={ringed.length === 0 ? NO_IDS : ringed} />}
      over={
        <>
          {few.map((ids, list) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: lists are told apart by place alone
            <Rings key={list} shapes={shapes} ids={ids} color={theme.accent} scale={restScale} />
          ))}
          <FatSegments positions={mark} color={theme.stop} width={RING.width} order={7} />
        </>
      }
    />
  );
}

const NO_IDS: readonly string[] = [];

function SmallScene(props: PlanSceneProps) {
  const { plan, shapes, linework, behind, bands, returned, selection, lit, theme, pose, minute } = props;
  const { onlyStage, marked } = props;
  const pixelsPerMm = useScaleStep(pose);
  const restScale = useRestScale(pose);
  const segments = useRef<SegmentCache>(new WeakMap());
  const drawn = useMemo(() => contourSegments(linework, pixelsPerMm, new WeakMap()), [linework, pixelsPerMm]);
  const through = useMemo(() => contourSegments(behind, pixelsPerMm, new WeakMap()), [behind, pixelsPerMm]);
  const edge = useMemo(() => {
    const edges =
      plan === undefined ? [] : [...(plan.outline === null ? [] : [plan.outline]), ...plan.cutouts];
    return contourSegments(edges, pixelsPerMm, segments.current);
  }, [plan, pixelsPerMm]);
  const linedStages = cutLines(plan, minute).filter(
    (stage) => onlyStage === undefined || stage.number === onlyStage || !isPeeled(stage, minute),
  );
  const back = useMemo(() => contourSegments(returned, pixelsPerMm, new WeakMap()), [returned, pixelsPerMm]);
  const mark = useMemo(() => contourSegments(marked, pixelsPerMm, new WeakMap()), [marked, pixelsPerMm]);
  return (
    <>
      {plan === undefined || minute === undefined ? (
        <RegionFills plan={plan} shapes={shapes} theme={theme} pixelsPerMm={fillScale(pixelsPerMm)} />
      ) : (
        <BathFills plan={plan} minute={minute} theme={theme} pixelsPerMm={fillScale(pixelsPerMm)} />
      )}
      <EdgeBands bands={bands} theme={theme} pose={pose} pixelsPerMm={pixelsPerMm} restScale={restScale} />
      <Linework positions={drawn} color={theme.linework} />
      <ThinSegments positions={through} color={theme.linework} order={1} dash={THROUGH_DASH / restScale} />
      <FatSegments positions={edge} color={theme.outline} width={EDGE_WIDTH} order={1} />
      {linedStages.map((stage) => (
        <ScribeLines
          key={stage.number}
          stage={stage}
          pixelsPerMm={pixelsPerMm}
          restScale={restScale}
          cache={segments.current}
          theme={theme}
          isSealed={!isPeeled(stage, minute)}
          isAlone={onlyStage !== undefined}
        />
      ))}
      <FatSegments positions={back} color={theme.accent} width={RETURNED_WIDTH} order={5} />
      <Rings shapes={shapes} ids={selection} color={theme.accent} scale={restScale} />
      <Rings shapes={shapes} ids={lit} color={theme.accent} scale={restScale} />
      <FatSegments positions={mark} color={theme.stop} width={RING.width} order={7} />
    </>
  );
}

/** Numbers of segments, six each, above which linework is drawn the cheap way, which may stand half a pixel off. */
const MOST_EXACT = 36_000;

function Linework({ positions, color }: { readonly positions: Float32Array; readonly color: string }) {
  return positions.length > MOST_EXACT ? (
    <ThinSegments positions={positions} color={color} order={1} />
  ) : (
    <FatSegments positions={positions} color={color} width={1} order={1} />
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
    const colors = new Map(
      plan?.stages.flatMap(({ regions, color }) => {
        const floor = linearRgb(lookOf(color, theme).floor);
        return regions.map((id) => [id, floor] as const);
      }),
    );
    const land = linearRgb(theme.land);
    const ringOf = (contour: Contour) => rings.current.ringOf(contour, pixelsPerMm);
    const regions = shapes.map(({ region }) => ({
      ring: ringOf(itemAt(region.contours, 0)),
      color: colors.get(region.id) ?? land,
    }));
    const ground = linearRgb(theme.ground);
    const holes = (plan?.cutouts ?? []).map((contour) => ({ ring: ringOf(contour), color: ground }));
    return [...regions, ...holes];
  }, [plan, shapes, theme, pixelsPerMm]);
  return <ColoredPatches patches={patches} cache={cache.current} />;
}

interface RingsProps {
  readonly shapes: readonly RegionShape[];
  readonly ids: readonly string[];
  readonly color: string;
  readonly scale: number;
}

/** More than this many regions are ringed on their borders: rings outside them would run into each other. */
const MOST_OUTSIDE = 60;

function Rings({ shapes, ids, color, scale }: RingsProps) {
  const segments = useMemo(() => {
    const wanted = new Set(ids);
    const chosen = shapes.filter((shape) => wanted.has(shape.region.id));
    const contours =
      chosen.length > MOST_OUTSIDE
        ? chosen.flatMap(({ region }) => region.contours)
        : chosen.flatMap(({ loops }) => growLoops(loops, RING.away / scale).map(contourOfLoop));
    return contourSegments(contours, scale, new WeakMap());
  }, [shapes, ids, scale]);
  return <FatSegments positions={segments} color={color} width={RING.width} order={6} />;
}

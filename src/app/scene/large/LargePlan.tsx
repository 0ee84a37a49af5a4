/**
 * The sheet from above with more on it than can be drawn in a frame: lines and fills only of what is seen and large enough, dots for the
 * rest, all drawn once and moved as a picture while the view moves.
 */
import { memo, useEffect, useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { cutLines, isPeeled } from '#app/scene/bath-minute.ts';
import { ColoredPatches } from '#app/scene/ColoredPatches.tsx';
import { EdgeBands } from '#app/scene/EdgeBands.tsx';
import { FatSegments } from '#app/scene/FatSegments.tsx';
import { EDGE_WIDTH, RETURNED_WIDTH, RING, THROUGH_DASH } from '#app/scene/line-looks.ts';
import { linearRgb } from '#app/scene/linear-rgb.ts';
import { contourSegments, type SegmentCache, type TriangleCache } from '#app/scene/plan-arrays.ts';
import { RingsAtScale } from '#app/scene/rings-at-scale.ts';
import { ScribeLines } from '#app/scene/ScribeLines.tsx';
import type { SceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { ThinSegments } from '#app/scene/ThinSegments.tsx';
import type { ViewPose } from '#app/scene/view-pose.ts';
import type { RegionShape } from '#app/state/region-shape.ts';
import type { EdgeBand } from '#app/state/shown-bands.ts';
import type { Contour, ShownPlan, ShownStage } from '#job/formats/plan-file.ts';
import { Dots } from './Dots.tsx';
import { bathGroups, type FillGroup, regionGroups } from './fill-groups.ts';
import type { SlowProps } from './MovedPicture.tsx';
import { contoursIn, type SizedContours, sizedContours } from './sized-contours.ts';
import { useRestWindow } from './use-rest-window.ts';
import type { ViewWindow } from './view-window.ts';

interface LargePlanProps extends SlowProps {
  readonly plan: ShownPlan | undefined;
  readonly shapes: readonly RegionShape[];
  readonly linework: readonly Contour[];
  readonly behind: readonly Contour[];
  readonly bands: readonly EdgeBand[];
  readonly returned: readonly Contour[];
  /** Region ids too many to be drawn over the picture. */
  readonly ringed: readonly string[];
  readonly theme: SceneTheme;
  readonly pose: StoreApi<ViewPose>;
  readonly minute: number | undefined;
  readonly onlyStage: number | undefined;
}

/** What is smaller on screen is a dot, px. */
const LEAST_SIZE = 4;
/** Smaller dots are one in a cell of so many pixels. */
const DOT_CELL = 3;
/** Numbers of segments, six each, above which lines are drawn one pixel wide. */
const MOST_FAT = 36_000;

export const LargePlan = memo(function LargePlan(props: LargePlanProps) {
  const { plan, shapes, linework, behind, bands, returned, ringed, theme, pose, minute } = props;
  const { onlyStage } = props;
  const window = useRestWindow(pose);
  useChanges(props, window);
  const segments = useRef<SegmentCache>(new WeakMap());
  const look = { window, pose, cache: segments.current };
  const edges = useMemo(
    () => (plan === undefined ? [] : [...(plan.outline === null ? [] : [plan.outline]), ...plan.cutouts]),
    [plan],
  );
  const rings = useMemo(() => {
    const wanted = new Set(ringed);
    return shapes.filter(({ region }) => wanted.has(region.id)).flatMap(({ region }) => region.contours);
  }, [shapes, ringed]);
  const linedStages = useMemo(
    () =>
      cutLines(plan, minute).filter(
        (stage) => onlyStage === undefined || stage.number === onlyStage || !isPeeled(stage, minute),
      ),
    [plan, minute, onlyStage],
  );
  return (
    <>
      <LargeFills {...{ plan, shapes, theme, minute, pose, window }} />
      <EdgeBands
        bands={bands}
        theme={theme}
        pose={pose}
        pixelsPerMm={window.pixelsPerMm}
        restScale={window.restScale}
      />
      {/* Fills show what is a dot. */}
      <Lines
        contours={linework}
        color={theme.linework}
        width={1}
        order={1}
        hasDots={plan === undefined}
        {...look}
      />
      <Lines contours={behind} color={theme.linework} width={1} order={1} dash={THROUGH_DASH} {...look} />
      <Lines contours={edges} color={theme.outline} width={EDGE_WIDTH} order={1} {...look} />
      {linedStages.map((stage) => (
        <StageLines
          key={stage.number}
          stage={stage}
          theme={theme}
          isSealed={!isPeeled(stage, minute)}
          isAlone={onlyStage !== undefined}
          {...look}
        />
      ))}
      <Lines contours={returned} color={theme.accent} width={RETURNED_WIDTH} order={5} hasDots {...look} />
      <Lines contours={rings} color={theme.accent} width={RING.width} order={6} hasDots {...look} />
    </>
  );
});

/** Asks for another picture after each change; what was kept stays true where only the view has moved. */
function useChanges({ onChange, ...shown }: LargePlanProps, window: ViewWindow): void {
  const { plan, shapes, linework, behind, bands, returned, ringed, theme, minute, onlyStage } = shown;
  // biome-ignore lint/correctness/useExhaustiveDependencies: whatever changes is another picture
  useEffect(
    () => void onChange(true),
    [onChange, plan, shapes, linework, behind, bands, returned, ringed, theme, minute, onlyStage],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: another window is the same sheet
  useEffect(() => void onChange(false), [onChange, window]);
}

interface Look {
  readonly window: ViewWindow;
  readonly pose: StoreApi<ViewPose>;
  readonly cache: SegmentCache;
}

interface LinesProps extends Look {
  readonly contours: readonly Contour[];
  readonly color: string;
  readonly width: number;
  readonly order: number;
  /** px */
  readonly dash?: number;
  readonly hasDots?: boolean;
}

function Lines({ contours, color, width, order, dash, hasDots = false, window, pose, cache }: LinesProps) {
  const sized = useMemo(() => sizedContours(contours), [contours]);
  const positions = useMemo(
    () => contourSegments(seenIn(sized, window), window.pixelsPerMm, cache),
    [sized, window, cache],
  );
  const isThin = dash !== undefined || positions.length > MOST_FAT;
  return (
    <>
      {hasDots && <Dots sized={sized} {...dotted(window)} color={color} pose={pose} order={order} />}
      {isThin ? (
        <ThinSegments
          positions={positions}
          color={color}
          order={order}
          {...(dash === undefined ? {} : { dash: dash / window.restScale })}
        />
      ) : (
        <FatSegments positions={positions} color={color} width={width} order={order} />
      )}
    </>
  );
}

interface StageLinesProps extends Look {
  readonly stage: ShownStage;
  readonly theme: SceneTheme;
  readonly isSealed: boolean;
  readonly isAlone: boolean;
}

function StageLines({ stage, theme, isSealed, isAlone, window, pose, cache }: StageLinesProps) {
  const sized = useMemo(() => sizedContours(stage.lines), [stage.lines]);
  const { pixelsPerMm, restScale } = window;
  const shown = useMemo(() => ({ ...stage, lines: seenIn(sized, window) }), [stage, sized, window]);
  const positions = useMemo(
    () => contourSegments(shown.lines, pixelsPerMm, cache),
    [shown, pixelsPerMm, cache],
  );
  const { line } = lookOf(stage.color, theme);
  if (isSealed || positions.length <= MOST_FAT) {
    return (
      <>
        {!isSealed && <Dots sized={sized} {...dotted(window)} color={line} pose={pose} order={3} />}
        <ScribeLines stage={shown} {...{ pixelsPerMm, restScale, isSealed, isAlone, theme, cache }} />
      </>
    );
  }
  return (
    <>
      <Dots sized={sized} {...dotted(window)} color={line} pose={pose} order={3} />
      <ThinSegments positions={positions} color={line} order={3} />
    </>
  );
}

type LargeFillsProps = Pick<LargePlanProps, 'plan' | 'shapes' | 'theme' | 'minute' | 'pose'> & {
  readonly window: ViewWindow;
};

function LargeFills({ plan, shapes, theme, minute, pose, window }: LargeFillsProps) {
  const triangles = useRef<TriangleCache>(new WeakMap());
  const rings = useRef(new RingsAtScale());
  const groups = useMemo(
    () =>
      plan === undefined || minute === undefined
        ? regionGroups(plan, shapes, theme)
        : bathGroups(plan, minute, theme),
    [plan, shapes, theme, minute],
  );
  const patches = useMemo(() => patchesIn(groups, window, rings.current), [groups, window]);
  return (
    <>
      <ColoredPatches patches={patches} cache={triangles.current} />
      {groups.map(({ sized, color }, number) => (
        <Dots
          // biome-ignore lint/suspicious/noArrayIndexKey: colours come twice
          key={number}
          {...{ sized, color, pose }}
          {...dotted(window)}
          order={0.2 + 0.01 * number}
        />
      ))}
    </>
  );
}

function patchesIn(groups: readonly FillGroup[], window: ViewWindow, rings: RingsAtScale) {
  return groups.flatMap(({ sized, color, isDotted }) => {
    const rgb = linearRgb(color);
    return seenIn(sized, window).map((contour) => ({
      ring: rings.ringOf(contour, window.pixelsPerMm),
      color: rgb,
      isDotted,
    }));
  });
}

function seenIn(sized: SizedContours, window: ViewWindow): Contour[] {
  return contoursIn(sized, window.box, leastIn(window));
}

/** What is dots, and how fine, mm. */
function dotted(window: ViewWindow) {
  return { below: leastIn(window), cell: DOT_CELL / window.pixelsPerMm };
}

/** mm */
function leastIn({ pixelsPerMm }: ViewWindow): number {
  return LEAST_SIZE / pixelsPerMm;
}

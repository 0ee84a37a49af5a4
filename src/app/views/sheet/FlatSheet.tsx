/**
 * The sheet as an SVG picture, for browsers without WebGL: the same fills, lines and marks as on the canvas, from the plan's own
 * lines and arcs. The view moves by one transform, outside React.
 */
import { memo, useEffect, useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { askedOutline } from '#app/scene/asked-outline.ts';
import { bandColors } from '#app/scene/band-colors.ts';
import { cutLines, isPeeled } from '#app/scene/bath-minute.ts';
import { RETURNED_WIDTH, RING } from '#app/scene/line-looks.ts';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import { type SceneTheme, sceneTheme } from '#app/scene/scene-theme.ts';
import { lookOf } from '#app/scene/stage-looks.ts';
import { useRestScale } from '#app/scene/use-rest-scale.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import type { EdgeBand } from '#app/state/shown-bands.ts';
import { contourPath } from '#app/views/handoff/contour-path.ts';
import { useSize } from '#app/views/use-size.ts';
import { unpackContours } from '#app/worker/pack-contours.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import { FlatScribeLines } from './FlatScribeLines.tsx';
import { keepInPose } from './pose-matrix.ts';

const NO_CONTOURS: readonly Contour[] = [];
const NO_BANDS: readonly EdgeBand[] = [];

interface FlatSheetProps {
  readonly picture: ScenePicture;
  readonly pose: StoreApi<ViewPose>;
}

export const FlatSheet = memo(function FlatSheet({ picture, pose }: FlatSheetProps) {
  const holder = useRef<HTMLDivElement>(null);
  const moved = useRef<SVGGElement>(null);
  const size = useSize(holder);
  const pixelsPerMm = useRestScale(pose);
  useEffect(() => {
    if (size === undefined) return undefined;
    return keepInPose(moved, pose, size);
  }, [pose, size]);
  const {
    plan,
    lines,
    behind = NO_CONTOURS,
    bands = NO_BANDS,
    returned = NO_CONTOURS,
    selection,
    lit,
    minute,
    onlyStage,
    marked,
    isDark,
  } = picture;
  const theme = sceneTheme(isDark);
  const drawn = useMemo(() => pathsOf(lines.map(({ contour }) => contour)), [lines]);
  const chosen = useMemo(
    () =>
      pathsOf(
        plan?.regions
          .filter(({ id }) => [...selection, ...(lit ?? [])].includes(id))
          .flatMap(({ contours }) => contours) ?? [],
      ),
    [plan, selection, lit],
  );
  const stages = cutLines(plan, minute).filter(
    ({ number }) => onlyStage === undefined || number === onlyStage,
  );
  return (
    <div className="sheet-canvas" ref={holder} data-drawn="true">
      <svg aria-hidden="true" className="flat-sheet" fill="none" style={{ background: theme.ground }}>
        <g ref={moved}>
          {plan !== undefined &&
            (minute === undefined ? (
              <RegionFills plan={plan} theme={theme} />
            ) : (
              <BathFills plan={plan} minute={minute} theme={theme} />
            ))}
          {bands.map((band) => (
            <FlatBand key={band.index} band={band} theme={theme} />
          ))}
          <path d={drawn} stroke={theme.linework} strokeWidth={1} />
          <path d={pathsOf(behind)} stroke={theme.linework} strokeWidth={1} strokeDasharray="3 3" />
          {stages.map((stage) => (
            <FlatScribeLines
              key={stage.number}
              stage={stage}
              pixelsPerMm={pixelsPerMm}
              theme={theme}
              isSealed={!isPeeled(stage, minute)}
              isAlone={onlyStage !== undefined}
            />
          ))}
          <path
            d={pathsOf(returned)}
            stroke={theme.accent}
            strokeWidth={RETURNED_WIDTH}
            data-returned="true"
          />
          <path d={chosen} stroke={theme.accent} strokeWidth={RING.width} />
          <path d={pathsOf(marked)} stroke={theme.stop} strokeWidth={RING.width} />
        </g>
      </svg>
    </div>
  );
});

const RegionFills = memo(function RegionFills({ plan, theme }: { plan: ShownPlan; theme: SceneTheme }) {
  const colors = new Map(plan.stages.flatMap(({ regions, color }) => regions.map((id) => [id, color])));
  return plan.regions.map(({ id, contours }) => (
    <Fill key={id} contours={contours} color={floorColor(colors.get(id), theme)} />
  ));
});

/** Stroked in millimetres: the band, and what is allowed as dashes. */
function FlatBand({ band, theme }: { readonly band: EdgeBand; readonly theme: SceneTheme }) {
  const { lines, half, color, isPicked, allowed } = band;
  const edges = useMemo(() => unpackContours(lines), [lines]);
  const asked = useMemo(() => (allowed === undefined ? [] : askedOutline(edges, allowed)), [edges, allowed]);
  const { line, floor } = bandColors(color, { isPicked, theme });
  return (
    <>
      <path
        d={pathsOf(edges)}
        stroke={floor}
        strokeWidth={2 * half}
        strokeLinecap="round"
        style={{ vectorEffect: 'none' }}
        data-band={band.index}
      />
      <path d={pathsOf(asked)} stroke={line} strokeWidth={1} strokeDasharray="4 4" />
    </>
  );
}

interface BathFillsProps {
  readonly plan: ShownPlan;
  readonly minute: number;
  readonly theme: SceneTheme;
}

/** As it hangs in the bath: bare where a piece is off, or with a new coat for each stage in its window alone; all else under maskant. */
const BathFills = memo(function BathFills({ plan, minute, theme }: BathFillsProps) {
  const peeled = plan.stages.filter((stage) => isPeeled(stage, minute));
  const bare = plan.masking === 're-mask' ? peeled.slice(-1) : peeled;
  return (
    <>
      {plan.outline !== null && <Fill contours={[plan.outline, ...plan.cutouts]} color={theme.maskant} />}
      {bare.map(({ number, piece, color }) => (
        <Fill key={number} contours={piece} color={floorColor(color, theme)} />
      ))}
    </>
  );
});

function Fill({ contours, color }: { readonly contours: readonly Contour[]; readonly color: string }) {
  return <path d={pathsOf(contours)} fillRule="evenodd" style={{ fill: color }} />;
}

function pathsOf(contours: readonly Contour[]): string {
  return contours.map(contourPath).join('');
}

function floorColor(color: string | undefined, theme: SceneTheme): string {
  return color === undefined ? theme.land : lookOf(color, theme).floor;
}

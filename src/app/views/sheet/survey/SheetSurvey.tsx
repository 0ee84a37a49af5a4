/** The sheet as it was surveyed, over the plan: the thicker the darker, lines of equal thickness, and the readings. */
import { useEffect, useId, useMemo, useRef } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { useRestScale } from '#app/scene/use-rest-scale.ts';
import { pixelOf, type ViewPose } from '#app/scene/view-pose.ts';
import { contourPath } from '#app/views/handoff/contour-path.ts';
import { keepInPose } from '#app/views/sheet/pose-matrix.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { boxOfPoints } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour, PlanFile } from '#job/formats/plan-file.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import { surveyLabels } from './survey-labels.ts';
import { type ThicknessContour, thicknessContours } from './thickness-contours.ts';

interface SheetSurveyProps {
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
}

const NO_ORIGIN: Point = { x: 0, y: 0 };

/** Where it is asked for, in plan. */
export function SheetSurvey({ pose, size }: SheetSurveyProps) {
  const { view, showsSurvey } = useWorkbenchState(({ session }) => session);
  const page = useWorkbenchState(({ derived }) => derived.page);
  const { plan, results, origin = NO_ORIGIN } = page ?? {};
  const survey = results?.survey;
  if (!showsSurvey || view !== 'plan' || plan === undefined || survey === undefined || size === undefined)
    return null;
  const { outline, cutouts } = plan;
  return <SurveyMap {...{ survey, outline, cutouts, origin, pose, size }} />;
}

interface SurveyMapProps {
  readonly survey: NonNullable<PlanFile['survey']>;
  readonly outline: Contour | null;
  readonly cutouts: readonly Contour[];
  /** mm: where the sheet on show has its origin in the drawing's own frame. */
  readonly origin: Point;
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size;
}

function SurveyMap({ survey, outline, cutouts, origin, pose, size }: SurveyMapProps) {
  const unit = useWorkbenchState(({ session }) => session.unit);
  const clip = useId();
  const moved = useRef<SVGGElement>(null);
  const { readings, lines } = useMemo(
    () => surveyOnShow({ survey, outline, origin, unit }),
    [survey, outline, origin, unit],
  );
  useEffect(() => {
    return keepInPose(moved, pose, size);
  }, [pose, size]);
  const edge = [...(outline === null ? [] : [outline]), ...cutouts].map(contourPath).join('');
  return (
    <svg className="sheet-survey" aria-hidden="true">
      <g ref={moved}>
        <clipPath id={clip}>
          <path d={edge} clipRule="evenodd" />
        </clipPath>
        <g clipPath={outline === null ? undefined : `url(#${clip})`}>
          {lines.map(({ thickness, isFifth, rings }) => (
            <path
              key={thickness}
              className={isFifth ? 'thickness fifth' : 'thickness'}
              d={rings.map(ringPath).join('')}
            />
          ))}
        </g>
      </g>
      <SurveyWords readings={readings} lines={lines} unit={unit} outline={outline} pose={pose} size={size} />
    </svg>
  );
}

interface SurveyWordsProps {
  readonly readings: readonly { readonly at: Point; readonly thickness: number }[];
  readonly lines: readonly ThicknessContour[];
  readonly unit: ShownUnit;
  readonly outline: Contour | null;
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size;
}

/** Readings, and the figures of lines where they have room. */
function SurveyWords({ readings, lines, unit, outline, pose, size }: SurveyWordsProps) {
  const group = useRef<SVGGElement>(null);
  const restScale = useRestScale(pose);
  const labels = useMemo(
    () => surveyLabels({ readings, lines, outline, pixelsPerMm: restScale, unit }),
    [readings, lines, outline, restScale, unit],
  );
  useEffect(() => {
    const texts = [...(group.current?.children ?? [])];
    const draw = (now: ViewPose) => {
      labels.forEach(({ at }, index) => {
        const { x, y } = pixelOf(now, size, at);
        texts[index]?.setAttribute('transform', `translate(${x.toFixed(1)} ${y.toFixed(1)})`);
      });
    };
    draw(pose.getState());
    return pose.subscribe(draw);
  }, [labels, pose, size]);
  return (
    <g ref={group}>
      {labels.map(({ at, says, isReading }) => (
        <g key={`${isReading} ${at.x} ${at.y}`} className={isReading ? 'reading' : 'line'}>
          {isReading && <path d="M-5 0H5M0 -5V5" />}
          <text y={isReading ? 17 : 4}>{says}</text>
        </g>
      ))}
    </g>
  );
}

function surveyOnShow({
  survey,
  outline,
  origin,
  unit,
}: Pick<SurveyMapProps, 'survey' | 'outline' | 'origin'> & { readonly unit: ShownUnit }) {
  const { model, about, scale, terms } = survey;
  const inFrame = ([x, y]: readonly [number, number]): Point => ({ x: x - origin.x, y: y - origin.y });
  const readings = survey.readings.map(({ at, thickness }) => ({ at: inFrame(at), thickness }));
  const edge = (outline?.vertices ?? []).map(([x, y]) => ({ x, y }));
  const within = boxOfPoints([...readings.map(({ at }) => at), ...edge]);
  return { readings, lines: thicknessContours({ model, about: inFrame(about), scale, terms }, within, unit) };
}

function ringPath(ring: readonly Point[]): string {
  return `M${ring.map(({ x, y }) => `${x} ${-y}`).join('L')}Z`;
}

/** What is seen of a survey at a glance: its thinnest and thickest reading. */
export function surveyRange({ readings }: NonNullable<PlanFile['survey']>, unit: ShownUnit): string {
  const read = readings.map(({ thickness }) => thickness);
  return `${gaugedFigure(Math.min(...read), unit)} to ${gaugedFigure(Math.max(...read), unit)} ${unit}`;
}

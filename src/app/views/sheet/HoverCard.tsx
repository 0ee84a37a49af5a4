/** What is known of the place under a resting pointer: region, what is required, planned and left, its stage, and the next line. */
import { useLayoutEffect, useRef } from 'react';
import { wordsOn } from '#app/scene/stage-looks.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Box } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { ShownPlan, ShownRegion } from '#job/formats/plan-file.ts';
import type { CutThrough } from '#run/between-faces.ts';
import type { PlaceDepth } from '#run/depth-job.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';
import { placeCard } from './place-card.ts';

export interface Rested {
  readonly pointer: Point;
  readonly region: ShownRegion;
  readonly reading: PlaceDepth | undefined;
  /** mm to the nearest scribe line of any stage. */
  readonly toLine: number | undefined;
  /** On screen, px. */
  readonly around: Box | undefined;
  readonly floors: readonly Box[];
}

interface HoverCardProps {
  readonly rested: Rested;
  readonly plan: ShownPlan;
  readonly size: { readonly width: number; readonly height: number };
  /** Of what figures on the sheet say. */
  readonly says: 'depth' | 'left';
}

export function HoverCard({ rested, plan, size, says }: HoverCardProps) {
  const card = useRef<HTMLDivElement>(null);
  const { unit, minute } = useWorkbenchState((state) => state.session);
  useLayoutEffect(() => {
    const element = card.current;
    if (element === null) return;
    const { offsetWidth: width, offsetHeight: height } = element;
    const { x, y } = placeCard({ ...rested, width, height, view: size });
    element.style.translate = `${Math.round(x)}px ${Math.round(y)}px`;
  }, [rested, size]);
  const { region, reading, toLine } = rested;
  const cuts = useWorkbenchState((state) => state.derived.page?.faces?.between?.cuts);
  const cut = cuts?.find(({ id }) => id === region.id);
  const stage = plan.stages.find(({ regions }) => regions.includes(region.id));
  return (
    <div className="hover-card" ref={card}>
      <header>
        <strong>{region.id}</strong>
        {stage === undefined ? (
          <span className="aside">land</span>
        ) : (
          <span className="stage-chip" style={{ background: stage.color, color: wordsOn(stage.color) }}>
            {stage.number} <StageMark stage={stage.number} />
          </span>
        )}
      </header>
      <dl>
        {cardRows({ region, reading, toLine, unit, says, cut, isRunning: minute !== undefined }).map(
          ([name, value]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{value}</dd>
            </div>
          ),
        )}
      </dl>
    </div>
  );
}

interface RowsAsk extends Pick<Rested, 'region' | 'reading' | 'toLine'> {
  readonly unit: ShownUnit;
  readonly says: 'depth' | 'left';
  readonly cut: CutThrough | undefined;
  /** The clock stands before the end. */
  readonly isRunning: boolean;
}

function cardRows({ region, reading, toLine, unit, says, cut, isRunning }: RowsAsk): [string, string][] {
  const { asked, level } = region;
  const full =
    reading === undefined || reading.target === undefined ? undefined : reading.thickness + reading.depth;
  const isLeft = says === 'left' && full !== undefined;
  const rows: [string, string][] = [];
  if (asked.depth > 0) {
    const [figure, plus, minus] = isLeft
      ? [full - asked.depth, asked.minus, asked.plus]
      : [asked.depth, asked.plus, asked.minus];
    rows.push([
      isLeft ? 'Required to remain' : 'Required',
      `${lengthFigure(figure, unit)} ${tolerance(plus, minus, unit)}`,
    ]);
    rows.push([isLeft ? 'Planned to leave' : 'Planned', showLength(isLeft ? full - level : level, unit)]);
  }
  if (cut !== undefined) {
    rows.push(['Cusp stands out', showLength(cut.cusp, unit)]);
    rows.push(['at a depth of', showLength(cut.depth, unit)]);
  }
  if (reading !== undefined && reading.target !== undefined) {
    rows.push([isRunning ? 'Depth now' : 'Depth here', showLength(reading.depth, unit)]);
    rows.push([isRunning ? 'Left now' : 'Left here', showLength(reading.thickness, unit)]);
  }
  if (toLine !== undefined) rows.push(['To the next line', showLength(toLine, unit)]);
  return rows;
}

function tolerance(plus: number, minus: number, unit: ShownUnit): string {
  if (lengthFigure(plus, unit) === lengthFigure(minus, unit)) return `±${showLength(plus, unit)}`;
  return `+${lengthFigure(plus, unit)} −${showLength(minus, unit)}`;
}

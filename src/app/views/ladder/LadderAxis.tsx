/** The drawn part of the ladder: scale, stages as blocks to scale with number and mark, metal that stays, what is cut through beside it, and leaders to the figures. */

import { wordsOn } from '#app/scene/stage-looks.ts';
import type { LadderWidth } from '#app/state/layout-state.ts';
import { isAccepted } from '#app/state/planned-levels.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { tickPlaces } from '#plan/stage-mark.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { scaleTicks } from './ladder-layout.ts';
import type { LadderMeasures } from './ladder-measures.ts';
import { barBetween, joinPlaces, type LadderRow } from './ladder-rows.ts';
import { belowNear, isShared, type LadderSide } from './ladder-sides.ts';

interface LadderAxisProps {
  readonly sides: readonly LadderSide[];
  /** Least metal between both faces, mm. */
  readonly least: number | undefined;
  readonly thickness: number;
  readonly height: number;
  readonly yOf: (depth: number) => number;
  readonly unit: ShownUnit;
  readonly how: LadderWidth;
  readonly measures: LadderMeasures;
  readonly rows: readonly LadderRow[];
  readonly litStage: number | undefined;
}

const PIXELS_PER_TICK = 84;
/** px from the middle of a button to join a level to that of a figure which it would cover. */
const JOIN_REACH = 15;
/** px that a block needs for its number, and for its mark under it. */
const ROOM = { number: 14, mark: 34, across: 30 };

export function LadderAxis(props: LadderAxisProps) {
  const { sides, least, thickness, height, yOf, unit, how, measures, rows, litStage } = props;
  const { bar, width } = measures;
  const room = barBetween(props);
  const selection = useWorkbenchState((state) => state.session.selection);
  const joins = joinPlaces(rows, selection);
  return (
    <svg className="ladder-axis" width={width} height={height} aria-hidden="true">
      <defs>
        <pattern
          id="ladder-hatch"
          width="7"
          height="7"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path d="M0 0V7" />
        </pattern>
      </defs>
      {how !== 'folded' &&
        sides.map((side) => (
          <Scale
            key={side.face}
            side={sides.length === 1 ? undefined : side}
            thickness={thickness}
            yOf={yOf}
            unit={unit}
            left={bar.left}
            height={height}
            joins={joins}
          />
        ))}
      {columnsOf(sides, thickness).map(({ from, to, top, bottom, shown }) => {
        const left = bar.left + (bar.right - bar.left) * from;
        const right = bar.left + (bar.right - bar.left) * to;
        return (
          <g key={from}>
            {(['metal', 'hatched'] as const).map((name) => (
              <path key={name} className={name} d={`M${left} ${yOf(top)}H${right}V${yOf(bottom)}H${left}Z`} />
            ))}
            {shown.map((side) => (
              <g key={side.face} className={side.isOnShow ? undefined : 'behind'}>
                {side.bands.map((band) => (
                  <Block
                    key={band.stage.number}
                    stage={band.stage}
                    left={left}
                    width={right - left}
                    {...spanOf(side, band, props)}
                  />
                ))}
              </g>
            ))}
          </g>
        );
      })}
      <path className="frame" d={`M${bar.left} ${yOf(0)}H${bar.right}V${yOf(thickness)}H${bar.left}Z`} />
      {sides.flatMap((side) =>
        side.levels
          .filter(({ isCut }) => isCut)
          .map(({ stage }) => {
            const { top, bottom } = spanOf(side, { from: 0, to: stage.level }, props);
            const key = `${side.face} ${stage.number}`;
            return (
              <path key={key} className="cut" stroke={stage.color} d={`M${bar.right + 3} ${top}V${bottom}`} />
            );
          }),
      )}
      {room !== undefined && least !== undefined && (
        <Between room={room} x={(bar.left + bar.right) / 2} figure={lengthFigure(least, unit)} />
      )}
      {rows.map((row) => (
        <g key={row.key} className={row.kind === 'other' ? 'behind' : undefined}>
          {row.kind === 'unused' && <path className="unused" d={`M${bar.left} ${row.from}H${bar.right}`} />}
          <path className={leaderClass(row, litStage)} d={leaderPath(row.from, row.to, { how, measures })} />
        </g>
      ))}
    </svg>
  );
}

interface Column {
  /** Shares of the bar's width. */
  readonly from: number;
  readonly to: number;
  /** Of its metal, mm below the near face. */
  readonly top: number;
  readonly bottom: number;
  readonly shown: readonly LadderSide[];
}

/** The whole bar; or half of it for each face, where their deepest floors lie at different places and would run into each other. */
function columnsOf(sides: readonly LadderSide[], thickness: number): Column[] {
  const [near, far] = sides;
  const [top, bottom] = [near?.deepest ?? 0, thickness - (far?.deepest ?? 0)];
  if (near === undefined || far === undefined || !isShared(sides, thickness))
    return [{ from: 0, to: 1, top, bottom, shown: sides }];
  return [
    { from: 0, to: 0.5, top, bottom: thickness, shown: [near] },
    { from: 0.5, to: 1, top: 0, bottom, shown: [far] },
  ];
}

function spanOf(
  { face }: LadderSide,
  { from, to }: { readonly from: number; readonly to: number },
  { thickness, yOf }: Pick<LadderAxisProps, 'thickness' | 'yOf'>,
): { readonly top: number; readonly bottom: number } {
  const [start, end] = [from, to].map((depth) => yOf(belowNear(face, depth, thickness))) as [number, number];
  return { top: Math.min(start, end), bottom: Math.max(start, end) };
}

/** The least metal, in the bar between the deepest floors. */
function Between({
  room: { top, bottom },
  x,
  figure,
}: {
  readonly room: { readonly top: number; readonly bottom: number };
  readonly x: number;
  readonly figure: string;
}) {
  const middle = (top + bottom) / 2;
  const arrow = (end: number, way: 1 | -1) =>
    `M${x - 3.5} ${end + 5 * way}L${x} ${end}L${x + 3.5} ${end + 5 * way}`;
  const hasArrows = bottom - top > 84;
  return (
    <g className="between">
      {hasArrows && (
        <path
          d={`M${x} ${top + 4}V${middle - 18}M${x} ${middle + 18}V${bottom - 4}${arrow(top + 4, 1)}${arrow(bottom - 4, -1)}`}
        />
      )}
      <text x={x} y={middle - 3}>
        web
      </text>
      <text className="figure" x={x} y={middle + 12}>
        {figure}
      </text>
    </g>
  );
}

function leaderClass(row: LadderRow, litStage: number | undefined): string {
  if (row.kind === 'between') return 'leader';
  const planned = row.kind === 'unused' ? undefined : row.planned;
  const isGood = row.kind === 'other' || (planned !== undefined && isAccepted(planned, planned.stage.level));
  const isLit = planned !== undefined && planned.stage.number === litStage;
  return `leader${isGood ? '' : ' broken'}${isLit ? ' lit' : ''}`;
}

/** Level out of the bar, aslant to its figure, level again: as the figures keep the order of the levels, no two cross. */
function leaderPath(
  from: number,
  to: number,
  { how, measures }: { readonly how: LadderWidth; readonly measures: LadderMeasures },
): string {
  const { bar, figures } = measures;
  if (how === 'folded') return `M${bar.right} ${from}h4`;
  return `M${bar.right} ${from}h4L${figures - 4} ${to}H${figures}`;
}

interface ScaleProps {
  /** Where both faces are etched: each counts from its own surface to the middle. */
  readonly side: LadderSide | undefined;
  readonly thickness: number;
  readonly yOf: (depth: number) => number;
  readonly unit: ShownUnit;
  readonly left: number;
  readonly height: number;
  /** Middles of buttons that lie over it, px: figures under them are left out. */
  readonly joins: readonly number[];
}

/** Round depths with four short ticks between, and the far face. */
function Scale({ side, thickness, yOf, unit, left, height, joins }: ScaleProps) {
  const inUnit = millimetresIn(unit);
  const ticks = scaleTicks(thickness / inUnit, Math.max(2, height / PIXELS_PER_TICK));
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  const places = Math.max(1, Math.ceil(-Math.log10(step) - SAME_COUNT));
  const at = (tick: number) => yOf(belowNear(side?.face ?? 'near', tick * inUnit, thickness));
  const fine = scaleTicks(thickness / inUnit, (ticks.length - 1) * 5);
  if (side !== undefined) {
    // As many as keep apart from those of the other face.
    const last = thickness / inUnit / 2;
    const isOwn = (tick: number) => tick < last;
    const apart = Math.abs(at(last) - at(0)) / last;
    return (
      <ScaleMarks
        name={side.isOnShow ? 'scale' : 'scale behind'}
        fine={fine.filter(isOwn).map(at)}
        figures={ticks
          .filter((tick) => isOwn(tick) && (last - tick) * apart > 8)
          .map((tick) => ({ y: at(tick), figure: tick.toFixed(places) }))}
        {...{ left, joins }}
      />
    );
  }
  // The far face has its own figure; one that it would touch goes.
  const shown = ticks.filter((tick) => yOf(thickness) - at(tick) > 15);
  const end = thickness / inUnit;
  return (
    <ScaleMarks
      name="scale"
      fine={fine.map(at)}
      figures={[
        ...shown.map((tick) => ({ y: at(tick), figure: tick.toFixed(places) })),
        { y: at(end), figure: `${Number(end.toFixed(places + 1))}` },
      ]}
      {...{ left, joins }}
    />
  );
}

interface ScaleMarksProps {
  readonly name: string;
  readonly fine: readonly number[];
  readonly figures: readonly { readonly y: number; readonly figure: string }[];
  readonly left: number;
  readonly joins: readonly number[];
}

function ScaleMarks({ name, fine, figures, left, joins }: ScaleMarksProps) {
  const isSeen = (y: number) => joins.every((join) => Math.abs(join - y) > JOIN_REACH);
  return (
    <g className={name}>
      <path d={fine.map((y) => `M${left - 5} ${y}h3`).join('')} />
      {figures.map(({ y, figure }) => (
        <g key={y}>
          <path d={`M${left - 8} ${y}h6`} />
          {isSeen(y) && (
            <text x={left - 10} y={y + 4}>
              {figure}
            </text>
          )}
        </g>
      ))}
    </g>
  );
}

interface BlockProps {
  readonly stage: ShownStage;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

function Block({ stage, left, width, top, bottom }: BlockProps) {
  const { number, color } = stage;
  const middle = { x: left + width / 2, y: (top + bottom) / 2 };
  const high = bottom - top;
  const ink = wordsOn(color);
  const hasMark = high >= ROOM.mark && width >= ROOM.across;
  return (
    <g>
      <rect fill={color} x={left} width={width} y={top} height={high} />
      {high >= ROOM.number && (
        <text className="number" x={middle.x} y={middle.y + (hasMark ? -2 : 4.5)} fill={ink}>
          {number}
        </text>
      )}
      {hasMark && <path className="mark" stroke={ink} d={markPath(number, middle.x, middle.y + 10)} />}
    </g>
  );
}

/** Ticks on a line that runs past them; more of them stand closer. */
function markPath(stage: number, x: number, y: number): string {
  const places = tickPlaces(stage);
  const last = places.at(-1) ?? 0;
  const pitch = Math.min(4.6, 22 / Math.max(1, last));
  const half = (last * pitch) / 2;
  const ticks = places.map((place) => `M${x - half + place * pitch} ${y - 4.5}v9`).join('');
  return `M${x - half - 4} ${y}H${x + half + 4}${ticks}`;
}

/** The drawn part of the ladder: scale, stages as blocks to scale with number and mark, metal that stays, and leaders to the figures. */

import { wordsOn } from '#app/scene/stage-looks.ts';
import type { LadderWidth } from '#app/state/layout-state.ts';
import { isAccepted, type PlannedLevel } from '#app/state/planned-levels.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { tickPlaces } from '#plan/stage-mark.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { scaleTicks } from './ladder-layout.ts';
import type { LadderMeasures } from './ladder-measures.ts';

/** From a level to the middle of its figure, px. */
export interface Leader {
  readonly level: number;
  readonly to: number;
  /** Undefined for a level of the job's list that came to no stage. */
  readonly planned: PlannedLevel | undefined;
}

interface LadderAxisProps {
  readonly levels: readonly PlannedLevel[];
  readonly thickness: number;
  readonly height: number;
  readonly yOf: (depth: number) => number;
  readonly unit: ShownUnit;
  readonly how: LadderWidth;
  readonly measures: LadderMeasures;
  readonly leaders: readonly Leader[];
  readonly litStage: number | undefined;
}

const PIXELS_PER_TICK = 84;
/** px that a block needs for its number, and for its mark under it. */
const ROOM = { number: 14, mark: 34 };

export function LadderAxis(props: LadderAxisProps) {
  const { levels, thickness, height, yOf, unit, how, measures, leaders, litStage } = props;
  const { bar, width } = measures;
  const metalTop = levels[0]?.stage.level ?? 0;
  const wide = bar.right - bar.left;
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
      {how !== 'folded' && (
        <Scale thickness={thickness} yOf={yOf} unit={unit} left={bar.left} height={height} />
      )}
      {(['metal', 'hatched'] as const).map((name) => (
        <path
          key={name}
          className={name}
          d={`M${bar.left} ${yOf(metalTop)}H${bar.right}V${yOf(thickness)}H${bar.left}Z`}
        />
      ))}
      {levels.map((planned, index) => {
        const top = yOf(levels[index + 1]?.stage.level ?? 0);
        return (
          <Block
            key={planned.stage.number}
            planned={planned}
            left={bar.left}
            width={wide}
            top={top}
            bottom={yOf(planned.stage.level)}
          />
        );
      })}
      <path className="frame" d={`M${bar.left} ${yOf(0)}H${bar.right}V${yOf(thickness)}H${bar.left}Z`} />
      {leaders.map(({ level, to, planned }) => (
        <g key={level}>
          {planned === undefined && <path className="unused" d={`M${bar.left} ${yOf(level)}H${bar.right}`} />}
          <path
            className={leaderClass(planned, litStage)}
            d={leaderPath(yOf(level), to, { how, measures })}
          />
        </g>
      ))}
    </svg>
  );
}

function leaderClass(planned: PlannedLevel | undefined, litStage: number | undefined): string {
  const isGood = planned !== undefined && isAccepted(planned, planned.stage.level);
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
  readonly thickness: number;
  readonly yOf: (depth: number) => number;
  readonly unit: ShownUnit;
  readonly left: number;
  readonly height: number;
}

/** Round depths with four short ticks between, and the far face. */
function Scale({ thickness, yOf, unit, left, height }: ScaleProps) {
  const inUnit = millimetresIn(unit);
  const ticks = scaleTicks(thickness / inUnit, Math.max(2, height / PIXELS_PER_TICK));
  const step = (ticks[1] ?? 1) - (ticks[0] ?? 0);
  const places = Math.max(1, Math.ceil(-Math.log10(step) - SAME_COUNT));
  const fine = scaleTicks(thickness / inUnit, (ticks.length - 1) * 5).map((tick) => yOf(tick * inUnit));
  // The far face has its own figure; one that it would touch goes.
  const shown = ticks.filter((tick) => yOf(thickness) - yOf(tick * inUnit) > 15);
  return (
    <g className="scale">
      <path d={fine.map((y) => `M${left - 5} ${y}h3`).join('')} />
      {[...shown, thickness / inUnit].map((tick) => (
        <g key={tick}>
          <path d={`M${left - 8} ${yOf(tick * inUnit)}h6`} />
          <text x={left - 10} y={yOf(tick * inUnit) + 4}>
            {tick === thickness / inUnit ? Number(tick.toFixed(places + 1)) : tick.toFixed(places)}
          </text>
        </g>
      ))}
    </g>
  );
}

interface BlockProps {
  readonly planned: PlannedLevel;
  readonly left: number;
  readonly width: number;
  readonly top: number;
  readonly bottom: number;
}

function Block({ planned, left, width, top, bottom }: BlockProps) {
  const { number, color } = planned.stage;
  const middle = { x: left + width / 2, y: (top + bottom) / 2 };
  const high = bottom - top;
  const ink = wordsOn(color);
  const hasMark = high >= ROOM.mark;
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

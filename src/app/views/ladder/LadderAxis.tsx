/** The drawn part of the ladder: scale, stages as bands to scale, tolerance bars and the leaders to the words. */
import { isAccepted, type Rung } from '#app/state/rungs.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { scaleTicks } from './ladder-layout.ts';
import { BAND } from './ladder-measures.ts';

interface LadderAxisProps {
  readonly rungs: readonly Rung[];
  readonly thickness: number;
  readonly height: number;
  readonly yOf: (depth: number) => number;
  readonly unit: ShownUnit;
  readonly leaders: readonly { readonly from: number; readonly to: number; readonly isFaint: boolean }[];
}

const PIXELS_PER_TICK = 48;

export function LadderAxis({ rungs, thickness, height, yOf, unit, leaders }: LadderAxisProps) {
  const inUnit = millimetresIn(unit);
  const ticks = scaleTicks(thickness / inUnit, Math.max(2, height / PIXELS_PER_TICK));
  const metalTop = rungs[0]?.stage.level ?? 0;
  return (
    <svg className="ladder-axis" width={BAND.leadersEnd} height={height} aria-hidden="true">
      {ticks.map((tick) => (
        <g key={tick} className="scale">
          <path d={`M${BAND.left - 6} ${yOf(tick * inUnit)}H${BAND.left - 1}`} />
          <text x={BAND.left - 9} y={yOf(tick * inUnit) + 4}>
            {Number(tick.toFixed(4))}
          </text>
        </g>
      ))}
      <rect
        className="metal"
        x={BAND.left}
        width={BAND.right - BAND.left}
        y={yOf(metalTop)}
        height={Math.max(0, yOf(thickness) - yOf(metalTop))}
      />
      {rungs.map((rung, index) => {
        const top = yOf(rungs[index + 1]?.stage.level ?? 0);
        return (
          <rect
            key={rung.stage.number}
            fill={rung.stage.color}
            x={BAND.left}
            width={BAND.right - BAND.left}
            y={top}
            height={yOf(rung.stage.level) - top}
          />
        );
      })}
      <path className="face" d={`M${BAND.left - 4} ${yOf(0)}H${BAND.right + 4}`} />
      <path className="face" d={`M${BAND.left - 4} ${yOf(thickness)}H${BAND.right + 4}`} />
      {rungs.map((rung) => (
        <ToleranceBar key={rung.stage.number} rung={rung} yOf={yOf} />
      ))}
      {leaders.map(({ from, to, isFaint }) => (
        <path
          key={`${from} ${to}`}
          className={isFaint ? 'leader faint' : 'leader'}
          d={`M${BAND.right + 1} ${from}L${BAND.leadersEnd - 4} ${to}H${BAND.leadersEnd}`}
        />
      ))}
      <text className="axis-unit" x={BAND.left - 9} y={12}>
        {unit}
      </text>
      <title>{lengthFigure(thickness, unit)}</title>
    </svg>
  );
}

/** What all regions of the rung accept, as a bar with ends; where they agree on nothing, a bar of the finding's colour. */
function ToleranceBar({ rung, yOf }: { readonly rung: Rung; readonly yOf: (depth: number) => number }) {
  const { from, to } = rung.accepted;
  const [top, bottom] = [yOf(Math.min(from, to)), yOf(Math.max(from, to))];
  const x = BAND.right - 7;
  const isGood = isAccepted(rung, rung.stage.level);
  return (
    <path
      className={isGood ? 'tolerance' : 'tolerance broken'}
      d={`M${x - 4} ${top}H${x + 4}M${x} ${top}V${bottom}M${x - 4} ${bottom}H${x + 4}`}
    />
  );
}

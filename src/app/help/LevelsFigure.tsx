/** Fewest levels: tolerance bars of regions, crossed by as few levels as can be. */
import { fewestLevels } from '#plan/fewest-levels.ts';

/** Depth, plus, minus of made-up regions, mm. */
const ASKED = [
  [1.0, 0.1, 0.1],
  [1.12, 0.08, 0.08],
  [1.15, 0.1, 0.1],
  [2.0, 0.05, 0.15],
  [1.9, 0.1, 0.05],
  [2.6, 0.08, 0.08],
] as const;
const LEFT = 40;
const PITCH = 56;
const TOP = 12;
const SCALE = 130;
const FROM = 0.8;

export function LevelsFigure() {
  const bands = ASKED.map(([depth, plus, minus]) => ({ low: depth, high: depth, plus, minus }));
  const levels = fewestLevels(bands, [])?.levels ?? [];
  const yOf = (depth: number) => TOP + (depth - FROM) * SCALE;
  const width = LEFT + ASKED.length * PITCH + 110;
  return (
    <svg
      role="img"
      aria-label={`Six regions with tolerance bars; ${levels.length} levels meet them all`}
      viewBox={`0 0 ${width} ${yOf(2.8)}`}
      width={width}
    >
      {ASKED.map(([depth, plus, minus], i) => {
        const x = LEFT + (i + 0.5) * PITCH;
        return (
          <path
            key={depth}
            className="tolerance"
            d={`M${x} ${yOf(depth - minus)}V${yOf(depth + plus)}M${x - 6} ${yOf(depth - minus)}h12M${x - 6} ${yOf(depth + plus)}h12M${x - 3} ${yOf(depth)}h6`}
          />
        );
      })}
      {levels.map((level) => (
        <g key={level}>
          <path className="level-line" d={`M${LEFT} ${yOf(level)}H${LEFT + ASKED.length * PITCH}`} />
          <text x={LEFT + ASKED.length * PITCH + 8} y={yOf(level) + 4}>
            level {level.toFixed(2)} mm
          </text>
        </g>
      ))}
    </svg>
  );
}

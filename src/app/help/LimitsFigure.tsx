/** Three things that no bath makes: a floor narrower than its walls, a land narrower than two undercuts, a sharp inside corner. */
import { stageColors } from '#plan/stage-colors.ts';
import { SCALE, SKY, SliceFigure } from './SliceFigure.tsx';

const WIDTH = 23;
const DEPTH = 3;
const POCKET = { from: 1.5, to: 6.5 };
const LAND = { from: 14, to: 18 };
/** What opens on both sides of the land; the pocket itself has no room left after two undercuts. */
const OPENINGS = [
  { from: 11, to: LAND.from, cut: DEPTH },
  { from: LAND.to, to: 21, cut: DEPTH },
];

export function LimitsFigure() {
  const [color = ''] = stageColors(1);
  return (
    <SliceFigure
      name="A slice: a pocket too narrow to open, and a land that the undercut of both neighbours takes away"
      width={WIDTH}
      thickness={4.5}
      bands={[{ color, before: [], after: OPENINGS }]}
      maskant={[
        [0, OPENINGS[0]?.from ?? 0],
        [LAND.from, LAND.to],
        [21, WIDTH],
      ]}
    >
      <path
        className="drawn"
        d={`M${POCKET.from * SCALE} ${SKY - 10}V${SKY + DEPTH * SCALE}H${POCKET.to * SCALE}V${SKY - 10}`}
      />
      <text x={4 * SCALE} y={SKY - 14} textAnchor="middle">
        no room to open
      </text>
      <text x={16 * SCALE} y={SKY - 14} textAnchor="middle">
        land lost
      </text>
    </SliceFigure>
  );
}

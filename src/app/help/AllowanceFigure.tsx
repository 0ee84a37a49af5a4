/** Why a line stays so far back from the next floor: the wall is a quarter round that must pass the drawn line at that floor. */
import { allowance } from '#plan/allowance.ts';
import { stageColors } from '#plan/stage-colors.ts';
import { DimensionLine } from './DimensionLine.tsx';
import { SCALE, SKY, SliceFigure } from './SliceFigure.tsx';

const DEEP = 3;
const SHALLOW = 2.2;
const DRAWN = 11;
const WIDTH = 23;

export function AllowanceFigure() {
  const [deepColor = '', shallowColor = ''] = stageColors(2);
  const undercut = { etchFactor: [[0, 1]], edgeDatum: 'shallow-edge' } as const;
  const back = allowance(undercut, { level: DEEP, depth: SHALLOW });
  const scribe = DRAWN - back;
  const early = [{ from: -9, to: scribe, cut: DEEP - SHALLOW }];
  const late = [
    { from: -9, to: scribe, cut: DEEP },
    { from: -9, to: WIDTH + 9, cut: SHALLOW },
  ];
  return (
    <SliceFigure
      name={`A slice: the deeper floor's scribe line stands ${back.toFixed(2)} mm back from the drawn line`}
      width={WIDTH}
      thickness={4.5}
      bands={[
        { color: deepColor, before: [], after: early },
        { color: shallowColor, before: early, after: late },
      ]}
      maskant={[]}
    >
      <path className="drawn" d={`M${DRAWN * SCALE} ${SKY - 22}V${SKY + SHALLOW * SCALE + 6}`} />
      <text x={DRAWN * SCALE + 6} y={SKY - 12}>
        drawn line
      </text>
      <DimensionLine
        from={[scribe * SCALE, SKY - 8]}
        to={[DRAWN * SCALE, SKY - 8]}
        words={`${back.toFixed(2)} mm`}
      />
      <text x={scribe * SCALE - 8} y={SKY - 12} textAnchor="end">
        scribe line
      </text>
      <text x={SCALE} y={SKY + DEEP * SCALE + 14}>
        {DEEP.toFixed(1)} mm
      </text>
      <text x={16 * SCALE} y={SKY + SHALLOW * SCALE + 14}>
        {SHALLOW.toFixed(1)} mm
      </text>
    </SliceFigure>
  );
}

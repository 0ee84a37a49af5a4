/** The etchant goes sideways under the maskant as it goes down. */
import { stageColors } from '#plan/stage-colors.ts';
import { DimensionLine } from './DimensionLine.tsx';
import { SCALE, SKY, SliceFigure } from './SliceFigure.tsx';

const DEPTH = 3;
const OPENING = { from: 6, to: 17, cut: DEPTH };
const WIDTH = 23;

export function UndercutFigure() {
  const [color = ''] = stageColors(1);
  const foot = OPENING.to * SCALE;
  const reach = (OPENING.to + DEPTH) * SCALE;
  return (
    <SliceFigure
      name="A slice: the maskant overhangs the etched pocket by the undercut on both sides"
      width={WIDTH}
      thickness={4.5}
      bands={[{ color, before: [], after: [OPENING] }]}
      maskant={[
        [0, OPENING.from],
        [OPENING.to, WIDTH],
      ]}
    >
      <DimensionLine
        from={[OPENING.from * SCALE, SKY - 16]}
        to={[OPENING.to * SCALE, SKY - 16]}
        words="opening, scribed"
      />
      <DimensionLine from={[foot, SKY - 16]} to={[reach, SKY - 16]} words="undercut" />
      <DimensionLine
        from={[10 * SCALE, SKY]}
        to={[10 * SCALE, SKY + DEPTH * SCALE]}
        words="depth of cut"
        aside={[6, 4]}
      />
    </SliceFigure>
  );
}

/** A run in four slices: scribed and sealed, then a stage at a time, deepest first. */
import { itemAt } from '#geometry/assert.ts';
import { allowance } from '#plan/allowance.ts';
import { stageColors } from '#plan/stage-colors.ts';
import { SCALE, SKY, type SliceBand, SliceFigure } from './SliceFigure.tsx';
import type { SliceOpening } from './slice-profile.ts';

/** The worked part of docs/method.md: floors side by side, then land; lines as drawn. */
const LEVELS = [3, 2.2, 1];
const DRAWN = [8, 14, 18];
const WIDTH = 23;

export function RunFigure() {
  const undercut = { etchFactor: [[0, 1]], edgeDatum: 'shallow-edge' } as const;
  const colors = stageColors(LEVELS.length);
  const scribes = LEVELS.map(
    (level, i) => itemAt(DRAWN, i) - allowance(undercut, { level, depth: LEVELS[i + 1] ?? 0 }),
  );
  const openAfter = (stages: number): SliceOpening[] => {
    const had = LEVELS[stages] ?? 0;
    return scribes.slice(0, stages).map((to, i) => ({ from: -9, to, cut: itemAt(LEVELS, i) - had }));
  };
  const bands = LEVELS.map(
    (_, i): SliceBand => ({
      color: itemAt(colors, i),
      before: openAfter(i),
      after: openAfter(i + 1),
    }),
  );
  return (
    <ol className="frames">
      {[0, 1, 2, 3].map((done) => {
        const bare = done === 0 ? 0 : itemAt(scribes, done - 1);
        return (
          <li key={done}>
            <SliceFigure
              name={frameWords(done)}
              width={WIDTH}
              thickness={4}
              bands={bands.slice(0, done)}
              maskant={[[bare, WIDTH]]}
              sealed={scribes.slice(done)}
            >
              {scribes.slice(done).map((x) => (
                <path key={x} className="scribe" d={`M${x * SCALE} ${SKY - 9}v9`} />
              ))}
            </SliceFigure>
            <p>{frameWords(done)}</p>
          </li>
        );
      })}
    </ol>
  );
}

function frameWords(done: number): string {
  if (done === 0) return 'Before the first dip every line is scribed; lines of later stages are sealed over.';
  const etch = itemAt(LEVELS, done - 1) - (LEVELS[done] ?? 0);
  return `Stage ${done}: peel, etch ${etch.toFixed(1)} mm. All that was bare before goes on down.`;
}

/** The stages of the run: which is in hand, which are done, how long the others take. */
import { Check } from 'lucide-react';
import { useMemo } from 'react';
import { lastRecorded } from '#app/state/tank/run-readings.ts';
import { stageAim } from '#app/state/tank/stage-aim.ts';
import { stagesOver } from '#app/state/tank/stages-over.ts';
import { stageClock } from '#app/state/tank/tank-clock.ts';
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { showMinutes } from '#units/show-length.ts';
import { useTank } from './tank-context.ts';

export function StageRow() {
  const { plan, stage, clock, record, byClock, showStage } = useTank();
  const corrected = record.result?.corrected;
  const { run } = record;
  const over = useMemo(
    () => stagesOver({ clock, corrected, lastRecorded: lastRecorded(run) }),
    [clock, corrected, run],
  );
  return (
    <nav className="tank-stages" aria-label="Stages">
      <ol>
        {plan.stages.map((each, index) => {
          const { number, color } = each;
          const { minutes } = stageAim(each, stageClock(clock, number), { corrected, byClock });
          const isDone = number <= over;
          return (
            <li key={number}>
              <button
                type="button"
                aria-current={number === stage.number ? 'step' : undefined}
                aria-label={`Stage ${number}, ${isDone ? 'done' : showMinutes(minutes)}`}
                onClick={() => showStage(index)}
              >
                <span className="chip" style={{ background: color, color: inkOn(color) }}>
                  <strong>{number}</strong>
                  <StageMark stage={number} />
                </span>
                <span className="stage-state">
                  {isDone ? (
                    <>
                      <Check size={18} aria-hidden="true" className="good" /> done
                    </>
                  ) : (
                    showMinutes(minutes)
                  )}
                </span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

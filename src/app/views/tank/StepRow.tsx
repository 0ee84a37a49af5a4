/** The five steps of a stage; any of them can be gone to, for a run is seldom as the page would have it. */
import { Check } from 'lucide-react';
import { isIn, TANK_STEPS, type TankStep } from '#app/state/tank/tank-clock.ts';
import { useTank } from './tank-context.ts';

const NAMES: Record<(typeof TANK_STEPS)[number], string> = {
  peel: 'Peel',
  check: 'Check',
  bath: 'In the bath',
  gauge: 'Out and gauge',
  left: 'Minutes left',
};

export function StepRow() {
  const { own, had, goTo, stage, record } = useTank();
  const readings = record.result?.readings ?? [];
  const done: Partial<Record<TankStep, boolean>> = {
    peel: own.isPeeled === true || had > 0,
    check: own.isChecked === true || had > 0,
    bath: had > 0 && !isIn(own),
    gauge: readings.some((each) => each.stage === stage.number && each.state === 'counts'),
  };
  return (
    <nav className="tank-steps" aria-label="Steps of the stage">
      <ol>
        {TANK_STEPS.map((step, index) => {
          const isNow = step === own.step;
          const isDone = !isNow && done[step] === true;
          return (
            <li key={step} className={isDone ? 'done' : undefined}>
              <button
                type="button"
                aria-current={isNow ? 'step' : undefined}
                aria-label={NAMES[step]}
                // What is in the bath comes out first.
                disabled={isIn(own) && step !== 'bath'}
                onClick={() => goTo(step)}
              >
                <span className="round" aria-hidden="true">
                  {isDone ? <Check size={18} /> : index + 1}
                </span>
                <span className="step-name">{NAMES[step]}</span>
              </button>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

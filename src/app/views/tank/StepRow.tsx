/** The five steps of a stage; any of them can be gone to, for a run is seldom as the page would have it. */
import { Check } from 'lucide-react';
import { isIn, TANK_STEPS, type TankStep } from '#app/state/tank/tank-clock.ts';
import { useTank } from './tank-context.ts';

const NAMES: Record<TankStep, string> = {
  peel: 'Peel',
  check: 'Check',
  bath: 'In the bath',
  gauge: 'Out and gauge',
  left: 'Minutes left',
};

export function StepRow() {
  const { own, goTo } = useTank();
  const now = TANK_STEPS.indexOf(own.step);
  return (
    <nav className="tank-steps" aria-label="Steps of the stage">
      <ol>
        {TANK_STEPS.map((step, index) => {
          const isDone = index < now;
          return (
            <li key={step} className={isDone ? 'done' : undefined}>
              <button
                type="button"
                aria-current={index === now ? 'step' : undefined}
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

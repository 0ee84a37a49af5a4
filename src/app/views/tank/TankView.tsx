/** At the tank: a stage at a time, what to peel, how long, what to gauge; readings go in, minutes left come out. */
import { useEffect, useMemo } from 'react';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { stageSteps } from '#app/state/stage-steps.ts';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { inkOn } from '#app/views/ink-on.ts';
import { StageMark } from '#app/views/StageMark.tsx';
import { usePlanText } from '#app/views/use-plan-text.ts';
import { useDocument, useMode, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { RunPanel } from './RunPanel.tsx';
import { TankSheet } from './TankSheet.tsx';
import { TankStage } from './TankStage.tsx';
import './tank.css';

/** No mill delivers a sheet that much thicker than its name: above that a reading is a slip of the pen. */
const THICKER = 1.2;

export function TankView() {
  const { actions, mode } = useWorkbench();
  const job = useDocument()?.job;
  const plan = useWorkbenchState(({ derived }) => derived.page?.plan);
  const planText = usePlanText();
  const wanted = useMode((state) => state.step);
  const steps = useMemo(() => (plan === undefined ? [] : stageSteps(plan)), [plan]);
  const step = steps[Math.min(wanted, steps.length - 1)];
  const unit = job?.units ?? 'mm';
  const most = job === undefined ? 0 : (THICKER * sheetThickness(job)) / millimetresIn(unit);
  useEffect(() => {
    actions.show('plan');
    actions.select([]);
  }, [actions]);
  if (plan === undefined || planText === undefined || step === undefined) return null;
  return (
    <div className="tank">
      <header className="tank-head">
        <h1>At the tank</h1>
        <p>{job?.name}</p>
        <button type="button" onClick={() => mode.setState({ mode: 'planning' })}>
          back to planning
        </button>
      </header>
      <main>
        <StageChoice plan={plan} now={step.stage.number} onChoose={(at) => mode.setState({ step: at })} />
        <BrokenView name="The picture">
          <TankSheet stage={step.stage} />
        </BrokenView>
        <TankStage
          plan={plan}
          step={step}
          thickness={job === undefined ? 0 : sheetThickness(job)}
          unit={unit}
        />
        <RunPanel key={planText} planText={planText} plan={plan} stage={step.stage} unit={unit} most={most} />
        <section className="tank-cautions" aria-label="Cautions">
          {plan.cautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </section>
      </main>
    </div>
  );
}

interface StageChoiceProps {
  readonly plan: ShownPlan;
  readonly now: number;
  readonly onChoose: (index: number) => void;
}

function StageChoice({ plan, now, onChoose }: StageChoiceProps) {
  return (
    <nav className="tank-stages" aria-label="Stages">
      {plan.stages.map(({ number, color }, index) => (
        <button
          key={number}
          type="button"
          aria-current={number === now ? 'step' : undefined}
          aria-label={`Stage ${number}`}
          style={{ background: color, color: inkOn(color) }}
          onClick={() => onChoose(index)}
        >
          <strong>{number}</strong>
          <StageMark stage={number} />
        </button>
      ))}
    </nav>
  );
}

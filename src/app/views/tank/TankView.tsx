/** At the tank: a step at a time, what to peel, how long, what to gauge; readings go in, minutes left come out. */
import { useEffect } from 'react';
import { BrokenView } from '#app/views/BrokenView.tsx';
import { usePlanText } from '#app/views/use-plan-text.ts';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownPlan } from '#job/formats/plan-file.ts';
import type { JobFile } from '#job/job-file.ts';
import { AlarmBar } from './AlarmBar.tsx';
import { StageRow } from './StageRow.tsx';
import { StepPanel } from './StepPanel.tsx';
import { StepRow } from './StepRow.tsx';
import { TankBar } from './TankBar.tsx';
import { TankCautions } from './TankCautions.tsx';
import { TankSheet } from './TankSheet.tsx';
import { TankTabs } from './TankTabs.tsx';
import { TankContext } from './tank-context.ts';
import { useTankOf } from './use-tank.ts';
import './tank.css';

export function TankView() {
  const { actions } = useWorkbench();
  const job = useDocument()?.job;
  const plan = useWorkbenchState(({ derived }) => derived.page?.plan);
  const planText = usePlanText();
  useEffect(() => {
    actions.show('plan');
    // Floors are gauged from the near face.
    actions.turnOver('near');
    actions.select([]);
  }, [actions]);
  if (plan === undefined || planText === undefined || job === undefined || plan.stages.length === 0)
    return null;
  return <TankPage key={planText} plan={plan} planText={planText} job={job} />;
}

interface TankPageProps {
  readonly plan: ShownPlan;
  readonly planText: string;
  readonly job: JobFile;
}

function TankPage(props: TankPageProps) {
  const tank = useTankOf(props);
  return (
    <TankContext value={tank}>
      <div className="tank" data-step={tank.own.step}>
        <TankBar />
        <main>
          <AlarmBar />
          <StageRow />
          <BrokenView name="The picture">
            <TankSheet />
          </BrokenView>
          <div className="tank-now">
            <StepRow />
            <StepPanel key={tank.stage.number} />
          </div>
          <TankTabs />
        </main>
        <TankCautions />
      </div>
    </TankContext>
  );
}

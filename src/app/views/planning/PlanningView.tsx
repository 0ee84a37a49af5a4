/** What the plan costs and what another would: stages, tolerance, bath. Each part opens in place. */
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { BathSheetView } from './BathSheetView.tsx';
import { Disclosure } from './Disclosure.tsx';
import { EdgesView } from './EdgesView.tsx';
import { LevelChoicesView } from './LevelChoicesView.tsx';
import { SurveyView } from './SurveyView.tsx';
import { ToleranceView } from './ToleranceView.tsx';
import { WithdrawalsView } from './WithdrawalsView.tsx';

export function PlanningView() {
  const hasPlan = useWorkbenchState(({ derived }) => derived.page?.plan !== undefined);
  const isStale = useWorkbenchState(({ derived }) => derived.isStale || derived.page?.isJudged !== true);
  const survey = useWorkbenchState(({ derived }) => derived.page?.results?.survey);
  if (!hasPlan) return null;
  return (
    <section className={isStale ? 'planning stale' : 'planning'} aria-label="Planning">
      <Disclosure title="Stages: one more or fewer">
        <LevelChoicesView />
      </Disclosure>
      <Disclosure title="Tolerance: what may go wrong">
        <ToleranceView />
      </Disclosure>
      {survey !== undefined && (
        <Disclosure title="Survey of the sheet: what it gains">
          <SurveyView survey={survey} />
        </Disclosure>
      )}
      <Disclosure title="Drawn edges: where they will land">
        <EdgesView />
      </Disclosure>
      <Disclosure title="Tapers drawn out of the bath">
        <WithdrawalsView />
      </Disclosure>
      <Disclosure title="Bath sheet">
        <BathSheetView />
      </Disclosure>
    </section>
  );
}

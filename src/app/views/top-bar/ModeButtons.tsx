/** Ways on from planning: the review of the stages, the run at the tank, the files to hand off. */
import { Button } from 'react-aria-components';
import { Tip } from '#app/views/controls/Tip.tsx';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useDocument, useLayout, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { hasStop } from '#findings/finding.ts';

export function ModeButtons() {
  const { mode, layout } = useWorkbench();
  const isAsked = (useDocument()?.unsaid?.length ?? 0) > 0;
  const isPlanned = useWorkbenchState(
    ({ derived: { page, isStale } }) =>
      page?.isWhole === true && (page.plan?.stages.length ?? 0) > 0 && !isStale,
  );
  const isReady = isPlanned && !isAsked;
  const hasStops = useWorkbenchState(({ derived: { page } }) => page !== undefined && hasStop(page.findings));
  const isHeld = hasStops && !isAsked;
  const isOpen = useLayout(({ panel }) => panel === 'handoff');
  const go = (to: 'review' | 'tank') => () => mode.setState({ mode: to, step: 0 });
  return (
    <>
      <Tip words="Check the plan stage by stage, and sign it">
        <Button className="plain" aria-label="Review the stages" isDisabled={!isReady} onPress={go('review')}>
          Review
        </Button>
      </Tip>
      <Tip words="Run the stages at the tank, with readings">
        <Button className="plain" aria-label="At the tank" isDisabled={!isReady} onPress={go('tank')}>
          Tank
        </Button>
      </Tip>
      <Button
        className={isHeld || isOpen ? 'hand-off' : 'main hand-off'}
        aria-expanded={isOpen}
        isDisabled={isAsked}
        onPress={() => layout.setState({ panel: isOpen ? 'findings' : 'handoff', over: 'nothing' })}
      >
        {isHeld && <SeverityShape severity="stop" />}
        Hand off
      </Button>
    </>
  );
}

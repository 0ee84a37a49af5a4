/** The bar at the top: the job, where its plan stands, steps back and forward, the unit on show, and the ways on from planning. */
import { Redo2, Search, Undo2 } from 'lucide-react';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { NameField } from '#app/views/NameField.tsx';
import { ShownUnitChoice } from '#app/views/ShownUnitChoice.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { KeptSign } from './KeptSign.tsx';
import { MainMenu } from './MainMenu.tsx';
import { ModeButtons } from './ModeButtons.tsx';
import { RunLine } from './RunLine.tsx';
import { StandingChip } from './StandingChip.tsx';
import './top-bar.css';

export function TopBar() {
  const { layout } = useWorkbench();
  const document = useDocument();
  return (
    <header className="top-bar">
      <h1 className="unseen">Isobath</h1>
      <MainMenu />
      {document !== undefined && <JobName job={document.job} />}
      {document !== undefined && <KeptSign />}
      {document !== undefined && <StandingChip />}
      <RunLine />
      <span className="gap" />
      <StepButtons />
      <IconButton
        icon={Search}
        name="Find an action, region or finding"
        keys="Ctrl K"
        onPress={() => layout.setState({ over: 'palette' })}
      />
      <span className="rule wide-only" />
      <ShownUnitChoice className="wide-only" />
      <span className="rule" />
      <ModeButtons />
    </header>
  );
}

function JobName({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  return (
    <NameField
      label="Name of the job"
      name={job.name ?? ''}
      onTake={(value) => actions.edit(`name ${value}`, (before) => ({ ...before, name: value }))}
    />
  );
}

/** Undo and redo, each saying what it would do. */
function StepButtons() {
  const { actions } = useWorkbench();
  const history = useWorkbenchState((state) => state.history);
  const last = history !== undefined && history.past.length > 0 ? history.present.label : undefined;
  const next = history?.future[0]?.label;
  return (
    <>
      <IconButton
        icon={Undo2}
        name={`Undo: ${last ?? 'nothing'}`}
        keys="Ctrl Z"
        isDisabled={last === undefined}
        onPress={actions.undo}
      />
      <IconButton
        icon={Redo2}
        className="wide-only"
        name={`Redo: ${next ?? 'nothing'}`}
        keys="Ctrl Shift Z"
        isDisabled={next === undefined}
        onPress={actions.redo}
      />
    </>
  );
}

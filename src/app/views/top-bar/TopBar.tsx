/** The bar at the top: the job, where its plan stands, steps back and forward, the unit on show, and the ways on from planning. */
import { Redo2, Search, Undo2 } from 'lucide-react';
import { IconButton } from '#app/views/controls/IconButton.tsx';
import { Segments } from '#app/views/controls/Segments.tsx';
import { NameField } from '#app/views/NameField.tsx';
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
      <ShownUnitChoice />
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

function ShownUnitChoice() {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <Segments
      label="Lengths are shown in"
      className="wide-only"
      options={[
        { value: 'mm', words: 'mm' },
        { value: 'in', words: 'in' },
      ]}
      value={unit}
      onTake={actions.readIn}
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

/** Ways out of a finding that are one press away, while the job is being planned. */
import { inJobUnits } from '#app/state/edits/edit-figures.ts';
import type { MovedLevel } from '#app/state/workbench-state.ts';
import type { Finding } from '#findings/finding.ts';
import { setField } from '#job/fields/edit-field.ts';
import { lengthFigure, showLength } from '#units/show-length.ts';
import { useMode, useWorkbench, useWorkbenchState } from './workbench-context.ts';

interface FindingWaysProps {
  readonly finding: Finding;
  /** The level that was moved last, where the finding came of it. */
  readonly moved: MovedLevel | undefined;
}

export function FindingWays({ finding, moved }: FindingWaysProps) {
  const isPlanning = useMode(({ mode }) => mode === 'planning');
  if (!isPlanning) return null;
  if (moved !== undefined) return <MoveBack moved={moved} />;
  if (finding.code === 'sizing-saves-stage' || finding.code === 'sizing-saves-stop')
    return <SizeSheet amount={finding.facts.thinner / 2} />;
  if (finding.code === 'sized-unasked') return <KeepSheet amount={finding.facts.amount} />;
  return null;
}

function MoveBack({ moved }: { readonly moved: MovedLevel }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <button type="button" className="main" onClick={actions.undo}>
      Move back to {lengthFigure(moved.from, unit)}
    </button>
  );
}

/** Half of it off each face, mm. */
function SizeSheet({ amount }: { readonly amount: number }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const words = showLength(amount, unit);
  const size = () =>
    actions.edit(`sizing by ${words}`, (job) =>
      setField(job, ['process', 'sizing'], { amount: inJobUnits(job, amount) }),
    );
  return (
    <button type="button" onClick={size}>
      Size each face by {words}
    </button>
  );
}

/** What was planned unasked is decided, the one way or the other. */
function KeepSheet({ amount }: { readonly amount: number }) {
  const { actions } = useWorkbench();
  const keep = () =>
    actions.edit('sheet as it comes', (job) => setField(job, ['process', 'sizing'], { amount: 0 }));
  return (
    <>
      <SizeSheet amount={amount} />
      <button type="button" onClick={keep}>
        Keep the sheet as it comes
      </button>
    </>
  );
}

/** Undo and redo, each saying what it would do. */
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

export function StepButtons() {
  const { actions } = useWorkbench();
  const history = useWorkbenchState((state) => state.history);
  const last = history !== undefined && history.past.length > 0 ? history.present.label : undefined;
  const next = history?.future[0]?.label;
  return (
    <span className="steps">
      <StepButton verb="undo" label={last} keys="Ctrl+Z" onClick={actions.undo} />
      <StepButton verb="redo" label={next} keys="Ctrl+Shift+Z" onClick={actions.redo} />
    </span>
  );
}

interface StepButtonProps {
  readonly verb: string;
  readonly label: string | undefined;
  readonly keys: string;
  readonly onClick: () => void;
}

function StepButton({ verb, label, keys, onClick }: StepButtonProps) {
  const words = label === undefined ? `${verb}: nothing` : `${verb}: ${label}`;
  return (
    <button
      type="button"
      disabled={label === undefined}
      aria-label={words}
      title={`${words} (${keys})`}
      onClick={onClick}
    >
      {verb}
    </button>
  );
}

/** The unit that lengths are shown in, wherever the plan is looked at; the job keeps its own. */
import { Segments } from './controls/Segments.tsx';
import { useWorkbench, useWorkbenchState } from './workbench-context.ts';

export function ShownUnitChoice({ className }: { readonly className?: string }) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  return (
    <Segments
      label="Lengths are shown in"
      {...(className === undefined ? {} : { className })}
      options={[
        { value: 'mm', words: 'mm' },
        { value: 'in', words: 'in' },
      ]}
      value={unit}
      onTake={actions.readIn}
    />
  );
}

/** How the scribe template is made: slot, bridges, margin, tooling holes, stretch and its paper. */

import { FieldControl, GroupFields } from '#app/views/job/FieldControl.tsx';
import type { JobPart } from '#app/views/job/job-part.ts';
import { RowsField } from '#app/views/job/RowsField.tsx';
import { NumberField } from '#app/views/NumberField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';

const { members } = JOB.members.handoff.members.template;
const PATH = ['handoff', 'template'];

export function TemplateFields(part: JobPart) {
  return (
    <details className="disclosure">
      <summary>Scribe template</summary>
      <fieldset aria-label="Scribe template">
        <GroupFields group={members.knife} path={[...PATH, 'knife']} {...part} />
        <GroupFields group={members.bridge} path={[...PATH, 'bridge']} {...part} />
        <FieldControl field={members.web} path={[...PATH, 'web']} {...part} />
        <FieldControl field={members.margin} path={[...PATH, 'margin']} {...part} />
        <GroupFields group={members.holes} path={[...PATH, 'holes']} {...part} />
        <HolePlaces {...part} />
        <StretchField {...part} axis="x" />
        <StretchField {...part} axis="y" />
        <FieldControl field={members.paper} path={[...PATH, 'paper']} {...part} />
      </fieldset>
    </details>
  );
}

function HolePlaces({ job }: JobPart) {
  const { actions } = useWorkbench();
  const path = [...PATH, 'holes', 'at'];
  const given = job.handoff?.template?.holes?.at ?? [];
  return (
    <RowsField
      label={members.holes.members.at.label}
      rows={given}
      columns={['x', 'y']}
      onTake={(rows) =>
        actions.edit('places of tooling holes', (before) =>
          setField(before, path, rows.length === 0 ? undefined : rows),
        )
      }
    />
  );
}

function StretchField({ job, axis }: JobPart & { readonly axis: 'x' | 'y' }) {
  const { actions } = useWorkbench();
  const path = [...PATH, 'stretch'];
  const index = axis === 'x' ? 0 : 1;
  const given = job.handoff?.template?.stretch;
  const part = members.stretch.parts[axis];
  return (
    <NumberField
      of={part}
      value={given?.[index]}
      usual={members.stretch.usual.value[axis]}
      onTake={(value, shown) =>
        actions.edit(`${part.label.toLowerCase()} ${shown}`, (before) => {
          const { x, y } = members.stretch.usual.value;
          return setField(before, path, (before.handoff?.template?.stretch ?? [x, y]).with(index, value));
        })
      }
      onClear={() => actions.edit('no stretch', (before) => setField(before, path, undefined))}
    />
  );
}

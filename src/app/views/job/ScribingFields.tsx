/** How true lines are cut, and a knife in the slot of a template; what moves drawn edges beside the etch itself. */
import { fromJobUnits, inJobUnits } from '#app/state/edits/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { Disclosure } from '#app/views/planning/Disclosure.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { showLength } from '#units/show-length.ts';
import { GroupFields } from './FieldControl.tsx';
import type { JobPart } from './job-part.ts';

const { scribing } = JOB.members.process.members;
const PATH = ['process', 'scribing'];
const SIDES = ['slot', 'blade'] as const;

export function ScribingFields(part: JobPart) {
  return (
    <Disclosure title="How lines are cut">
      <GroupFields group={scribing} path={PATH} {...part} />
      <SlotFields {...part} />
    </Disclosure>
  );
}

/** Slot and blade count together: while one is not set, it is as wide as the other, without play. */
function SlotFields({ job }: JobPart) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const template = job.process.scribing?.template;
  const path = [...PATH, 'template'];
  return SIDES.map((side) => {
    const field = scribing.members.template.members[side];
    return (
      <LengthField
        key={side}
        of={field}
        length={template && fromJobUnits(job, template[side])}
        placeholder="none"
        onTake={(length) =>
          actions.edit(`${field.label.toLowerCase()} ${showLength(length, unit)}`, (before) => {
            const width = inJobUnits(before, length);
            const { slot = width, blade = width } = before.process.scribing?.template ?? {};
            return setField(before, path, { slot, blade, [side]: width });
          })
        }
        onClear={() =>
          actions.edit('no template to cut along', (before) => setField(before, path, undefined))
        }
      />
    );
  });
}

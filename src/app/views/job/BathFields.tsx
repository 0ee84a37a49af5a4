/** The bath and how far its figures may be off; what a drawn line stands for, and how the run is masked. */

import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { EtchFactorField } from './EtchFactorField.tsx';
import { FactorByDepth } from './FactorByDepth.tsx';
import { GroupFields } from './FieldControl.tsx';
import type { JobPart } from './job-part.ts';
import { figuresOf } from './known-figures.ts';
import { RateField } from './RateField.tsx';
import { ScribingFields } from './ScribingFields.tsx';

export function BathFields(part: JobPart) {
  const { job } = part;
  const { actions } = useWorkbench();
  const { alloys, baths } = figuresOf(job);
  const { bath } = job.process;
  const metal = alloys.find(({ id }) => id === job.stock.alloy)?.metal;
  const fitting = baths.filter(({ etches }) => etches === metal);
  const others = baths.filter((each) => !fitting.includes(each));
  const option = ({ id, name }: (typeof baths)[number]) => (
    <option key={id} value={id}>
      {name}
    </option>
  );
  return (
    <fieldset>
      <legend>Bath</legend>
      <ChoiceField
        label={JOB.members.process.members.bath.label}
        value={bath ?? ''}
        onTake={(id) =>
          actions.edit(id === '' ? 'no bath' : `bath ${id}`, (before) =>
            setField(before, ['process', 'bath'], id || undefined),
          )
        }
      >
        <option value="">not set</option>
        {bath !== undefined && !baths.some(({ id }) => id === bath) && (
          <option value={bath}>{bath}, not known here</option>
        )}
        {fitting.length > 0 && <optgroup label={`etches ${metal}`}>{fitting.map(option)}</optgroup>}
        <optgroup label={fitting.length > 0 ? 'for other metals' : 'all'}>{others.map(option)}</optgroup>
      </ChoiceField>
      <EtchFactorField job={job} />
      <FactorByDepth job={job} />
      <RateField job={job} />
      <GroupFields group={JOB.members.process} path={['process']} {...part} />
      <ScribingFields {...part} />
    </fieldset>
  );
}

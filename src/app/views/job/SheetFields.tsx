/** The sheet as delivered: alloy, density, tolerance, and both ends of one that tapers. */

import { fromJobUnits, setTaperEnd } from '#app/state/edits/edit-figures.ts';
import { setSheetThickness } from '#app/state/edits/edit-job.ts';
import { orderedThickness } from '#app/state/sheet-thickness.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { showLength } from '#units/show-length.ts';
import { ChoiceField } from './ChoiceField.tsx';
import { GroupFields } from './FieldControl.tsx';
import type { JobPart } from './job-part.ts';
import { figuresOf } from './known-figures.ts';
import { SheetReadings } from './SheetReadings.tsx';
import { SheetTaper } from './SheetTaper.tsx';

export function SheetFields(part: JobPart) {
  const { job } = part;
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { alloys } = figuresOf(job);
  const { alloy, thickness } = job.stock;
  return (
    <fieldset>
      <legend>Sheet</legend>
      <ChoiceField
        label={JOB.members.stock.members.alloy.label}
        value={alloy ?? ''}
        onTake={(id) =>
          actions.edit(id === '' ? 'no alloy' : `alloy ${id}`, (before) =>
            setField(before, ['stock', 'alloy'], id || undefined),
          )
        }
      >
        <option value="">not set</option>
        {alloy !== undefined && !alloys.some(({ id }) => id === alloy) && (
          <option value={alloy}>{alloy}, not known here</option>
        )}
        {alloys.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </ChoiceField>
      {typeof thickness === 'number' && (
        <LengthField
          of={JOB.members.stock.members.thickness}
          length={orderedThickness(job)}
          onTake={(length) =>
            actions.edit(`sheet ${showLength(length, unit)}`, (before) => setSheetThickness(before, length))
          }
        />
      )}
      <GroupFields group={JOB.members.stock} path={['stock']} {...part} />
      {typeof thickness === 'object' &&
        (['thicknessFrom', 'thicknessTo'] as const).map((end) => (
          <LengthField
            key={end}
            of={JOB.members.stock.members.thickness.parts[end]}
            length={fromJobUnits(job, thickness[end])}
            onTake={(length) =>
              actions.edit(`sheet ${showLength(length, unit)}`, (before) => setTaperEnd(before, end, length))
            }
          />
        ))}
      <SheetReadings job={job} />
      <SheetTaper job={job} />
    </fieldset>
  );
}

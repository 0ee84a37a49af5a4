/** How the drawing is read: its unit where it says none or a wrong one, the gaps that are joined, and what wide polylines are. */
import { fromJobUnits, setDrawingUnits, setJoinTolerance } from '#app/state/edit-figures.ts';
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { LengthField } from '#app/views/LengthField.tsx';
import { useBench, useWorkbench } from '#app/views/workbench-context.ts';
import { DEFAULT_JOIN_TOLERANCE } from '#job/job-defaults.ts';
import type { JobFile } from '#job/job-file.ts';
import { LENGTH_UNITS, type LengthUnit, unitName } from '#units/length-unit.ts';
import { showLength } from '#units/show-length.ts';
import { WideLinesField } from './WideLinesField.tsx';

/** What parts are drawn in; any other unit is there as well where the job names it. */
const USUAL: ReadonlySet<LengthUnit> = new Set(['mm', 'in', 'cm', 'm', 'ft', 'mil', 'um']);

export function DrawingFields({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const unit = useBench((state) => state.session.unit);
  const stated = useBench((state) => state.derived.page?.statedUnit);
  const units = LENGTH_UNITS.filter((each) => USUAL.has(each) || each === job.drawingUnits);
  const joined = job.joinTolerance;
  return (
    <div className="drawing-fields">
      <ChoiceField
        label="Drawn in"
        value={job.drawingUnits ?? ''}
        onTake={(chosen) =>
          actions.edit(chosen === '' ? 'unit of the drawing' : `drawn in ${chosen}`, (before) =>
            setDrawingUnits(before, chosen === '' ? undefined : (chosen as LengthUnit)),
          )
        }
      >
        <option value="">
          {stated === undefined ? 'not said: choose' : `${unitName(stated)}, as it says`}
        </option>
        {units.map((each) => (
          <option key={each} value={each}>
            {unitName(each)}
          </option>
        ))}
      </ChoiceField>
      <LengthField
        label="Join gaps up to"
        length={joined === undefined ? undefined : fromJobUnits(job, joined)}
        usual={DEFAULT_JOIN_TOLERANCE.value}
        least={0}
        most={10}
        onTake={(length) =>
          actions.edit(`join gaps up to ${showLength(length, unit)}`, (before) =>
            setJoinTolerance(before, length),
          )
        }
        onClear={() => actions.edit('join gaps as usual', (before) => setJoinTolerance(before, undefined))}
      />
      <WideLinesField job={job} />
    </div>
  );
}

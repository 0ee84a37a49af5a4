/** How the drawing is read: its unit where it states none or a wrong one, the gaps that are joined, and what wide polylines are. */
import { ChoiceField } from '#app/views/job/ChoiceField.tsx';
import { FieldControl } from '#app/views/job/FieldControl.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { LENGTH_UNITS, type LengthUnit, unitName } from '#units/length-unit.ts';

/** What parts are drawn in; any other unit is there as well where the job names it. */
const USUAL: ReadonlySet<LengthUnit> = new Set(['mm', 'in', 'cm', 'm', 'ft', 'mil', 'um']);

export function DrawingFields({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const isUnsaid = useDocument()?.unsaid?.includes('unit') === true;
  const stated = useWorkbenchState((state) => state.derived.page?.statedUnit);
  const findings = useWorkbenchState((state) => state.derived.page?.findings) ?? [];
  const hasWideLines = findings.some(({ code }) => code === 'polyline-wide');
  const units = LENGTH_UNITS.filter((each) => USUAL.has(each) || each === job.drawingUnits);
  return (
    <div className="drawing-fields">
      <ChoiceField
        label={JOB.members.drawingUnits.label}
        value={job.drawingUnits ?? ''}
        onTake={(chosen) => {
          const unit = LENGTH_UNITS.find((each) => each === chosen);
          if (unit !== undefined && isUnsaid) return void actions.sayUnit(unit);
          return actions.edit(chosen === '' ? 'unit of the drawing' : `drawn in ${chosen}`, (before) =>
            setField(before, ['drawingUnits'], chosen === '' ? undefined : chosen),
          );
        }}
      >
        <option value="">
          {stated === undefined ? 'not stated: choose' : `${unitName(stated)}, as stated`}
        </option>
        {units.map((each) => (
          <option key={each} value={each}>
            {unitName(each)}
          </option>
        ))}
      </ChoiceField>
      <FieldControl field={JOB.members.joinTolerance} path={['joinTolerance']} job={job} filled={job} />
      {(job.wideLines !== undefined || hasWideLines) && (
        <FieldControl field={JOB.members.wideLines} path={['wideLines']} job={job} filled={job} />
      )}
    </div>
  );
}

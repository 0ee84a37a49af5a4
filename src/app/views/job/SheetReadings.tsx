/** The sheet as it was measured before the first dip: readings of a flat sheet, whose mean and spread take the place of what was ordered. */
import { fromJobUnits, setSheetReadings, sheetReadingsOf } from '#app/state/edits/edit-figures.ts';
import { pickFiles } from '#app/views/pick-files.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { mostRead } from '#job/fields/stock-fields.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { LengthList } from './LengthList.tsx';
import { RowsField } from './RowsField.tsx';

const { measured, survey: SURVEY } = JOB.members.stock.members;

export function SheetReadings({ job }: { readonly job: JobFile }) {
  const workbench = useWorkbench();
  const { actions } = workbench;
  const { thickness } = job.stock;
  const readings = sheetReadingsOf(job);
  if (readings === undefined || typeof thickness !== 'number') return null;
  const { survey } = job.stock;
  return (
    <>
      <LengthList
        of={measured.parts.reading}
        lengths={readings}
        within={{ most: mostRead(fromJobUnits(job, thickness)) }}
        onTake={(lengths, what) => actions.edit(what, (before) => setSheetReadings(before, lengths))}
      />
      {typeof survey === 'string' ? (
        <p className="aside">
          {SURVEY.label}: {survey}
        </p>
      ) : (
        <RowsField
          label={SURVEY.label}
          rows={survey ?? []}
          columns={['x', 'y', 'thickness']}
          onTake={(rows) =>
            actions.edit('survey of the sheet', (before) =>
              setField(before, ['stock', 'survey'], rows.length === 0 ? undefined : rows),
            )
          }
        />
      )}
      <p className="row">
        <button type="button" onClick={() => pickFiles(workbench, '.csv,.tsv')}>
          Open readings (CSV)
        </button>
      </p>
    </>
  );
}

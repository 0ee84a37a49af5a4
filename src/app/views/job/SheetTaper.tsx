/** A sheet that tapers: the places between which its thickness changes, and readings at places. Places are in the drawing's own unit. */
import { inDrawing } from '#app/state/region-targets.ts';
import { lineAlongPart } from '#app/state/taper-line.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { RowsField } from './RowsField.tsx';

const FIELDS = JOB.members.stock.members;
const READINGS = ['stock', 'measured'];
/** mm: more than a point loses in the file, so that the taper does not end inside the part, which would bend its back. */
const PAST = 0.005;

export function SheetTaper({ job }: { readonly job: JobFile }) {
  const { store, actions } = useWorkbench();
  const cut = useWorkbenchState((state) => state.session.cut);
  const { thickness, measured = [] } = job.stock;
  const placed = measured.flatMap((each) =>
    typeof each === 'number' || each.at === undefined ? [] : [[each.at[0], each.at[1], each.thickness]],
  );
  const canPlace = placed.length === measured.length;
  const taperAlongSection = () => {
    const state = store.getState();
    const plan = state.derived.page?.plan;
    if (cut === undefined || plan === undefined || typeof thickness !== 'number') return;
    const line = lineAlongPart(plan, cut, PAST);
    const taper = {
      from: inDrawing(line.from, state),
      to: inDrawing(line.to, state),
      thicknessFrom: thickness,
      thicknessTo: thickness,
    };
    actions.edit('sheet tapers along the section line', (before) =>
      setField(before, ['stock', 'thickness'], taper),
    );
  };
  return (
    <>
      {typeof thickness === 'number' ? (
        <p>
          <button type="button" disabled={cut === undefined} onClick={taperAlongSection}>
            It tapers along the section line
          </button>
        </p>
      ) : (
        (['from', 'to'] as const).map((end) => (
          <RowsField
            key={end}
            label={FIELDS.thickness.parts[end].label}
            rows={[thickness[end]]}
            columns={['x', 'y']}
            count={1}
            onTake={([place]) =>
              actions.edit(`taper ${end} ${place?.join(', ')}`, (before) =>
                setField(before, ['stock', 'thickness'], { ...thickness, [end]: place }),
              )
            }
          />
        ))
      )}
      {canPlace && (
        <RowsField
          label={FIELDS.measured.parts.placed.label}
          rows={placed}
          columns={['x', 'y', 'thickness']}
          onTake={(rows) =>
            actions.edit('sheet readings at places', (before) => {
              const readings = rows.map(([x = 0, y = 0, read = 0]) => ({ at: [x, y], thickness: read }));
              return setField(before, READINGS, readings.length === 0 ? undefined : readings);
            })
          }
        />
      )}
    </>
  );
}

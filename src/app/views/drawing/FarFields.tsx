/** How the far face is drawn, and how far its template may be off; only of a job that has one. */
import { FieldControl } from '#app/views/job/FieldControl.tsx';
import { RowsField } from '#app/views/job/RowsField.tsx';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

const { members } = JOB.members.far;
type Pair = [[number, number], [number, number]];

export function FarFields({ job }: { readonly job: JobFile }) {
  const { actions } = useWorkbench();
  const { layers, far, requirements } = job;
  const hasFar =
    far !== undefined ||
    (layers?.far ?? layers?.both) !== undefined ||
    requirements.some(({ face }) => face !== undefined && face !== 'near');
  if (!hasFar) return null;
  const part = { job, filled: job };
  const set = (key: keyof typeof members, value: unknown) =>
    actions.edit(members[key].label.toLowerCase(), (before) => setField(before, ['far', key], value));
  const points = far?.points ?? { near: [], far: [] };
  const mirror = far?.mirror === undefined ? [] : [far.mirror.from, far.mirror.to];
  return (
    <fieldset>
      <legend>Far face</legend>
      {far?.drawing !== undefined && (
        <p className="aside">
          {members.drawing.label}: {far.drawing}
        </p>
      )}
      <FieldControl field={members.view} path={['far', 'view']} {...part} />
      <RowsField
        label={members.mirror.label}
        rows={mirror}
        columns={['x', 'y']}
        count={2}
        onTake={(rows) => {
          const [from, to] = pairOf(rows);
          set('mirror', { from, to });
        }}
      />
      <RowsField
        label={members.points.label}
        rows={points.near.map((near, index) => [...near, ...(points.far[index] ?? [])])}
        columns={['near x', 'near y', 'far x', 'far y']}
        count={2}
        onTake={(rows) =>
          set('points', {
            near: pairOf(rows),
            far: pairOf(rows.map((row) => row.slice(2))),
          })
        }
      />
      <FieldControl field={members.registration} path={['far', 'registration']} {...part} />
    </fieldset>
  );
}

function pairOf(rows: readonly (readonly number[])[]): Pair {
  const [[ax = 0, ay = 0] = [], [bx = 0, by = 0] = []] = rows;
  return [
    [ax, ay],
    [bx, by],
  ];
}

/** An overall etch before masking, by an amount or to a thickness: what is typed in the one empties the other. */
import { fromJobUnits, inJobUnits } from '#app/state/edits/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { setField } from '#job/fields/edit-field.ts';
import { JOB } from '#job/job-file.ts';
import { showLength, showMinutes } from '#units/show-length.ts';
import { FieldControl } from './FieldControl.tsx';
import type { JobPart } from './job-part.ts';

const { sizing } = JOB.members.process.members;
const PATH = ['process', 'sizing'];
const WAYS = ['amount', 'to'] as const;

export function SizingFields(part: JobPart) {
  const { job } = part;
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const given = job.process.sizing;
  return (
    <fieldset>
      <legend>Sizing before masking</legend>
      {WAYS.map((way) => {
        const field = sizing.members[way];
        const value = given?.[way];
        return (
          <LengthField
            key={way}
            of={field}
            length={value === undefined ? undefined : fromJobUnits(job, value)}
            placeholder="none"
            isFine
            onTake={(length) =>
              actions.edit(`${field.label.toLowerCase()} ${showLength(length, unit)}`, (before) => {
                const faces = before.process.sizing?.faces;
                const next = { [way]: inJobUnits(before, length), ...(faces === undefined ? {} : { faces }) };
                return setField(before, PATH, next);
              })
            }
            onClear={() => actions.edit('no sizing', (before) => setField(before, PATH, undefined))}
          />
        );
      })}
      {given === undefined ? (
        <>
          <p className="aside">
            Where one is set, the sheet is etched all over first, on both faces or one; where none is, only if
            all of it is to get thinner and that saves a stage. 0 keeps it as it comes.
          </p>
          <SizedWords />
        </>
      ) : (
        <>
          <FieldControl field={sizing.members.faces} path={[...PATH, 'faces']} {...part} />
          <SizedWords />
        </>
      )}
    </fieldset>
  );
}

/** What it comes to in the plan on show. */
function SizedWords() {
  const unit = useWorkbenchState((state) => state.session.unit);
  const planned = useWorkbenchState(({ derived }) => derived.page?.plan?.sizing);
  if (planned === undefined) return null;
  const { amount, minutes, edge, faces } = planned;
  return (
    <p className="aside">
      {showLength(amount, unit)} off {faces === 'both' ? 'each face' : 'the near face'} in{' '}
      {showMinutes(minutes)}; edges move in by {showLength(edge, unit)}. The clock starts after it.
    </p>
  );
}

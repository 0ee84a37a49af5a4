/** A field of the job edited in place: its name, its limits and what counts without it come from its declaration. */

import { fromJobUnits, inJobUnits } from '#app/state/edits/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { NumberField } from '#app/views/NumberField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { type FieldPath, fieldIn, setField } from '#job/fields/edit-field.ts';
import type { AnyField, Group, Members } from '#job/fields/field.ts';
import { showLength } from '#units/show-length.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './job-part.ts';
import { TextField } from './TextField.tsx';

interface GroupFieldsProps extends JobPart {
  readonly group: Pick<Group<Members>, 'members'>;
  readonly path: FieldPath;
}

/** Every field of a group whose control is not made by hand. */
export function GroupFields({ group, path, ...part }: GroupFieldsProps) {
  return Object.entries(group.members).map(([key, field]) =>
    field.is === 'field' && field.control.isByHand !== true ? (
      <FieldControl key={key} field={field} path={[...path, key]} {...part} />
    ) : null,
  );
}

interface FieldControlProps extends JobPart {
  readonly field: AnyField;
  readonly path: FieldPath;
}

export function FieldControl({ field, path, job, filled, provenance }: FieldControlProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { label, control, usual } = field;
  const units = { job: job.units ?? 'mm', drawing: 'mm' } as const;
  const given = fieldIn(job, path);
  const followed = given === undefined ? fieldIn(filled, path) : undefined;
  const otherwise = usual === undefined ? followed : field.write(usual.value, units);
  const source =
    given === undefined ? (usual ?? provenance?.find((row) => row.field === path.join('.'))) : undefined;
  const take = (value: unknown, shown: string) =>
    actions.edit(`${label.toLowerCase()}: ${shown}`, (before) => setField(before, path, value));
  const clear = () => take(undefined, 'as usual');
  if (control.as === 'length') {
    const inMillimetres = (value: unknown) =>
      typeof value === 'number' ? fromJobUnits(job, value) : undefined;
    return (
      <LengthField
        of={field}
        length={inMillimetres(given)}
        usual={inMillimetres(otherwise)}
        placeholder="none"
        source={source}
        onTake={(length) => take(inJobUnits(job, length), showLength(length, unit))}
        onClear={clear}
      />
    );
  }
  if (control.as === 'number') {
    return (
      <NumberField
        of={field}
        value={typeof given === 'number' ? given : undefined}
        usual={typeof otherwise === 'number' ? otherwise : undefined}
        source={source}
        onTake={take}
        onClear={clear}
      />
    );
  }
  if (control.as === 'text' || control.as === 'date') return <TextField of={field} path={path} job={job} />;
  if (control.as !== 'choice') return null;
  const words = typeof otherwise === 'string' ? control.words[otherwise] : undefined;
  return (
    <ChoiceField
      label={label}
      value={typeof given === 'string' ? given : ''}
      onTake={(value) => (value === '' ? clear() : take(value, value))}
    >
      <option value="">{words === undefined ? 'not set' : `as usual: ${words}`}</option>
      {Object.entries(control.words).map(([value, label]) => (
        <option key={value} value={value}>
          {label}
        </option>
      ))}
    </ChoiceField>
  );
}

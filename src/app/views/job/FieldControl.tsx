/** A field of the job edited in place: its name, its limits and what counts without it come from its declaration. */

import { fromJobUnits, inJobUnits } from '#app/state/edits/edit-figures.ts';
import { LengthField } from '#app/views/LengthField.tsx';
import { QuantityField } from '#app/views/QuantityField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { type FieldPath, fieldIn, setField } from '#job/fields/edit-field.ts';
import type { AnyField, Group, Members, NumberControl } from '#job/fields/field.ts';
import { readFigure } from '#units/read-figure.ts';
import { showLength } from '#units/show-length.ts';
import { ChoiceField } from './ChoiceField.tsx';
import type { JobPart } from './job-part.ts';

interface GroupFieldsProps extends JobPart {
  readonly group: Pick<Group<Members>, 'members'>;
  readonly path: FieldPath;
}

/** Every field of a group that has no control of its own. */
export function GroupFields({ group, path, ...part }: GroupFieldsProps) {
  return Object.entries(group.members).map(([key, field]) =>
    field.is === 'field' ? <FieldControl key={key} field={field} path={[...path, key]} {...part} /> : null,
  );
}

interface FieldControlProps extends JobPart {
  readonly field: AnyField;
  readonly path: FieldPath;
}

export function FieldControl({ field, path, job, filled }: FieldControlProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { label, control, usual } = field;
  const units = { job: job.units ?? 'mm', drawing: 'mm' } as const;
  const given = fieldIn(job, path);
  const followed = given === undefined ? fieldIn(filled, path) : undefined;
  const otherwise = usual === undefined ? followed : field.write(usual.value, units);
  const take = (value: unknown, shown: string) =>
    actions.edit(`${label.toLowerCase()}: ${shown}`, (before) => setField(before, path, value));
  const clear = () => take(undefined, 'as usual');
  if (control.as === 'length') {
    const inMillimetres = (value: unknown) =>
      typeof value === 'number' ? fromJobUnits(job, value) : undefined;
    return (
      <LengthField
        label={label}
        length={inMillimetres(given)}
        usual={inMillimetres(otherwise)}
        least={control.least}
        most={control.most}
        onTake={(length) => take(inJobUnits(job, length), showLength(length, unit))}
        onClear={clear}
      />
    );
  }
  if (control.as === 'number') {
    const shown = (value: unknown) =>
      typeof value === 'number' ? String(Number((value * control.times).toPrecision(10))) : '';
    const { least, most, isClosed } = control;
    return (
      <QuantityField
        label={label}
        text={shown(given)}
        placeholder={shown(otherwise) || 'none'}
        suffix={control.unit}
        read={(text) => inside(readFigure(text), control)}
        expected={`A figure from ${least} to ${isClosed ? '' : 'under '}${most} ${control.unit}.`}
        onTake={(value) => take(value / control.times, `${value} ${control.unit}`)}
        onClear={clear}
      />
    );
  }
  if (control.as === 'own') return null;
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

function inside(value: number | undefined, { least, most, isClosed }: NumberControl): number | undefined {
  if (value === undefined || value < least) return undefined;
  return value < most || (isClosed && value === most) ? value : undefined;
}

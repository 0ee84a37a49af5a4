/** Words of the job edited in place: Enter or leaving the field accepts them, Escape cancels, an empty field leaves them unset. */
import { useId, useState } from 'react';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { type FieldPath, fieldIn, setField } from '#job/fields/edit-field.ts';
import type { AnyField } from '#job/fields/field.ts';
import type { JobFile } from '#job/job-file.ts';

interface TextFieldProps {
  readonly of: AnyField;
  readonly path: FieldPath;
  readonly job: JobFile;
}

export function TextField({ of: { label, control }, path, job }: TextFieldProps) {
  const { actions } = useWorkbench();
  const id = useId();
  const given = fieldIn(job, path);
  const text = typeof given === 'string' ? given : '';
  const [draft, setDraft] = useState<string>();
  const take = () => {
    setDraft(undefined);
    const next = draft?.trim();
    if (next === undefined || next === text) return;
    actions.edit(`${label.toLowerCase()}: ${next === '' ? 'none' : next}`, (before) =>
      setField(before, path, next === '' ? undefined : next),
    );
  };
  return (
    <span className="choice text-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type={control.as === 'date' ? 'date' : 'text'}
        value={draft ?? text}
        placeholder="none"
        maxLength={control.as === 'text' ? control.most : undefined}
        data-settled={draft === undefined}
        onChange={({ target }) => setDraft(target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') setDraft(undefined);
        }}
      />
    </span>
  );
}

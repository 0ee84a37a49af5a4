/** Places of the drawing typed as a list: "12.5 40; 300 40". In the drawing's own unit, as it stands in the job. */
import { useId, useState } from 'react';
import { readPlaces } from '#app/state/read-places.ts';
import { useWorkbench } from '#app/views/workbench-context.ts';
import { type FieldPath, fieldIn, setField } from '#job/fields/edit-field.ts';
import type { JobFile } from '#job/job-file.ts';

interface PlacesFieldProps {
  readonly label: string;
  readonly path: FieldPath;
  readonly job: JobFile;
}

export function PlacesField({ label, path, job }: PlacesFieldProps) {
  const { actions } = useWorkbench();
  const id = useId();
  const given = fieldIn(job, path);
  const text = Array.isArray(given) ? given.map((place: number[]) => place.join(' ')).join('; ') : '';
  const [draft, setDraft] = useState<string>();
  const [isRefused, setRefused] = useState(false);
  const take = () => {
    if (draft === undefined || draft === text) return setDraft(undefined);
    const places = readPlaces(draft);
    setRefused(places === undefined);
    if (places === undefined) return;
    setDraft(undefined);
    actions.edit(label.toLowerCase(), (before) =>
      setField(before, path, places.length === 0 ? undefined : places),
    );
  };
  return (
    <span className="choice text-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={draft ?? text}
        placeholder="as usual"
        aria-invalid={isRefused}
        data-settled={draft === undefined}
        onChange={({ target }) => setDraft(target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') setDraft(undefined);
        }}
      />
      {isRefused && (
        <span className="refused" role="alert">
          Places as “x y; x y”, in the drawing’s unit.
        </span>
      )}
    </span>
  );
}

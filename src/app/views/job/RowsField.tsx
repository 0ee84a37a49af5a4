/** Rows of figures typed as a list, "12.5 40; 300 40", as they stand in the job: places, factors by depth, readings at places. */
import { useId, useState } from 'react';
import { readRows } from '#app/state/edits/read-rows.ts';

interface RowsFieldProps {
  readonly label: string;
  readonly rows: readonly (readonly number[])[];
  /** What stands in a row, such as `['x', 'y']`. */
  readonly columns: readonly string[];
  /** Where just so many rows can be taken. */
  readonly count?: number;
  readonly onTake: (rows: number[][]) => void;
}

export function RowsField({ label, rows, columns, count, onTake }: RowsFieldProps) {
  const id = useId();
  const text = rows.map((row) => row.join(' ')).join('; ');
  const [draft, setDraft] = useState<string>();
  const [isRefused, setRefused] = useState(false);
  const take = () => {
    if (draft === undefined || draft === text) return setDraft(undefined);
    const read = readRows(draft, columns.length);
    const isTaken = read !== undefined && (count === undefined || read.length === count);
    setRefused(!isTaken);
    if (!isTaken) return;
    setDraft(undefined);
    onTake(read);
  };
  const row = columns.join(' ');
  return (
    <span className="choice text-field">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        value={draft ?? text}
        placeholder={count === 1 ? row : `${row}; …`}
        aria-invalid={isRefused}
        data-settled={draft === undefined}
        onChange={({ target }) => setDraft(target.value)}
        onBlur={take}
        onKeyDown={(event) => {
          if (event.key === 'Enter') take();
          if (event.key === 'Escape') {
            setDraft(undefined);
            setRefused(false);
          }
        }}
      />
      {isRefused && (
        <span className="refused" role="alert">
          {count === 1 ? `Figures as “${row}”.` : `Rows of figures as “${row}; ${row}”.`}
        </span>
      )}
    </span>
  );
}

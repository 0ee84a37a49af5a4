/** One of a few things, chosen in place. */
import { type ReactNode, useId } from 'react';

interface ChoiceFieldProps {
  readonly label: string;
  readonly value: string;
  readonly onTake: (value: string) => void;
  /** The options. */
  readonly children: ReactNode;
}

export function ChoiceField({ label, value, onTake, children }: ChoiceFieldProps) {
  const id = useId();
  return (
    <span className={value === '' ? 'choice usual' : 'choice'}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={({ target }) => onTake(target.value)}>
        {children}
      </select>
    </span>
  );
}

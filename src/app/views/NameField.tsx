/** A name edited in place: Enter or leaving the field takes it, Escape gives it up. */
import { useRef } from 'react';

interface NameFieldProps {
  readonly label: string;
  readonly name: string;
  readonly isFixed?: boolean;
  /** Shown as a field also while nobody is in it. */
  readonly isMarked?: boolean;
  readonly onTake: (name: string) => void;
}

export function NameField({ label, name, isFixed = false, isMarked = false, onTake }: NameFieldProps) {
  const leaving = useRef(false);
  return (
    <input
      key={name}
      className={isMarked ? 'name-field marked' : 'name-field'}
      aria-label={label}
      defaultValue={name}
      disabled={isFixed}
      size={Math.max(isMarked ? 6 : 12, name.length)}
      onBlur={({ currentTarget }) => {
        if (leaving.current) currentTarget.value = name;
        else if (currentTarget.value !== name) onTake(currentTarget.value);
        leaving.current = false;
      }}
      onKeyDown={(event) => {
        leaving.current = event.key === 'Escape';
        if (event.key === 'Enter' || event.key === 'Escape') event.currentTarget.blur();
      }}
    />
  );
}

/** A figure edited in place: Enter or leaving the field accepts it, Escape cancels, and what is no figure is reported in place. */
import { type KeyboardEvent, useId, useRef, useState } from 'react';
import { type FigureSource, SourceMark } from './SourceMark.tsx';

interface QuantityFieldProps {
  readonly label: string;
  /** The figure on show; empty where several things differ. */
  readonly text: string;
  readonly suffix: string;
  /** Undefined when the text can't be taken. */
  readonly read: (text: string) => number | undefined;
  readonly onTake: (value: number) => void;
  /** A field that is emptied gives its figure back to whatever else would give one. */
  readonly onClear?: (() => void) | undefined;
  /** What would be accepted, shown when something else was typed. */
  readonly expected: string;
  readonly placeholder?: string;
  /** Where the figure comes from that counts. */
  readonly source?: FigureSource | undefined;
  /** Lets others move the caret here: typing a figure on the sheet does. */
  readonly inputRef?: (input: HTMLInputElement | null) => void;
}

export function QuantityField(props: QuantityFieldProps) {
  const { label, text, suffix, read, onTake, onClear, expected, placeholder, source, inputRef } = props;
  const [draft, setDraft] = useState<string>();
  const [isRefused, setRefused] = useState(false);
  const leaving = useRef(false);
  const id = useId();

  const giveUp = () => {
    setDraft(undefined);
    setRefused(false);
  };
  const take = () => {
    if (draft === undefined || draft.trim() === text) return giveUp();
    if (draft.trim() === '' && onClear !== undefined) {
      giveUp();
      return onClear();
    }
    const value = read(draft);
    if (value === undefined) return setRefused(true);
    giveUp();
    onTake(value);
  };
  const onKeyDown = (event: KeyboardEvent<HTMLInputElement>) => {
    if (event.key === 'Enter') take();
    if (event.key === 'Escape') {
      giveUp();
      leaving.current = true;
      event.currentTarget.blur();
    }
  };
  const onBlur = () => {
    if (!leaving.current) take();
    leaving.current = false;
  };
  return (
    <span className="quantity">
      <span className="quantity-name">
        <label htmlFor={id}>{label}</label>
        {source !== undefined && <SourceMark {...source} />}
      </span>
      <span className="quantity-box">
        <input
          id={id}
          ref={inputRef}
          inputMode="decimal"
          autoComplete="off"
          value={draft ?? text}
          placeholder={placeholder}
          size={Math.max(5, (draft ?? text).length)}
          data-settled={draft === undefined}
          aria-invalid={isRefused}
          aria-describedby={isRefused ? `${id}-refused` : undefined}
          onChange={(event) => setDraft(event.target.value)}
          onKeyDown={onKeyDown}
          onBlur={onBlur}
        />
        <span className="suffix">{suffix}</span>
      </span>
      {isRefused && (
        <span id={`${id}-refused`} className="refused" role="alert">
          {expected}
        </span>
      )}
    </span>
  );
}

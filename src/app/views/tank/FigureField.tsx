/** The figure that was read, large, wearing its unit; typed, or put together on the keypad. */
import { useId } from 'react';
import { Segments } from '#app/views/controls/Segments.tsx';
import type { ShownUnit } from '#units/show-length.ts';

interface FigureFieldProps {
  readonly label: string;
  /** When it was read. */
  readonly after: string;
  readonly figure: string;
  readonly unit: ShownUnit;
  readonly onFigure: (text: string) => void;
  readonly setUnit: (unit: ShownUnit) => void;
  readonly onEnter: () => void;
}

const UNITS = [
  { value: 'mm', words: 'mm' },
  { value: 'in', words: 'in' },
] as const;

export function FigureField(props: FigureFieldProps) {
  const { label, after, figure, unit, onFigure, setUnit, onEnter } = props;
  const id = useId();
  const type = (text: string) => {
    // A figure may carry its unit: 0.0925in, 2.35 mm.
    const [, bare = text, said] = /^(.*?)\s*(mm|in|")$/i.exec(text) ?? [];
    if (said !== undefined) setUnit(said.toLowerCase() === 'mm' ? 'mm' : 'in');
    onFigure(bare.replaceAll(/[^\d.,min"\s]/gi, ''));
  };
  return (
    <div className="figure-field">
      <label htmlFor={id}>
        <strong>{label}</strong>, {after}
      </label>
      <div className="figure-box">
        <input
          id={id}
          // The keypad is on the page; that of the tablet would lie over it.
          inputMode="none"
          autoComplete="off"
          placeholder="0.00"
          value={figure}
          onChange={({ target }) => type(target.value)}
          onKeyDown={({ key }) => key === 'Enter' && onEnter()}
        />
        <Segments
          label="Unit of the reading"
          className="units"
          options={UNITS}
          value={unit}
          onTake={(taken) => {
            setUnit(taken);
            onFigure(figure);
          }}
        />
      </div>
    </div>
  );
}

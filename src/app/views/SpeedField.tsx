/** A length a minute of the job, in the unit on show, within the limits of its declaration. */
import { assert } from '#geometry/assert.ts';
import type { Part } from '#job/fields/field.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { readLength } from '#units/read-length.ts';
import { QuantityField } from './QuantityField.tsx';
import type { FigureSource } from './SourceMark.tsx';
import { useWorkbenchState } from './workbench-context.ts';

interface SpeedFieldProps {
  readonly of: Part;
  /** mm/min; undefined where it is not set. */
  readonly speed: number | undefined;
  /** What applies while nothing is set, mm/min. */
  readonly usual?: number | undefined;
  readonly source?: FigureSource | undefined;
  /** What would be accepted, shown when something else was typed. */
  readonly expected: string;
  /** mm/min, and as shown. */
  readonly onTake: (speed: number, shown: string) => void;
  readonly onClear: () => void;
}

export function SpeedField({ of, speed, usual, source, expected, onTake, onClear }: SpeedFieldProps) {
  const unit = useWorkbenchState((state) => state.session.unit);
  const { control, label } = of;
  assert(control.as === 'speed', `${label} is declared as a speed`);
  const { least, most, digits } = control;
  const figure = (value: number) => String(Number((value / millimetresIn(unit)).toPrecision(digits)));
  const read = (text: string) => {
    const value = readLength(text, unit);
    return value === undefined || value < least || value > most ? undefined : value;
  };
  return (
    <QuantityField
      label={label}
      text={speed === undefined ? '' : figure(speed)}
      placeholder={usual === undefined ? 'none' : figure(usual)}
      suffix={`${unit}/min`}
      read={read}
      expected={expected}
      onTake={(value) => onTake(value, figure(value))}
      onClear={onClear}
      source={source}
    />
  );
}

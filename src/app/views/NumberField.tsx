/** A figure of the job in a unit of its own, within the limits of its declaration. */
import { SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import { assert } from '#geometry/assert.ts';
import type { NumberControl, Part } from '#job/fields/field.ts';
import { readFigure } from '#units/read-figure.ts';
import { QuantityField } from './QuantityField.tsx';
import type { FigureSource } from './SourceMark.tsx';

interface NumberFieldProps {
  /** The field, or the figure in one, as declared. */
  readonly of: Part;
  /** In place of its own name. */
  readonly label?: string;
  /** As the job holds it; undefined where it is not set. */
  readonly value: number | undefined;
  /** What applies while nothing is set; words where that is no figure. */
  readonly usual?: number | string | undefined;
  /** Its unit is chosen beside it. */
  readonly hasUnitBeside?: boolean;
  readonly source?: FigureSource | undefined;
  readonly onTake: (value: number, shown: string) => void;
  readonly onClear?: (() => void) | undefined;
}

export function NumberField({ of, value, usual, onTake, onClear, ...shown }: NumberFieldProps) {
  const { label = of.label, hasUnitBeside = false } = shown;
  const { control } = of;
  assert(control.as === 'number', `${label} is declared as a number`);
  const { unit, times } = control;
  const figure = (held: number) => String(Number((held * times).toPrecision(10)));
  return (
    <QuantityField
      label={label}
      text={value === undefined ? '' : figure(value)}
      placeholder={typeof usual === 'number' ? figure(usual) : (usual ?? 'none')}
      suffix={hasUnitBeside ? '' : unit}
      read={(text) => inside(readFigure(text), control)}
      expected={expectedOf(control)}
      onTake={(typed) => onTake(typed / times, `${typed} ${unit}`.trim())}
      onClear={onClear}
      source={shown.source}
    />
  );
}

function inside(value: number | undefined, control: NumberControl): number | undefined {
  const { least, most, isClosed, isWhole = false } = control;
  if (value === undefined || value < least || (isWhole && !Number.isInteger(value))) return undefined;
  return value < most || (isClosed && value === most) ? value : undefined;
}

function expectedOf({ unit, least, most, isClosed, isWhole = false }: NumberControl): string {
  const from = least === SMALLEST_POSITIVE ? 'above 0, ' : `from ${least} `;
  return (
    `A ${isWhole ? 'whole number' : 'figure'} ${from}to ${isClosed ? '' : 'under '}${most} ${unit}`.trim() +
    '.'
  );
}

/** A length of the job edited in the unit on show, within the limits of its declaration. */
import type { Limits, Part } from '#job/fields/field.ts';
import { SAME_LEVEL } from '#units/depth-tolerances.ts';
import { readSum } from '#units/read-sum.ts';
import { lengthFigure } from '#units/show-length.ts';
import { lengthLimits } from './length-limits.ts';
import { QuantityField } from './QuantityField.tsx';
import type { FigureSource } from './SourceMark.tsx';
import { useWorkbenchState } from './workbench-context.ts';

interface LengthFieldProps {
  /** The field, or the figure in one, as declared. */
  readonly of: Part;
  /** In place of its own name, where several stand together: `Level 2`. */
  readonly label?: string;
  /** Nearer than declared, where other figures leave less, mm. */
  readonly within?: Partial<Limits>;
  /** It must leave something of this, mm: of the sheet. */
  readonly under?: number;
  /** mm; undefined where several values differ, or none is set. */
  readonly length: number | undefined;
  readonly onTake: (length: number) => void;
  /** What applies while nothing is set, mm. */
  readonly usual?: number | undefined;
  readonly onClear?: (() => void) | undefined;
  readonly placeholder?: string;
  /** Read by a micrometer: shown with a place more. */
  readonly isFine?: boolean;
  readonly source?: FigureSource | undefined;
  readonly inputRef?: (input: HTMLInputElement | null) => void;
}

export function LengthField(props: LengthFieldProps) {
  const { of, length, onTake, usual, onClear, inputRef, under = Infinity } = props;
  const { least, most } = lengthLimits(of, props.within);
  const unit = useWorkbenchState((state) => state.session.unit);
  const figure = (value: number) => lengthFigure(value, unit, props.isFine === true ? 1 : 0);
  const read = (text: string) => {
    const value = readSum(text, unit);
    if (value === undefined || value < least || value > most) return undefined;
    return value > under - SAME_LEVEL ? undefined : value;
  };
  const range = `from ${figure(least)} ${under > most ? `to ${figure(most)}` : `to less than the sheet’s ${figure(under)}`} ${unit}`;
  const otherwise = usual === undefined ? (props.placeholder ?? 'mixed') : figure(usual);
  return (
    <QuantityField
      label={props.label ?? of.label}
      text={length === undefined ? '' : figure(length)}
      placeholder={length === undefined ? otherwise : ''}
      suffix={unit}
      read={read}
      onTake={onTake}
      source={props.source}
      onClear={length === undefined ? undefined : onClear}
      expected={`A length ${range}: 2.2, 2,2, 0.087in, 3/32 in or 3.2 - 0.9.`}
      {...(inputRef === undefined ? {} : { inputRef })}
    />
  );
}

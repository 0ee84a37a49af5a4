/** A length edited in the unit on show. */
import { readSum } from '#units/read-sum.ts';
import { lengthFigure } from '#units/show-length.ts';
import { QuantityField } from './QuantityField.tsx';
import { useWorkbenchState } from './workbench-context.ts';

interface LengthFieldProps {
  readonly label: string;
  /** mm; undefined where several values differ, or none is set. */
  readonly length: number | undefined;
  readonly onTake: (length: number) => void;
  /** Least and most that can be taken, mm. */
  readonly least: number;
  readonly most?: number;
  /** What applies while nothing is set, mm. */
  readonly usual?: number | undefined;
  readonly onClear?: (() => void) | undefined;
  readonly placeholder?: string;
  /** Read by a micrometer: shown with a place more. */
  readonly isFine?: boolean;
  readonly inputRef?: (input: HTMLInputElement | null) => void;
}

export function LengthField(props: LengthFieldProps) {
  const { label, length, onTake, least, most = Number.POSITIVE_INFINITY, usual, onClear, inputRef } = props;
  const unit = useWorkbenchState((state) => state.session.unit);
  const figure = (value: number) => lengthFigure(value, unit, props.isFine === true ? 1 : 0);
  const read = (text: string) => {
    const value = readSum(text, unit);
    return value === undefined || value < least || value > most ? undefined : value;
  };
  const limits = Number.isFinite(most)
    ? `from ${figure(least)} to ${figure(most)} ${unit}`
    : `of ${figure(least)} ${unit} or more`;
  const otherwise = usual === undefined ? (props.placeholder ?? 'mixed') : figure(usual);
  return (
    <QuantityField
      label={label}
      text={length === undefined ? '' : figure(length)}
      placeholder={length === undefined ? otherwise : ''}
      suffix={unit}
      read={read}
      onTake={onTake}
      onClear={length === undefined ? undefined : onClear}
      expected={`A length ${limits}: 2.2, 2,2, 0.087in, 3/32 in or 3.2 - 0.9.`}
      {...(inputRef === undefined ? {} : { inputRef })}
    />
  );
}

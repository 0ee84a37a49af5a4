/** A length edited in the unit on show. */
import { readLength } from '#units/read-length.ts';
import { lengthFigure } from '#units/show-length.ts';
import { QuantityField } from './QuantityField.tsx';
import { useBench } from './workbench-context.ts';

interface LengthFieldProps {
  readonly label: string;
  /** mm; undefined where several things differ, or nothing is said. */
  readonly length: number | undefined;
  readonly onTake: (length: number) => void;
  /** Least and most that can be taken, mm. */
  readonly least: number;
  readonly most?: number;
  /** What counts while nothing is said, mm. */
  readonly usual?: number | undefined;
  readonly onClear?: (() => void) | undefined;
  readonly placeholder?: string;
  readonly inputRef?: (input: HTMLInputElement | null) => void;
}

export function LengthField(props: LengthFieldProps) {
  const { label, length, onTake, least, most = Number.POSITIVE_INFINITY, usual, onClear, inputRef } = props;
  const unit = useBench((state) => state.session.unit);
  const read = (text: string) => {
    const value = readLength(text, unit);
    return value === undefined || value < least || value > most ? undefined : value;
  };
  const limits = Number.isFinite(most)
    ? `from ${lengthFigure(least, unit)} to ${lengthFigure(most, unit)} ${unit}`
    : `of ${lengthFigure(least, unit)} ${unit} or more`;
  const otherwise = usual === undefined ? (props.placeholder ?? 'mixed') : lengthFigure(usual, unit);
  return (
    <QuantityField
      label={label}
      text={length === undefined ? '' : lengthFigure(length, unit)}
      placeholder={length === undefined ? otherwise : ''}
      suffix={unit}
      read={read}
      onTake={onTake}
      onClear={length === undefined ? undefined : onClear}
      expected={`A length ${limits}: 2.2, 2,2, 0.087in or 3/32 in.`}
      {...(inputRef === undefined ? {} : { inputRef })}
    />
  );
}

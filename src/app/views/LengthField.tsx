/** A length edited in the unit on show. */
import { readLength } from '#units/read-length.ts';
import { lengthFigure } from '#units/show-length.ts';
import { QuantityField } from './QuantityField.tsx';
import { useBench } from './workbench-context.ts';

interface LengthFieldProps {
  readonly label: string;
  /** mm; undefined where several things differ. */
  readonly length: number | undefined;
  readonly onTake: (length: number) => void;
  /** Least and most that can be taken, mm. */
  readonly least: number;
  readonly most: number;
  readonly inputRef?: (input: HTMLInputElement | null) => void;
}

export function LengthField({ label, length, onTake, least, most, inputRef }: LengthFieldProps) {
  const unit = useBench((state) => state.session.unit);
  const read = (text: string) => {
    const value = readLength(text, unit);
    return value === undefined || value < least || value > most ? undefined : value;
  };
  const limits = Number.isFinite(most)
    ? `from ${lengthFigure(least, unit)} to ${lengthFigure(most, unit)} ${unit}`
    : `of ${lengthFigure(least, unit)} ${unit} or more`;
  return (
    <QuantityField
      label={label}
      text={length === undefined ? '' : lengthFigure(length, unit)}
      placeholder={length === undefined ? 'mixed' : ''}
      suffix={unit}
      read={read}
      onTake={onTake}
      expected={`A length ${limits}: 2.2, 2,2, 0.087in or 3/32 in.`}
      {...(inputRef === undefined ? {} : { inputRef })}
    />
  );
}

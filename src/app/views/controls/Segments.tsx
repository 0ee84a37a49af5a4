/** One of two or three things side by side: a choice that shows all of itself. */
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';

interface SegmentsProps<Value extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: Value; readonly words: string }[];
  readonly value: Value | undefined;
  readonly onTake: (value: Value) => void;
  readonly className?: string;
}

export function Segments<Value extends string>(props: SegmentsProps<Value>) {
  const { label, options, value, onTake, className = '' } = props;
  return (
    <ToggleButtonGroup
      aria-label={label}
      className={`segments ${className}`}
      selectionMode="single"
      disallowEmptySelection
      selectedKeys={value === undefined ? [] : [value]}
      onSelectionChange={(keys) => {
        const taken = options.find((option) => keys.has(option.value));
        if (taken !== undefined) onTake(taken.value);
      }}
    >
      {options.map((option) => (
        <ToggleButton key={option.value} id={option.value} className="segment">
          {option.words}
        </ToggleButton>
      ))}
    </ToggleButtonGroup>
  );
}

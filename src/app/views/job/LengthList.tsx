/** Several lengths, each edited in place, with a field that adds one. */
import { LengthField } from '#app/views/LengthField.tsx';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { Limits, Part } from '#job/fields/field.ts';
import { showLength } from '#units/show-length.ts';

interface LengthListProps {
  /** What one of them is called. */
  readonly of: Part;
  /** mm */
  readonly lengths: readonly number[];
  /** Nearer than declared, mm. */
  readonly within: Partial<Limits>;
  readonly onTake: (lengths: readonly number[], what: string) => void;
}

export function LengthList({ of, lengths, within, onTake }: LengthListProps) {
  const { label } = of;
  const unit = useWorkbenchState((state) => state.session.unit);
  const words = (length: number) => `${label.toLowerCase()} ${showLength(length, unit)}`;
  return (
    <ul className="length-list" aria-label={`${label}s`}>
      {lengths.map((length, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two lengths may be equal, and only their order distinguishes them
        <li key={`${index} ${length}`}>
          <LengthField
            label={`${label} ${index + 1}`}
            {...{ of, length, within }}
            onTake={(to) => onTake(lengths.with(index, to), words(to))}
          />
          <button type="button" onClick={() => onTake(lengths.toSpliced(index, 1), `no ${words(length)}`)}>
            take out<span className="unseen"> {words(length)}</span>
          </button>
        </li>
      ))}
      <li>
        <LengthField
          label={`Another ${label.toLowerCase()}`}
          length={undefined}
          placeholder=""
          {...{ of, within }}
          onTake={(length) => onTake([...lengths, length], words(length))}
        />
      </li>
    </ul>
  );
}

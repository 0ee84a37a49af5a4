/** Digits large enough for a glove. */
import { Delete } from 'lucide-react';

const KEYS = ['7', '8', '9', '4', '5', '6', '1', '2', '3', '.', '0'] as const;

export function Keypad({ onKey }: { readonly onKey: (key: string) => void }) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: a keypad is no set of fields
    <div className="keypad" role="group" aria-label="Keypad">
      {KEYS.map((key) => (
        <button
          key={key}
          type="button"
          aria-label={key === '.' ? 'Decimal point' : key}
          onClick={() => onKey(key)}
        >
          {key}
        </button>
      ))}
      <button type="button" aria-label="Delete the last digit" onClick={() => onKey('back')}>
        <Delete size={28} aria-hidden="true" />
      </button>
    </div>
  );
}

/** The reason for what is answered, typed or one of the usual. */
import { type FormEvent, useEffect, useRef, useState } from 'react';

interface ReasonFormProps {
  readonly label: string;
  readonly usual: readonly string[];
  readonly action: string;
  readonly onTake: (reason: string) => void;
  readonly onClose: () => void;
}

export function ReasonForm({ label, usual, action, onTake, onClose }: ReasonFormProps) {
  const [reason, setReason] = useState('');
  const form = useRef<HTMLFormElement>(null);
  // All of it, not only the field that takes the focus.
  useEffect(() => void form.current?.scrollIntoView({ block: 'nearest' }), []);
  const take = (event: FormEvent) => {
    event.preventDefault();
    if (reason.trim() !== '') onTake(reason.trim());
  };
  return (
    <form className="reason" ref={form} onSubmit={take}>
      <label>
        {label}
        {/* biome-ignore lint/a11y/noAutofocus: it takes the place of the button that was pressed */}
        <input autoFocus maxLength={120} value={reason} onChange={({ target }) => setReason(target.value)} />
      </label>
      <div className="usual">
        {usual.map((each) => (
          <button key={each} type="button" onClick={() => setReason(each)}>
            {each}
          </button>
        ))}
      </div>
      <div className="buttons">
        <button type="submit" className="main" disabled={reason.trim() === ''}>
          {action}
        </button>
        <button type="button" onClick={onClose}>
          Cancel
        </button>
      </div>
    </form>
  );
}

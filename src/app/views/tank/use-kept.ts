/** A value kept in the browser under a name, so that a tablet put down, or a page closed, loses nothing. */
import { useCallback, useState } from 'react';

export function useKept<Value>(name: string, empty: Value): readonly [Value, (next: Value) => void] {
  const [value, setValue] = useState<Value>(() => kept(name) ?? empty);
  const keep = useCallback(
    (next: Value) => {
      setValue(next);
      localStorage.setItem(name, JSON.stringify(next));
    },
    [name],
  );
  return [value, keep];
}

/** What is not as it was written counts as nothing. */
function kept<Value>(name: string): Value | undefined {
  const text = localStorage.getItem(name);
  try {
    return text === null ? undefined : (JSON.parse(text) as Value);
  } catch {
    return undefined;
  }
}

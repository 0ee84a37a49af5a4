import { type RefObject, useEffect, useRef } from 'react';

/** Scrolls an element back to its top whenever what it shows is another. */
export function useTopAt(shown: number): RefObject<HTMLDivElement | null> {
  const element = useRef<HTMLDivElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: it is what is shown that asks for it
  useEffect(() => void element.current?.scrollTo({ top: 0 }), [shown]);
  return element;
}

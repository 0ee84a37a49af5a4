/** Short words of what was done, shown for a few seconds: one at a time, with a way back where there is one. */
import { createContext, useContext } from 'react';
import { UNSTABLE_ToastQueue as ToastQueue } from 'react-aria-components';

export interface ToastWords {
  readonly text: string;
  readonly action?: { readonly name: string; readonly run: () => void };
}

/** ms: long enough to read, and to reach for the button. */
const STAYS = 6000;

export type Toasts = ToastQueue<ToastWords>;

export function startToasts(): Toasts {
  return new ToastQueue<ToastWords>({ maxVisibleToasts: 1 });
}

/** A new toast replaces the previous one. */
export function sayToast(toasts: Toasts, words: ToastWords): void {
  toasts.clear();
  toasts.add(words, { timeout: STAYS });
}

export const ToastContext = createContext<Toasts | undefined>(undefined);

export function useToast(): (text: string) => void {
  const toasts = useContext(ToastContext);
  return (text) => {
    if (toasts !== undefined) sayToast(toasts, { text });
  };
}

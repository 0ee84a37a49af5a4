/** Whether the person's system asks for a dark page. */
import { useSyncExternalStore } from 'react';

const QUERY = '(prefers-color-scheme: dark)';

export function usePrefersDark(): boolean {
  return useSyncExternalStore(subscribe, () => matchMedia(QUERY).matches);
}

function subscribe(onChange: () => void): () => void {
  const media = matchMedia(QUERY);
  media.addEventListener('change', onChange);
  return () => media.removeEventListener('change', onChange);
}

/** Whether the page is dark: as the user chose, else as the system asks. */
import { useSyncExternalStore } from 'react';
import { useLayout } from './workbench-context.ts';

const QUERY = '(prefers-color-scheme: dark)';

export function usePrefersDark(): boolean {
  const theme = useLayout((state) => state.theme);
  const isSystemDark = useSyncExternalStore(subscribe, () => matchMedia(QUERY).matches);
  return theme === 'system' ? isSystemDark : theme === 'dark';
}

function subscribe(onChange: () => void): () => void {
  const media = matchMedia(QUERY);
  media.addEventListener('change', onChange);
  return () => media.removeEventListener('change', onChange);
}

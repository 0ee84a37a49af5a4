/** The window, as what it is for just now, with what lies over each of them. */
import { useEffect, useState } from 'react';
import { ToastLine } from './controls/ToastLine.tsx';
import { startToasts, ToastContext } from './controls/toasts.ts';
import { CommandPalette } from './palette/CommandPalette.tsx';
import { ReviewView } from './review/ReviewView.tsx';
import { TankView } from './tank/TankView.tsx';
import { WorkbenchView } from './WorkbenchView.tsx';
import { useMode } from './workbench-context.ts';

export function ModeView() {
  const mode = useMode((state) => state.mode);
  const [toasts] = useState(startToasts);
  // What was done in one mode can be taken back in it alone.
  useEffect(() => {
    if (mode !== 'planning') toasts.clear();
  }, [mode, toasts]);
  if (mode === 'tank') return <TankView />;
  return (
    <ToastContext value={toasts}>
      {mode === 'review' ? <ReviewView /> : <WorkbenchView />}
      {mode === 'planning' && <CommandPalette />}
      <ToastLine />
    </ToastContext>
  );
}

/** The window, as what it is for just now. */
import { ReviewView } from './review/ReviewView.tsx';
import { TankView } from './tank/TankView.tsx';
import { WorkbenchView } from './WorkbenchView.tsx';
import { useMode } from './workbench-context.ts';

export function ModeView() {
  const mode = useMode((state) => state.mode);
  if (mode === 'review') return <ReviewView />;
  if (mode === 'tank') return <TankView />;
  return <WorkbenchView />;
}

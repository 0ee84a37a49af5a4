/** The window, as what it is for just now. */
import { ReviewView } from './review/ReviewView.tsx';
import { TankView } from './tank/TankView.tsx';
import { WorkbenchView } from './WorkbenchView.tsx';
import { useDesk } from './workbench-context.ts';

export function DeskView() {
  const desk = useDesk((state) => state.desk);
  if (desk === 'review') return <ReviewView />;
  if (desk === 'tank') return <TankView />;
  return <WorkbenchView />;
}

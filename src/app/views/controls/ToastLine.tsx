/** Where toasts are shown, above the foot; a step of the job that was made, undone or redone is reported on its own. */
import { X } from 'lucide-react';
import { useContext, useEffect } from 'react';
import {
  Button,
  Text,
  UNSTABLE_Toast as Toast,
  UNSTABLE_ToastContent as ToastContent,
  UNSTABLE_ToastRegion as ToastRegion,
} from 'react-aria-components';
import { stepNotice } from '#app/state/edits/step-notice.ts';
import { useLayout, useWorkbench } from '#app/views/workbench-context.ts';
import { IconButton } from './IconButton.tsx';
import { sayToast, ToastContext } from './toasts.ts';

/** px: the strip under the sheet, and a gap. */
const OVER_FOOT = 44;

export function ToastLine() {
  const { store, actions } = useWorkbench();
  const toasts = useContext(ToastContext);
  useEffect(() => {
    if (toasts === undefined) return undefined;
    return store.subscribe((now, before) => {
      const notice = stepNotice(before, now);
      if (notice === undefined) return;
      const action = { name: notice.back === 'undo' ? 'Undo' : 'Redo', run: actions[notice.back] };
      sayToast(toasts, { text: notice.text, action });
    });
  }, [store, actions, toasts]);
  const foot = useLayout((state) => state.footHeight);
  if (toasts === undefined) return null;
  return (
    <ToastRegion queue={toasts} className="toasts" style={{ bottom: foot + OVER_FOOT }}>
      {({ toast }) => {
        const { text, action } = toast.content;
        return (
          <Toast toast={toast} className="toast">
            <ToastContent role="status">
              <Text slot="title">{text}</Text>
            </ToastContent>
            {action !== undefined && (
              <Button
                onPress={() => {
                  action.run();
                }}
              >
                {action.name}
              </Button>
            )}
            <IconButton icon={X} name="Close" onPress={() => toasts.close(toast.key)} />
          </Toast>
        );
      }}
    </ToastRegion>
  );
}

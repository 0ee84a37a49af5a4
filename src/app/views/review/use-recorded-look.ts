/** Records that a stage was on show, and from which face: it counts as looked at then. */
import { useEffect } from 'react';
import { faceOnShow } from '#app/state/shown-face.ts';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';

export function useRecordedLook(stage: number | undefined): void {
  const { mode } = useWorkbench();
  const face = useWorkbenchState(faceOnShow);
  useEffect(() => {
    const { looks } = mode.getState();
    const isNew = !looks.some((look) => look.stage === stage && look.face === face);
    if (stage !== undefined && isNew) mode.setState({ looks: [...looks, { stage, face }] });
  }, [mode, stage, face]);
}

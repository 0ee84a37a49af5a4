/** Lines of the drawing that the sheet is drawn with: those of the face on show; without layers that are left out, once nothing is asked about them. */
import { useMemo } from 'react';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import { layerRole } from '#app/state/edits/edit-job.ts';
import { otherFace } from '#app/state/shown-face.ts';
import { useDocument, useWorkbenchState } from '#app/views/workbench-context.ts';

const NO_LINES: ScenePicture['lines'] = [];

export function useShownLines(): ScenePicture['lines'] {
  const { job, unsaid = [] } = useDocument() ?? {};
  const { plan, faces, lines } = useWorkbenchState((state) => state.derived.page) ?? {};
  const isAsked = unsaid.length > 0;
  return useMemo(() => {
    if (lines === undefined || job === undefined) return NO_LINES;
    const { layers } = otherFace({ plan, faces });
    const isLeftOut = (layer: string) => !isAsked && layerRole(job, layer) === 'ignore';
    return lines.filter(({ layer }) => !layers.has(layer) && !isLeftOut(layer));
  }, [plan, faces, lines, job, isAsked]);
}

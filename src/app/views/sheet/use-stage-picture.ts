/** The sheet as it is at the start of one stage, with the lines of that stage alone: what a reviewer signs and what is peeled at the tank. */
import { useMemo } from 'react';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import type { ShownStage } from '#job/formats/plan-file.ts';
import { useShownLines } from './use-shown-lines.ts';

interface StageShown extends Pick<ScenePicture, 'selection' | 'marked'> {
  readonly stage: ShownStage;
}

export function useStagePicture({ stage, selection, marked }: StageShown): ScenePicture {
  const isDark = usePrefersDark();
  const plan = useWorkbenchState((state) => state.derived.page?.plan);
  const lines = useShownLines();
  return useMemo<ScenePicture>(
    () => ({
      plan,
      lines,
      relief: undefined,
      selection,
      view: 'plan',
      exaggeration: 1,
      minute: stage.startMinute,
      onlyStage: stage.number,
      marked,
      isDark,
    }),
    [plan, lines, selection, stage, marked, isDark],
  );
}

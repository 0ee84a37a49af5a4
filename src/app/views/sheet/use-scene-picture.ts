/** What the canvas of the sheet shows, from the state of the workbench. */
import { useMemo } from 'react';
import type { ScenePicture } from '#app/scene/scene-picture.ts';
import { otherFace } from '#app/state/shown-face.ts';
import { heightFactor } from '#app/state/workbench-state.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { contourOfPath } from '#handoff/contour.ts';
import { useShownBands } from './use-shown-bands.ts';
import { useShownLines } from './use-shown-lines.ts';
import { useShownReturned } from './use-shown-returned.ts';

const NONE: readonly string[] = [];

export function useScenePicture(): { readonly picture: ScenePicture; readonly isBehind: boolean } {
  const isDark = usePrefersDark();
  const { view, reliefView, selection, minute, flight } = useWorkbenchState((state) => state.session);
  const exaggeration = useWorkbenchState(heightFactor);
  const lit = useWorkbenchState((state) => state.lit);
  const page = useWorkbenchState((state) => state.derived.page);
  const relief = useWorkbenchState((state) => state.derived.relief);
  const section = useWorkbenchState((state) => state.derived.section);
  const marked = useMemo(() => (flight?.outline ?? []).map(contourOfPath), [flight]);
  const solid = useMemo(
    () => relief?.mesh && { ...relief.mesh, colors: relief.of.stages.map(({ color }) => color) },
    [relief],
  );
  const isCut = view === 'relief' && reliefView === 'cut' && section?.of === relief?.of;
  const cut = useMemo(
    () => (isCut && section !== undefined ? { section: section.section, ...section.cut } : undefined),
    [isCut, section],
  );
  const { plan, faces } = page ?? {};
  const bands = useShownBands();
  const returned = useShownReturned()?.lines;
  const other = useMemo(() => otherFace({ plan, faces }), [plan, faces]);
  const lines = useShownLines();
  const picture = useMemo<ScenePicture>(
    () => ({
      plan,
      lines,
      behind: other.floors,
      bands,
      ...(returned && { returned }),
      relief: solid,
      cut,
      selection,
      lit: lit?.regions ?? NONE,
      view,
      exaggeration,
      minute,
      marked,
      isDark,
    }),
    [
      plan,
      lines,
      other,
      bands,
      returned,
      solid,
      cut,
      selection,
      lit,
      view,
      exaggeration,
      minute,
      marked,
      isDark,
    ],
  );
  const isBehind = view === 'relief' && (relief?.of !== page?.plan || relief?.minute !== minute);
  return { picture, isBehind };
}

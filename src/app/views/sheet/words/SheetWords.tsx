/** Words and shapes over the sheet: names and figures, findings, tags, and the drawing's own texts. */

import { useMemo } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import { cutLines, isPeeled } from '#app/scene/bath-minute.ts';
import type { Seen } from '#app/scene/pick-region.ts';
import { sceneTheme } from '#app/scene/scene-theme.ts';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { shownCut } from '#app/state/shown-cut.ts';
import { thicknessAbove } from '#app/state/shown-face.ts';
import { heightFactor } from '#app/state/workbench-state.ts';
import { SheetSurvey } from '#app/views/sheet/survey/SheetSurvey.tsx';
import { useShownReturned } from '#app/views/sheet/use-shown-returned.ts';
import { usePrefersDark } from '#app/views/use-prefers-dark.ts';
import type { Size } from '#app/views/use-size.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { sortFindings } from '#findings/finding.ts';
import { DrawnTexts } from './DrawnTexts.tsx';
import { SheetLabels } from './SheetLabels.tsx';
import { useEdgeWords } from './use-edge-words.ts';
import { useRegionFigure } from './use-region-figure.ts';
import { type RestingAsk, useSheetMarks } from './use-sheet-marks.ts';
import { useShownTexts } from './use-shown-texts.ts';
import { useTriedFigures } from './use-tried-figures.ts';

interface SheetWordsProps {
  readonly pose: StoreApi<ViewPose>;
  readonly size: Size | undefined;
  readonly showsTexts: boolean;
}

export function SheetWords({ pose, size, showsTexts }: SheetWordsProps) {
  const { view, reliefView, minute, showsSurvey } = useWorkbenchState((state) => state.session);
  const cut = useWorkbenchState(shownCut);
  const { page, shapes, section } = useWorkbenchState((state) => state.derived);
  const exaggeration = useWorkbenchState(heightFactor);
  const above = useWorkbenchState(thicknessAbove);
  const isDark = usePrefersDark();
  const figureOf = useRegionFigure();
  const edges = useEdgeWords();
  const returned = useShownReturned();
  const tried = useTriedFigures();
  const notes = useShownTexts(showsTexts, tried);
  const isCut = view === 'relief' && reliefView === 'cut';
  const open = isCut && section?.of === page?.plan ? section : undefined;
  const ask = useMemo((): RestingAsk | undefined => {
    const plan = page?.plan;
    const isRelief = view === 'relief';
    // From below the near face is not seen.
    const isHidden = isRelief && reliefView === 'below' && above === undefined;
    if (plan === undefined || size === undefined || isHidden) return undefined;
    const lined = cutLines(plan, minute).filter((stage) => isPeeled(stage, minute));
    return {
      plan,
      // Figures of the survey take their place.
      shapes: showsSurvey && !isRelief ? [] : shapes,
      findings: sortFindings([...(returned?.findings ?? []), ...(page?.findings ?? [])]),
      seen: { size, ...seenAs({ isRelief, exaggeration, cut: isCut ? cut : undefined, above }) },
      isRelief,
      cut: open?.cut ?? cut,
      section: open?.section,
      theme: sceneTheme(isDark),
      figureOf,
      lined,
      tried,
      texts: notes,
      isMasked: (stage) =>
        isRelief ? !isPeeled(stage, minute) : minute !== undefined && !lined.includes(stage),
      edges,
    };
  }, [
    page,
    shapes,
    open,
    isCut,
    size,
    view,
    reliefView,
    above,
    cut,
    minute,
    exaggeration,
    isDark,
    figureOf,
    edges,
    returned,
    tried,
    notes,
    showsSurvey,
  ]);
  const marks = useSheetMarks(pose, ask);
  return (
    <>
      <SheetSurvey pose={pose} size={size} />
      {view === 'plan' && <DrawnTexts notes={ask === undefined ? notes : marks.texts} {...{ pose, size }} />}
      <SheetLabels marks={marks} pose={pose} size={size} />
    </>
  );
}

interface Look {
  readonly isRelief: boolean;
  readonly exaggeration: number;
  readonly cut: Seen['cut'];
  readonly above: number | undefined;
}

function seenAs({ isRelief, exaggeration, cut, above }: Look): Omit<Seen, 'pose' | 'size'> {
  return {
    exaggeration: isRelief ? exaggeration : 0,
    ...(cut === undefined ? {} : { cut }),
    ...(above === undefined ? {} : { below: above * exaggeration }),
  };
}

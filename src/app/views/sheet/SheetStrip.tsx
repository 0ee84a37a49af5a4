/** The strip under the sheet: how it is looked at, its scale, what its figures mean, and the reading under the pointer. Nothing of it lies over the drawing. */

import type { RefObject } from 'react';
import type { StoreApi } from 'zustand/vanilla';
import type { ViewPose } from '#app/scene/view-pose.ts';
import { figureMeaning } from '#app/state/figure-meaning.ts';
import { budgetsOnShow } from '#app/state/shown-bands.ts';
import { surveyRange } from '#app/views/sheet/survey/SheetSurvey.tsx';
import { FigureWords } from '#app/views/sheet/words/FigureWords.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { FaceSwitch } from './FaceSwitch.tsx';
import { ReliefChoices } from './ReliefChoices.tsx';
import { ScaleBars } from './ScaleBars.tsx';

interface SheetStripProps {
  readonly pose: StoreApi<ViewPose>;
  readonly fitAll: () => void;
  readonly hover: RefObject<HTMLParagraphElement | null>;
  readonly hasTexts: boolean;
  readonly showsTexts: boolean;
  readonly onTexts: (shows: boolean) => void;
}

export function SheetStrip(props: SheetStripProps) {
  const { pose, fitAll, hover, hasTexts, showsTexts, onTexts } = props;
  const { actions } = useWorkbench();
  const view = useWorkbenchState((state) => state.session.view);
  const figures = useWorkbenchState(figureMeaning);
  const { showsBands, showsSurvey, unit } = useWorkbenchState((state) => state.session);
  const survey = useWorkbenchState(({ derived }) => derived.page?.results?.survey);
  const hasEdges = useWorkbenchState(({ derived }) => budgetsOnShow(derived.page).length > 0);
  return (
    <div className="sheet-strip">
      <fieldset className="switch">
        <legend className="unseen">View of the sheet</legend>
        {(['plan', 'relief'] as const).map((each) => (
          <label key={each}>
            <input type="radio" name="view" checked={view === each} onChange={() => actions.show(each)} />
            <span>{each === 'plan' ? 'Plan' : 'Relief'}</span>
          </label>
        ))}
      </fieldset>
      <FaceSwitch />
      <button
        type="button"
        className="fit"
        aria-label="whole part"
        title="Whole part (Home)"
        onClick={fitAll}
      >
        <svg width="16" height="16" aria-hidden="true">
          <path d="M2.5 5.5V2.5H5.5M10.5 2.5H13.5V5.5M13.5 10.5V13.5H10.5M5.5 13.5H2.5V10.5" />
        </svg>
      </button>
      {view === 'relief' && <ReliefChoices />}
      <ScaleBars pose={pose} />
      <span className="spring" />
      {view === 'plan' && survey !== undefined && (
        <label className="texts" title={`Survey of the sheet: ${surveyRange(survey, unit)}`}>
          <input
            type="checkbox"
            checked={showsSurvey}
            onChange={({ target }) => actions.showSurvey(target.checked)}
          />
          thickness
        </label>
      )}
      {view === 'plan' && hasEdges && (
        <label className="texts" title="Along each drawn edge, where it will land">
          <input
            type="checkbox"
            checked={showsBands}
            onChange={({ target }) => actions.showBands(target.checked)}
          />
          edges ±
        </label>
      )}
      {view === 'plan' && hasTexts && (
        <label className="texts" title="Texts of the drawing">
          <input type="checkbox" checked={showsTexts} onChange={({ target }) => onTexts(target.checked)} />
          texts
        </label>
      )}
      {view === 'plan' && (
        <button
          type="button"
          className="meaning"
          title="Show the other"
          onClick={() => actions.sayInRegions(figures === 'depth' ? 'left' : 'depth')}
        >
          <FigureWords />
        </button>
      )}
      <p className="hover-reading" ref={hover} />
    </div>
  );
}

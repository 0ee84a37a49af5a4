/** What the engineer looks at, and in which unit: nothing of it changes the job. */

import type { StoreApi } from 'zustand/vanilla';
import type { SheetSide } from '#job/job.ts';
import type { ShownUnit } from '#units/show-length.ts';
import { regionShapes } from './region-shape.ts';
import { runEnd } from './run-end.ts';
import { onFace, turnedTo } from './shown-face.ts';
import type {
  FigureMeaning,
  Flight,
  Lit,
  ReliefView,
  SectionHeight,
  SectionLine,
  Session,
  SheetView,
  WorkbenchState,
} from './workbench-state.ts';

export function lookActions(store: StoreApi<WorkbenchState>, look: (change: Partial<Session>) => void) {
  return {
    show: (view: SheetView) => look({ view }),
    readIn: (unit: ShownUnit) => look({ unit }),
    sayInRegions: (figures: FigureMeaning) => look({ figures }),
    tryFigures: (tried: Session['tried']) => look({ tried }),
    turnOver: (face: SheetSide) =>
      store.setState(({ session, derived }) => {
        const page = derived.page && onFace(derived.page, face);
        return {
          session: { ...session, ...turnedTo(face, session), selection: [] },
          derived: { ...derived, page, shapes: regionShapes(page?.plan?.regions ?? [], derived.shapes) },
        };
      }),
    exaggerate: (exaggeration: Session['exaggeration']) => look({ exaggeration }),
    fitHeight: (fittedHeight: number) => store.setState({ fittedHeight }),
    turnRelief: (reliefView: ReliefView) => look({ reliefView }),
    /** What is pointed at lights up in every view. */
    light: (lit: Lit | undefined) => store.setState({ lit }),
    flyTo: (flight: Flight) => look({ flight }),
    cutAlong: (cut: SectionLine) => look({ cut }),
    showSurvey: (showsSurvey: boolean) => look({ showsSurvey }),
    /** Along each drawn edge, where it will land. */
    showBands: (showsBands: boolean) => look({ showsBands }),
    pickEdge: (edge: number | undefined) => look({ edge }),
    drawHeights: (sectionHeight: SectionHeight) => look({ sectionHeight }),
    /** Past the last minute the end of the run is meant. */
    turnClock: (minute: number | undefined) => {
      const { plan } = store.getState().derived.page ?? {};
      const end = plan === undefined ? 0 : runEnd(plan);
      look({ minute: minute === undefined || minute >= end ? undefined : Math.max(0, minute) });
    },
    dismissNotice: () => look({ notice: undefined }),
    notify: (text: string) => look({ notice: { text, findings: [] } }),
  };
}

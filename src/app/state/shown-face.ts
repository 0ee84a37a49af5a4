/** Which face of the part is on show: the near one, as it is drawn, or the far one, turned over. */

import type { PlannedPage } from '#app/worker/planned-page.ts';
import type { Contour, ShownPlan } from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import { sheetThickness } from './sheet-thickness.ts';
import type { Session, WorkbenchState } from './workbench-state.ts';

/** The page with that face for its plan; a part that is etched on one face has no other. */
export function onFace(page: PlannedPage, face: SheetSide): PlannedPage {
  const { near, far } = page.faces ?? {};
  const plan = face === 'far' ? (far ?? near) : near;
  return plan === undefined || plan === page.plan ? page : { ...page, plan };
}

export function faceOnShow({
  derived: { page },
}: {
  readonly derived: Pick<WorkbenchState['derived'], 'page'>;
}): SheetSide {
  return page?.plan !== undefined && page.plan === page.faces?.far ? 'far' : 'near';
}

/** What is looked at once that face is on show: in the relief the far one is seen from below. */
export function turnedTo(
  face: SheetSide,
  { reliefView }: Pick<Session, 'reliefView'>,
): Pick<Session, 'face' | 'reliefView'> {
  if (face === 'far') return { face, reliefView: 'below' };
  return { face, reliefView: reliefView === 'below' ? 'drawn' : reliefView };
}

/** Thickness of the sheet, mm, where the relief is seen from below with the far face on show. */
export function thicknessAbove(state: WorkbenchState): number | undefined {
  const { view, reliefView } = state.session;
  const document = state.history?.present.document;
  if (view !== 'relief' || reliefView !== 'below' || document === undefined) return undefined;
  return faceOnShow(state) === 'far' ? sheetThickness(document.job) : undefined;
}

const NO_OTHER = { floors: [], layers: new Set<string>() };

/**
 * Of the face that is not on show: its regions, etched or not yet, without the land round all of them; and the layers that draw these and
 * nothing of the face on show.
 */
export function otherFace({
  plan,
  faces,
}: {
  readonly plan?: PlannedPage['plan'] | undefined;
  readonly faces?: PlannedPage['faces'] | undefined;
}): {
  readonly floors: readonly Contour[];
  readonly layers: ReadonlySet<string>;
} {
  const other = plan === faces?.far ? faces?.near : faces?.far;
  if (other === undefined) return NO_OTHER;
  const others = withoutLand(other);
  const own = new Set(withoutLand(plan).map(({ layer }) => layer));
  return {
    floors: others.flatMap(({ contours }) => contours),
    layers: new Set(others.map(({ layer }) => layer).filter((layer) => !own.has(layer))),
  };
}

function withoutLand(plan: ShownPlan | undefined): ShownPlan['regions'] {
  const land = plan?.regions.filter(({ level }) => level === 0).sort((a, b) => b.area - a.area)[0];
  return plan?.regions.filter((region) => region !== land) ?? [];
}

/** Whether anything is etched on the face that is not on show. */
export function isBehindEtched({ derived: { page } }: Pick<WorkbenchState, 'derived'>): boolean {
  const other = page?.plan === page?.faces?.far ? page?.faces?.near : page?.faces?.far;
  return other?.regions.some(({ level }) => level > 0) === true;
}

export function hasFarFace({ derived: { page } }: Pick<WorkbenchState, 'derived'>): boolean {
  return page?.faces?.far !== undefined;
}

/**
 * The section line as it lies over the sheet. A part that has no plan yet has none: the line is that of the part before. Nor has one
 * about which questions are open: nothing is etched of it yet, and what the answers would give needs the room.
 */
import type { SectionLine, WorkbenchState } from './workbench-state.ts';

export function shownCut({ derived, history, session }: WorkbenchState): SectionLine | undefined {
  const isAsked = (history?.present.document.unsaid?.length ?? 0) > 0;
  return derived.page?.plan === undefined || isAsked ? undefined : session.cut;
}

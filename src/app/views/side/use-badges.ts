/** The state of each subject in the side panel: in words, and the shape of its worst finding. */
import { useMemo } from 'react';
import { openFields } from '#app/state/edits/open-fields.ts';
import type { PanelName } from '#app/state/layout-state.ts';
import { bySeverity, findingWords } from '#app/state/plan-standing.ts';
import { orderedThickness } from '#app/state/sheet-thickness.ts';
import type { WorkbenchState } from '#app/state/workbench-state.ts';
import { useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import type { Severity } from '#findings/severity.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';

export interface Badge {
  readonly words: string;
  readonly severity?: Exclude<Severity, 'note'> | undefined;
}

type Part = Pick<WorkbenchState, 'history' | 'derived'>;

export function useBadges(): Readonly<Record<PanelName, Badge>> {
  const history = useWorkbenchState((state) => state.history);
  const derived = useWorkbenchState((state) => state.derived);
  const unit = useWorkbenchState((state) => state.session.unit);
  return useMemo(() => badgesOf({ history, derived }, unit), [history, derived, unit]);
}

function badgesOf({ history, derived }: Part, unit: ShownUnit): Readonly<Record<PanelName, Badge>> {
  const { page, shapes } = derived;
  const document = history?.present.document;
  // What is missing is asked for in the strip; it is no fault yet.
  const findings = document?.unsaid?.includes('stock') === true ? [] : (page?.findings ?? []);
  const { stops, warnings } = bySeverity(findings);
  const worst = stops.length > 0 ? 'stop' : warnings.length > 0 ? 'warn' : undefined;
  const unasked = shapes.filter(({ region }) => region.asked.depth <= 0).length;
  // With the job and its drawing.
  const files =
    (page?.files.length ?? 0) +
    (document === undefined
      ? 0
      : 1 + [document.drawing, document.farDrawing].filter((each) => each !== undefined).length);
  return {
    drawing:
      page === undefined
        ? { words: document?.drawing === undefined ? 'none' : '' }
        : { words: counted(page.plan?.regions.length ?? 0, 'region') },
    requirements: { words: requirementWords(shapes.length, unasked) },
    stock: document === undefined ? { words: '' } : { words: stockWords(document.job, unit) },
    findings: { words: findingWords(findings), severity: worst },
    handoff:
      stops.length > 0
        ? { words: 'held back', severity: 'stop' }
        : { words: page?.isWhole === true ? counted(files, 'file') : '' },
  };
}

function requirementWords(regions: number, unasked: number): string {
  if (regions === unasked) return 'none yet';
  return unasked === 0 ? 'all set' : `${regions - unasked} of ${regions} set`;
}

function stockWords(job: Parameters<typeof orderedThickness>[0], unit: ShownUnit): string {
  const open = openFields(job);
  if (open.length > 0) return `${open.join(', ')} not set`;
  const tapers = typeof job.stock.thickness === 'object' ? 'to ' : '';
  return `${tapers}${showLength(orderedThickness(job), unit)}`;
}

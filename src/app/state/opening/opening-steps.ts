/** What leads from a drawing to a plan: steps that only the engineer can say, or check; each with what was found. */

import { outlineLayers, sheetChoice } from '#app/state/edits/edit-sheet.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import type { OpenDocument, Unsaid } from '#app/state/workbench-state.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { knownFigures } from '#bath/known-figures.ts';
import type { FindingCode } from '#findings/catalogue.ts';
import { counted } from '#findings/counted.ts';
import type { JobFile } from '#job/job-file.ts';
import { unitName } from '#units/length-unit.ts';
import { type ShownUnit, showLength } from '#units/show-length.ts';

export type StepName = 'unit' | 'edge' | 'layers' | 'stock' | 'circles' | 'figures';

export interface OpeningStep {
  readonly name: StepName;
  readonly title: string;
  /** What was found, or what is to be chosen. */
  readonly words: string;
  readonly isDone: boolean;
}

interface Found {
  readonly page: PlannedPage | undefined;
  /** Circles inside regions that may be holes, bosses or etched. */
  readonly circles: number;
  /** Figures that stand in regions and whose meaning is not chosen. */
  readonly figures: number;
  readonly unit: ShownUnit;
}

/** None where the job was not begun from a drawing, or all is chosen. */
export function openingSteps(document: OpenDocument, found: Found): OpeningStep[] {
  const { unsaid = [] } = document;
  if (unsaid.length === 0) return [];
  const isSaid = (what: Unsaid) => !unsaid.includes(what);
  const { job } = document;
  const hasEdge = outlineLayers(job).length > 0 || sheetChoice(job) !== undefined;
  return [
    {
      name: 'unit',
      title: 'Unit',
      words: unitWords(document, found.page),
      isDone: isSaid('unit') && !isUnitInDoubt(found.page),
    },
    {
      name: 'edge',
      title: 'Edge of the part',
      words: edgeWords(document),
      isDone: hasEdge && isSaid('unit'),
    },
    {
      name: 'layers',
      title: 'Other layers',
      words: layerWords(job, isSaid('faces')),
      isDone: isSaid('unit') && isSaid('faces'),
    },
    {
      name: 'stock',
      title: 'Sheet and bath',
      words: isSaid('stock') ? stockWords(document, found.unit) : 'say which',
      isDone: isSaid('stock'),
    },
    ...(found.circles === 0 || isSaid('circles')
      ? []
      : [{ name: 'circles', title: 'Circles', words: `${found.circles} to name`, isDone: false } as const]),
    {
      name: 'figures',
      title: 'Figures',
      words: figureWords(document, found.figures),
      isDone: isSaid('figures'),
    },
  ];
}

/** The unit that a drawing states may not be its own: until the engineer has said which it is. */
export function isUnitInDoubt(page: PlannedPage | undefined): boolean {
  return (page?.findings ?? []).some(({ code }) => UNIT_DOUBTS.has(code));
}

const UNIT_DOUBTS: ReadonlySet<FindingCode> = new Set(['drawing-unit-doubtful', 'drawing-size-unlikely']);

/** Questions about circles are known of only once the sheet is said. */
export function questionsLeft({ unsaid = [] }: Pick<OpenDocument, 'unsaid'>): number {
  return unsaid.filter((each) => each !== 'circles' || !unsaid.includes('stock')).length;
}

/** The step that waits for an answer: the first that is not done. */
export function openStep(steps: readonly OpeningStep[]): OpeningStep | undefined {
  return steps.find(({ isDone }) => !isDone);
}

function figureWords({ unsaid = [] }: OpenDocument, figures: number): string {
  if (!unsaid.includes('figures')) return 'read';
  if (unsaid.includes('stock')) return 'after the sheet';
  return figures === 0 ? 'none in the regions' : 'say what they give';
}

function unitWords({ job }: OpenDocument, page: PlannedPage | undefined): string {
  if (job.drawingUnits !== undefined) return unitName(job.drawingUnits);
  if (page?.statedUnit === undefined) return 'not stated';
  return `${unitName(page.statedUnit)}, ${isUnitInDoubt(page) ? 'in doubt' : 'as stated'}`;
}

function edgeWords({ job }: OpenDocument): string {
  const layers = outlineLayers(job);
  if (layers.length > 0) return `layer ${layers.join(', ')}`;
  const choice = sheetChoice(job);
  if (choice === undefined) return 'not found';
  return choice === 'outermost' ? 'outermost outline' : 'outline round a point';
}

function layerWords({ layers }: JobFile, isSaid: boolean): string {
  if (!isSaid) return 'say which face';
  const far = (layers?.far?.length ?? 0) + (layers?.both?.length ?? 0);
  const leftOut = layers?.ignore?.length ?? 0;
  const faces = far === 0 ? 'near face' : 'both faces';
  return leftOut === 0 ? faces : `${faces}, ${counted(leftOut, 'layer')} left out`;
}

function stockWords({ job }: OpenDocument, unit: ShownUnit): string {
  const { alloys } = knownFigures(typeof job.figures === 'object' ? job.figures : undefined);
  const alloy = alloys.find(({ id }) => id === job.stock.alloy)?.name;
  return [showLength(sheetThickness(job), unit), alloy].filter((each) => each !== undefined).join(', ');
}

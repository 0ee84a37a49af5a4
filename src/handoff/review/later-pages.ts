/** What stands behind page 1: findings that had no room there, what changed, figures, stages, sections, points, sources, cautions. */
import { UNIT_WORDS } from '#handoff/paper-figures.ts';
import { asWritten } from '#handoff/pdf/flow-text.ts';
import { framedText, remark, sectionHead } from '#handoff/pdf/paper-book.ts';
import { pointsPicture } from '#handoff/pdf/points-picture.ts';
import { saidScale, sectionKey, sectionPicture } from '#handoff/pdf/section-picture.ts';
import { type Block, gap, together } from '#handoff/pdf/sheet-book.ts';
import { drawWarningSign } from '#handoff/pdf/warning-sign.ts';
import type { PlanChange } from '#handoff/plan-changes.ts';
import { sayPlanChanges } from '#handoff/say-plan-change.ts';
import { labelOf, withoutFieldPaths } from '#job/field-labels.ts';
import { answeredFindings, findingsInFull, type ListedFinding, mostSeriousFirst } from './findings-table.ts';
import { lineTable } from './line-table.ts';
import type { ReviewPage } from './review-page.ts';
import { budgetTable, levelsTable, pointsTable, regionsTable, sourcesTable } from './review-tables.ts';
import { stagePages } from './stage-pages.ts';

const GAP = 3;

/** `unanswered`: findings that had no room on page 1. */
export function laterPages(page: ReviewPage, unanswered: readonly ListedFinding[]): Block[] {
  return [
    ...findingBlocks(page, unanswered),
    ...changeBlocks(page),
    gap(GAP),
    ...underHead(head(page, 'Levels, in the order of the run'), levelsTable(page)),
    gap(GAP),
    ...underHead(head(page, 'Regions', 'required and reached'), regionsTable(page)),
    ...budgetBlocks(page),
    ...lineTable(page),
    gap(GAP),
    ...together([
      head(page, 'Cautions'),
      framedText(page.pen, page.planFile.cautions, { width: page.width, sign: drawWarningSign }),
    ]),
    gap(GAP),
    ...stagePages(page),
    ...sectionBlocks(page),
    ...pointBlocks(page),
    gap(GAP),
    ...underHead(head(page, 'Where the figures come from'), sourcesTable(page)),
  ];
}

function head({ pen, width }: ReviewPage, title: string, said = ''): Block {
  return sectionHead(pen, title, said, width);
}

/** A head never stands without the first row of its table. */
function underHead(title: Block, [tableHead, first, ...others]: readonly Block[]): Block[] {
  const opening = [title, tableHead, first].filter((block) => block !== undefined);
  return [...together(opening), ...others];
}

function findingBlocks(page: ReviewPage, unanswered: readonly ListedFinding[]): Block[] {
  const all = mostSeriousFirst(page);
  return [
    ...(unanswered.length === 0
      ? []
      : [...underHead(head(page, 'Findings, continued'), answeredFindings(page, unanswered)), gap(GAP)]),
    ...(all.length === 0
      ? []
      : [...underHead(head(page, 'Findings in full'), findingsInFull(page, all)), gap(GAP)]),
  ];
}

function changeBlocks(page: ReviewPage): Block[] {
  const { since, pen, width } = page;
  const said =
    since === undefined
      ? ['No earlier plan was given to compare with.']
      : since.changes.length === 0
        ? [`Nothing, against plan ${since.planHash}.`]
        : [
            `Against plan ${since.planHash}:`,
            ...changesSaid(page, since.changes).map((each) => `–  ${each}`),
          ];
  const lines = said.map((sentence) => remark(pen, asWritten(sentence), width));
  return underHead(head(page, 'Changed since the last issue'), lines);
}

/** Fields of the job by the labels of their controls, as findings name them. */
function changesSaid({ planFile }: ReviewPage, changes: readonly PlanChange[]): string[] {
  const unit = planFile.job.units ?? 'mm';
  const said = sayPlanChanges(changes, { unit, field: (path) => `“${labelOf(path)}”` });
  return said.map(withoutFieldPaths);
}

function budgetBlocks(page: ReviewPage): Block[] {
  const rows = budgetTable(page);
  if (rows.length === 0) return [];
  const what =
    'too deep is +; likely is the shift of the level and the root-sum-square of sheet, rate, timing and gauge; at worst is all of them at once';
  return [gap(GAP), ...underHead(head(page, 'Tolerance: what may come out', what), rows)];
}

function sectionBlocks(page: ReviewPage): Block[] {
  const { plan, sections, thickness, width, height, figures } = page;
  const metal = { thickness, stages: plan.stages, unit: figures.units[0] };
  const room = { width, height: height / 6 };
  const place = (value: number) => figures.lengths(value)[0];
  return sections.flatMap((section) => {
    const { name, from, to } = section;
    const [a, b] = [from, to].map(({ x, y }) => `${place(x)}, ${place(y)}`);
    const said = `From ${a} to ${b} ${figures.units[0]}; ${saidScale(section, metal, room)}. Depths and distances in ${UNIT_WORDS[figures.units[0]]}.`;
    return together([
      head(page, `Section ${name.length > 40 ? `${name.slice(0, 39)}…` : name}`, said),
      sectionPicture(section, metal, room),
      sectionKey(metal, width),
      gap(GAP),
    ]);
  });
}

/** More fill pages that nobody reads: the list is in the file for the inspector. */
const MOST_POINTS = 240;

function pointBlocks(page: ReviewPage): Block[] {
  const { points, plan, pen, width, height, figures } = page;
  const title = head(page, 'Inspection points');
  if (points.length === 0)
    return together([title, remark(pen, 'No flat floor is wide enough for a point.', width)]);
  if (points.length > MOST_POINTS) {
    const said = `${points.length} points: too many to print; they stand in inspection-points.csv.`;
    return together([title, remark(pen, said, width)]);
  }
  const room = { width, height: height / 2 - 40 };
  return [
    ...together([title, pointsPicture(plan, points, room, figures.units[0])]),
    gap(2),
    ...pointsTable(page),
  ];
}

/**
 * review.pdf: what a reviewer signs for. The part with every line, levels and regions, what changed since the last issue, each
 * stage, the sections chosen, inspection points, findings and sources; checks to tick and a place to sign.
 */

import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { mirrorPlan } from '#plan/mirror-plan.ts';
import type { NamedSection } from './named-section.ts';
import { lineBudgetBlocks } from './pdf/line-budget-page.ts';
import { overviewKey, overviewPicture } from './pdf/overview-picture.ts';
import type { PictureRoom } from './pdf/part-frame.ts';
import { makePdfPen } from './pdf/pdf-pen.ts';
import type { Paper, Pen } from './pdf/pen.ts';
import { pointsPicture } from './pdf/points-picture.ts';
import { saidScale, sectionKey, sectionPicture } from './pdf/section-picture.ts';
import { type Block, drawBook, gap, heading, pageRoom, paragraph, together } from './pdf/sheet-book.ts';
import { stageKey, stagePicture } from './pdf/stage-picture.ts';
import { fields, table } from './pdf/table.ts';
import {
  budgetTable,
  findingsTable,
  levelsTable,
  pointsTable,
  regionsTable,
  sourcesTable,
} from './review-tables.ts';
import { sealedWords } from './stage-words.ts';

export interface ReviewInput {
  readonly plan: EtchPlan;
  readonly planFile: PlanFile;
  readonly job: Job;
  readonly planHash: string;
  readonly paper: Paper;
  readonly date: string | undefined;
  readonly issue: { readonly number: string | undefined; readonly by: string | undefined };
  readonly sections: readonly NamedSection[];
  readonly points: readonly InspectionPoint[];
  /** mm; of a tapered sheet the thickest. */
  readonly thickness: number;
  /** The earlier plan that this one is compared with, where there is one. */
  readonly since: { readonly planHash: string; readonly said: readonly string[] } | undefined;
}

export async function reviewSheets(input: ReviewInput): Promise<Uint8Array> {
  const { job, planFile, planHash, paper, date, issue } = input;
  const title = 'Review: chemical milling plan';
  const pen = await makePdfPen({ title: `${title}, ${job.name}`, date });
  const page: Page = { ...input, pen, ...pageRoom(paper) };
  const blocks = [
    ...partBlocks(page),
    ...levelBlocks(page),
    ...budgetBlocks(page),
    ...lineBudgetBlocks(page, planFile.lineBudgets ?? []),
    ...changeBlocks(page),
    ...findingBlocks(page),
    ...stageBlocks(page),
    ...farStageBlocks(page),
    ...sectionBlocks(page),
    ...pointBlocks(page),
    ...sourceBlocks(page),
    ...signBlocks(page),
  ];
  drawBook(pen, { paper, head: { title, name: job.name, planHash, date, issue: issue.number }, blocks });
  return pen.finish();
}

interface Page extends ReviewInput {
  readonly pen: Pen;
  /** mm of the page that blocks have. */
  readonly width: number;
  readonly height: number;
}

const say = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width });
const tick = ({ pen, width }: Page, text: string): Block => paragraph(pen, text, { width, hasBox: true });
const head = ({ pen, width }: Page, text: string): Block => heading(pen, text, width);
/** Hundredths, never −0. */
const plain = (value: number): string => (Math.round(value * 100) / 100 + 0).toFixed(2);
const mm = (value: number): string => `${value.toFixed(3)} mm`;

function partBlocks(page: Page): Block[] {
  const { plan, planFile, job, pen, width, height, sections, issue, date } = page;
  const { thickness, alloy, minus, plus } = job.stock;
  const sheet = typeof thickness === 'number' ? mm(thickness) : `tapered, at most ${mm(page.thickness)}`;
  const factor = job.process.etchFactor.map(([depth, each]) => `${each} at ${depth} mm`).join(', ');
  const [only, second] = job.process.etchFactor;
  const rows = [
    ['Part', job.name, 'Issue', issue.number ?? '–'],
    ['Drawing', planFile.drawing.file, 'Date', date ?? '–'],
    ['Drawing SHA-256', planFile.drawing.sha256, 'Planned by', issue.by ?? '–'],
    [
      'Sheet',
      `${alloy ?? 'alloy not named'}, ${sheet} +${plus.toFixed(3)} −${minus.toFixed(3)}`,
      'Bath',
      job.process.bath ?? 'not named',
    ],
    [
      'Etch factor',
      second === undefined ? String(only?.[1] ?? '–') : factor,
      'Rate',
      `${plan.rate.toFixed(4)} mm/min ± ${(job.process.rateSpread * 100).toFixed(0)} %`,
    ],
    [
      'Drawn line is',
      {
        'shallow-edge': 'edge on the shallower floor',
        'mid-wall': 'middle of the wall',
        'deep-foot': 'foot of the wall',
      }[job.process.edgeDatum],
      'In the bath',
      `${planFile.totals.minutes.toFixed(1)} min, ${plan.stages.length} ${plan.stages.length === 1 ? 'stage' : 'stages'}`,
    ],
  ];
  return [
    ...fields(pen, rows, { shares: [1.2, 3.4, 1, 2], width, labels: [0, 2] }),
    gap(2),
    ...together([
      head(page, 'The part, its stages and scribe lines'),
      overviewPicture(plan, sections, { width, height: height * 0.5 }),
      overviewKey(plan, width),
    ]),
    gap(2),
    ...page.planFile.cautions.map((caution) => say(page, `! ${caution}`)),
  ];
}

function levelBlocks(page: Page): Block[] {
  const { plan, planFile, job } = page;
  const { thickness } = job.stock;
  return [
    { ...head(page, 'Levels, in the order of the run'), startsPage: true },
    ...levelsTable(page, {
      plan,
      planFile,
      thickness: typeof thickness === 'number' ? thickness : undefined,
    }),
    gap(4),
    head(page, 'Regions: required and reached'),
    ...regionsTable(page, planFile),
  ];
}

function budgetBlocks(page: Page): Block[] {
  const { budgets = [] } = page.planFile;
  if (budgets.length === 0) return [];
  const what =
    'Too deep is +. Likely is the shift of the level and the root-sum-square of sheet, rate, timing and gauge; at worst is all of them at once.';
  const title = head(page, 'Tolerance: what may come out against what is allowed');
  const [tableHead, first, ...others] = budgetTable(page, budgets);
  const opening = [title, say(page, what), tableHead, first].filter((block) => block !== undefined);
  return [gap(4), ...together(opening), ...others];
}

function changeBlocks(page: Page): Block[] {
  const { since } = page;
  const said =
    since === undefined
      ? ['No earlier plan was given to compare with.']
      : since.said.length === 0
        ? [`Nothing, against plan ${since.planHash}.`]
        : [`Against plan ${since.planHash}:`, ...since.said.map((each) => `–  ${each}`)];
  return [gap(4), head(page, 'Changed since the last issue'), ...said.map((sentence) => say(page, sentence))];
}

function findingBlocks(page: Page): Block[] {
  const { planFile } = page;
  const isNone = planFile.findings.length === 0;
  return [gap(4), head(page, 'Findings'), ...(isNone ? [say(page, 'None.')] : findingsTable(page, planFile))];
}

/** mm of a stage's block beside its picture: heading, sentence, scale bar, key, boxes. */
const BESIDE_PICTURE = 47;

/** Room for a stage's picture: two stages a page. */
export function reviewPictureRoom(paper: Paper): PictureRoom {
  const { width, height } = pageRoom(paper);
  return { width, height: height / 2 - BESIDE_PICTURE };
}

function stageBlocks(page: Page): Block[] {
  const { plan } = page;
  return plan.stages.flatMap((stage, index) => {
    const blocks = together(stageBlock(page, stage));
    const [first, ...others] = blocks;
    return first === undefined ? [] : [{ ...first, startsPage: index === 0 }, ...others];
  });
}

/** The same of the far face as it is seen from its own side, for the stages that peel something there. */
function farStageBlocks(page: Page): Block[] {
  const { far } = page.plan;
  if (far === undefined || far.stages.every(({ piece }) => piece.length === 0)) return [];
  const plan = mirrorPlan(far, 0);
  return plan.stages
    .filter(({ piece }) => piece.length > 0)
    .flatMap((stage, index) => {
      const blocks = together([
        head(
          page,
          `Far face, seen from it, stage ${stage.number} of ${plan.stages.length}: to ${mm(stage.level)}`,
        ),
        say(
          page,
          `In the bath with the near face. Mirrored about x = 0 of the drawing; ${stage.lines.length} ${stage.lines.length === 1 ? 'line' : 'lines'}.`,
        ),
        stagePicture(plan, stage, reviewPictureRoom(page.paper)),
        stageKey(plan, stage, page.width),
        tick(page, 'The right piece on the right face; every line there; nothing else open.'),
        gap(4),
      ]);
      const [first, ...others] = blocks;
      return first === undefined ? [] : [{ ...first, startsPage: index === 0 }, ...others];
    });
}

function stageBlock(page: Page, stage: Stage): Block[] {
  const { plan, planFile, width } = page;
  const record = planFile.stages.find(({ number }) => number === stage.number);
  const sealed = record?.sealed ?? [];
  const stays = plan.masking === 're-mask' ? 'on a coat of its own' : sealedWords(sealed);
  return [
    head(page, `Stage ${stage.number} of ${plan.stages.length}: to ${mm(stage.level)}`),
    say(
      page,
      `Peeled at minute ${stage.startMinute.toFixed(1)}, then ${stage.minutes.toFixed(1)} min for ${mm(stage.etch)}; ${stage.lines.length} ${stage.lines.length === 1 ? 'line' : 'lines'}; ${stays}.`,
    ),
    stagePicture(plan, stage, reviewPictureRoom(page.paper)),
    stageKey(plan, stage, width),
    tick(page, 'The right piece, after the right one; every line there; nothing else open.'),
    gap(4),
  ];
}

function sectionBlocks(page: Page): Block[] {
  const { plan, sections, thickness, width, height } = page;
  const metal = { thickness, stages: plan.stages };
  const room = { width, height: height / 6 };
  return sections.flatMap((section, index) => {
    const { name, from, to } = section;
    const [a, b] = [from, to].map(({ x, y }) => `${plain(x)}, ${plain(y)}`);
    const block = together([
      head(page, `Section ${name}`),
      say(page, `From ${a} to ${b} mm; ${saidScale(section, metal, room)}. Depths and distances in mm.`),
      sectionPicture(section, metal, room),
      sectionKey(metal, width),
      gap(4),
    ]);
    const [first, ...others] = block;
    return first === undefined ? [] : [{ ...first, startsPage: index === 0 }, ...others];
  });
}

/** More fill pages that nobody reads: the list is in the file for the inspector. */
const MOST_POINTS = 240;

function pointBlocks(page: Page): Block[] {
  const { points, plan, width, height } = page;
  const title = head(page, 'Inspection points');
  if (points.length === 0) return [gap(4), title, say(page, 'No flat floor is wide enough for a point.')];
  if (points.length > MOST_POINTS) {
    const said = `${points.length} points: too many to print; they stand in inspection-points.csv.`;
    return [gap(4), title, say(page, said)];
  }
  return [
    gap(4),
    ...together([title, pointsPicture(plan, points, { width, height: height / 2 - 40 })]),
    gap(2),
    ...pointsTable(page, points),
  ];
}

function sourceBlocks(page: Page): Block[] {
  return [gap(4), head(page, 'Where the figures come from'), ...sourcesTable(page, page.planFile)];
}

function signBlocks(page: Page): Block[] {
  const { pen, width, issue } = page;
  return together([
    gap(4),
    head(page, 'Review'),
    tick(page, 'Levels and tolerances are those of the drawing; nothing ends thinner than it may.'),
    tick(page, 'Order, pieces and lines looked at stage by stage; sections agree with what is required.'),
    tick(page, 'Findings read, each accepted or corrected; sources of rate and etch factor accepted.'),
    gap(2),
    ...table(
      pen,
      [
        ['Planned by', issue.by ?? '', '', ''],
        ['Reviewed by', '', '', ''],
        ['Released by', '', '', ''],
      ],
      { head: ['', 'Name', 'Signature', 'Date'], shares: [1, 2, 2, 1], width, row: 10, labels: [0] },
    ),
  ]);
}

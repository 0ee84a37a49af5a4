/**
 * Page 1: all that is signed for. Plan, levels and section, findings and signatures share the page's height: what the findings leave goes to
 * the picture, and findings that have no room go on to the next page.
 */

import { UNIT_WORDS } from '#handoff/paper-figures.ts';
import { asWritten } from '#handoff/pdf/flow-text.ts';
import { formTable, framed } from '#handoff/pdf/form-table.ts';
import { remark, sectionHead } from '#handoff/pdf/paper-book.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import { type Block, gap } from '#handoff/pdf/sheet-book.ts';
import type { EdgeDatum } from '#job/job.ts';
import { answeredFindings, findingCounts, type ListedFinding, mostSeriousFirst } from './findings-table.ts';
import { headCells } from './head-cells.ts';
import { levelsAndSection } from './levels-and-section.ts';
import { planPicture, planPictureHeight } from './plan-picture.ts';
import type { ReviewPage } from './review-page.ts';

export interface SignedPage {
  readonly blocks: readonly Block[];
  /** Findings that had no room. */
  readonly rest: readonly ListedFinding[];
}

/** Of the page's height: the depth axis, what it may grow by, the least that the picture has, and the most that it takes. */
const AXIS_SHARE = 0.135;
const AXIS_GROWS = 0.1;
const LEAST_PICTURE = 0.23;
/** For the most serious finding alone, where it has no room beside a larger picture. */
const SMALLEST_PICTURE = 0.17;
const MOST_PICTURE = 0.42;
const GAP = 1.5;

export function signedPage(page: ReviewPage): SignedPage {
  const { pen, width, height } = page;
  const axis = height * AXIS_SHARE;
  const before = [headCells(page), gap(GAP), sectionHead(pen, '1  The plan', planWords(page), width)];
  const between = (deep: number): Block[] => [
    gap(GAP),
    sectionHead(pen, '2  Levels and section, on one depth scale', '', width),
    levelsAndSection(page, deep),
    gap(GAP),
    sectionHead(pen, '3  Findings, and is the tolerance held?', '', width),
    findingCounts(page),
  ];
  const after = [gap(GAP), sectionHead(pen, '4  Signed for', '', width), ...signRows(page)];
  const room = height - heightOf([...before, ...between(axis), ...after]) - 0.5;
  const wanted = planPictureHeight(page, height * MOST_PICTURE);
  const roomBeside = (share: number) => room - Math.min(wanted, height * share);
  const asUsual = split(page, { room: roomBeside(LEAST_PICTURE), most: Number.POSITIVE_INFINITY });
  const { shown, rest } = asUsual.isAnswered
    ? asUsual
    : split(page, { room: roomBeside(SMALLEST_PICTURE), most: 1 });
  const picture = planPicture(page, Math.min(wanted, room - heightOf(shown)));
  const spare = Math.max(0, room - heightOf(shown) - picture.height);
  const deeper = between(axis + Math.min(spare, height * AXIS_GROWS));
  return { blocks: [...before, picture, ...deeper, ...shown, ...after], rest };
}

function heightOf(blocks: readonly Block[]): number {
  return blocks.reduce((sum, block) => sum + block.height, 0);
}

interface Answered {
  readonly shown: readonly Block[];
  readonly rest: ListedFinding[];
  /** The most serious at least is shown. */
  readonly isAnswered: boolean;
}

interface FindingRoom {
  /** mm */
  readonly room: number;
  /** Rows. */
  readonly most: number;
}

/** As many rows as have room, the most serious first; how many others follow is said. */
function split(page: ReviewPage, { room, most }: FindingRoom): Answered {
  const { pen, width } = page;
  const findings = mostSeriousFirst(page);
  const said = (text: string) => remark(pen, text, width);
  if (findings.length === 0) return { shown: [said('No findings.')], rest: [], isAnswered: true };
  const [head, ...rows] = answeredFindings(page, findings);
  const inFull = said('In full from page 2 on.');
  if (head === undefined) return { shown: [], rest: findings, isAnswered: false };
  if (heightOf([head, ...rows, inFull]) <= room)
    return { shown: [head, ...rows, inFull], rest: [], isAnswered: true };
  const others = (count: number) =>
    said(
      `**${count === 1 ? '1 finding more is' : `${count} findings more are`} to be answered from page 2 on**, where all stand in full.`,
    );
  let count = 0;
  let left = room - head.height - others(rows.length).height;
  for (const row of rows) {
    if (row.height > left || count === most) break;
    left -= row.height;
    count++;
  }
  const shown = count === 0 ? [] : [head, ...rows.slice(0, count)];
  return {
    shown: [...shown, others(rows.length - count)],
    rest: findings.slice(count),
    isAnswered: count > 0,
  };
}

const DRAWN_LINE: Readonly<Record<EdgeDatum, string>> = {
  'shallow-edge': 'the edge on the shallower floor',
  'mid-wall': 'the middle of the wall',
  'deep-foot': 'the foot of the wall',
};

function planWords({ plan, planFile, job, figures }: ReviewPage): string {
  const { stages, far, masking } = plan;
  const lines = stages.map((stage) => stage.lines.length);
  const sum = lines.reduce((total, count) => total + count, 0);
  const beyond = (far?.stages ?? []).reduce((total, stage) => total + stage.lines.length, 0);
  const byStage = stages.length > 1 ? ` (${lines.join(', ')} by stage)` : '';
  return [
    stages.length === 1 ? '1 stage' : `${stages.length} stages`,
    ...(masking === 're-mask' ? ['a new coat for each stage, shallowest first'] : []),
    `${planFile.totals.minutes.toFixed(1)} min in the bath`,
    `${sum === 1 ? '1 line' : `${sum} lines`}${byStage}${beyond === 0 ? '' : ` and ${beyond} on the far face, which is dashed`}; depths in ${UNIT_WORDS[figures.units[0]]}; as many ticks as the stage’s number; a drawn line is ${DRAWN_LINE[job.process.edgeDatum]}`,
  ].join(', ');
}

function signRows({ pen, width, choices: { issue } }: ReviewPage): Block[] {
  const rows = [
    ['**Planned.** The figures are this part’s, and each says where it is from.', asWritten(issue.by ?? '')],
    ['**Reviewed.** I looked at every stage’s page: order, lines, nothing ends too thin.', ''],
    ['**Released.** The process specification allows this run on this part.', ''],
  ].map(([said = '', name = '']) => [said, name, '', '']);
  const table = formTable(pen, {
    columns: [
      { share: 102, head: 'I say that' },
      { share: 28, head: 'Name' },
      { share: 32, head: 'Signature' },
      { share: 18, head: 'Date' },
    ],
    rows,
    width,
    row: 8.2,
    size: TYPE.note,
  });
  return [framed(table, width)];
}

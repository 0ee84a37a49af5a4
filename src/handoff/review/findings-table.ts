/** Findings on paper: how many of each severity, whether the tolerance is held, and each with what helps and room for an answer. */
import { type FindingRecord, findingRecord } from '#findings/finding-record.ts';
import { asSentence } from '#findings/say-finding.ts';
import type { Severity } from '#findings/severity.ts';
import { SAME_COUNT } from '#geometry/tolerances.ts';
import { idRuns } from '#handoff/id-runs.ts';
import type { PaperUnit } from '#handoff/paper-figures.ts';
import { drawFindingSign } from '#handoff/pdf/finding-sign.ts';
import { asWritten } from '#handoff/pdf/flow-text.ts';
import { type DrawnCell, formBoxes, formTable, framed } from '#handoff/pdf/form-table.ts';
import { POINT, RULE_INK, TYPE } from '#handoff/pdf/paper-type.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { INK } from '#handoff/pdf/sheet-ink.ts';
import { labelOf, sayInLabels } from '#job/field-labels.ts';
import type { PlanFile } from '#job/formats/plan-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import type { ReviewPage } from './review-page.ts';

const SEVERITIES: readonly Severity[] = ['stop', 'warn', 'note'];
const NAMES: Readonly<Record<Severity, readonly [string, string]>> = {
  stop: ['stop', 'stops'],
  warn: ['warning', 'warnings'],
  note: ['note', 'notes'],
};

/** mm */
const COUNT = 28;
const COUNTS_ROW = 9.6;

/** Counts with their shapes, and the worst share of a tolerance in one line. */
export function findingCounts({ pen, width, planFile }: ReviewPage): Block {
  const tolerance = formBoxes(
    pen,
    [
      {
        label: 'Worst floor: share of its tolerance used, gauged at four fifths and by the clock',
        value: toleranceWords(planFile),
        share: 1,
      },
    ],
    { width: width - 3 * COUNT, height: COUNTS_ROW },
  );
  const row: Block = {
    height: COUNTS_ROW,
    draw: (to, { left, right, top }) => {
      SEVERITIES.forEach((severity, index) => {
        const count = planFile.findings.filter((each) => each.severity === severity).length;
        const [x, y] = [left + index * COUNT, top - COUNTS_ROW / 2];
        const box = { minX: x, maxX: x + COUNT, minY: top - COUNTS_ROW, maxY: top };
        to.rectangle(box, { stroke: { width: RULE_INK, color: INK } });
        drawFindingSign(to, severity, { at: { x: x + 5, y }, half: 2.9, isEmpty: count === 0 });
        const figure = { size: 14 * POINT, isBold: true };
        to.text(String(count), { x: x + 9.5, y: y - 1.7 }, figure);
        const word = NAMES[severity][count === 1 ? 0 : 1];
        const beside = x + 10.5 + to.textWidth(String(count), figure);
        to.text(word, { x: beside, y: y - 1.2 }, { size: TYPE.note });
      });
      tolerance.draw(to, { left: left + 3 * COUNT, right, top });
    },
  };
  return framed([row], width);
}

/** A share is null where nothing is allowed. */
function toleranceWords({ budgets = [] }: PlanFile): string {
  if (budgets.length === 0) return 'Not known: no floor has a tolerance';
  const [gauged, byClock] = (['gauged', 'byClock'] as const).map((how) => {
    const shares = budgets.map((each) => each[how].share);
    return shares.includes(null) ? undefined : Math.max(...shares.map((share) => share ?? 0));
  });
  // Never down: 100.3 % is not held.
  const said = (share: number | undefined) =>
    share === undefined ? 'nothing allowed' : `${Math.ceil(share * 100 - SAME_COUNT)} %`;
  const isHeld = (share: number | undefined) => share !== undefined && share <= 1;
  const held = isHeld(byClock) ? 'held' : isHeld(gauged) ? 'held only if gauged' : 'not held';
  return `Gauged ${said(gauged)}, by the clock ${said(byClock)}: ${held}`;
}

/** In the first unit of the papers, and what happened by itself: the reason goes on to how that comes about. */
export interface ListedFinding extends FindingRecord {
  readonly what: string;
  /** Words for `at`. */
  readonly place: string;
}

export function mostSeriousFirst({ planFindings, figures }: ReviewPage): ListedFinding[] {
  const [unit = 'mm'] = figures.units;
  const listed = planFindings.map((each): ListedFinding => {
    const record = findingRecord(each);
    const { reason, remedy, what } = sayInLabels(each, unit);
    return { ...record, message: reason, remedy, what, place: placeIn(unit, record) };
  });
  return SEVERITIES.flatMap((severity) => listed.filter((each) => each.severity === severity));
}

/** What and what helps, with room for an answer: a head and a row each. */
export function answeredFindings({ pen, width }: ReviewPage, findings: readonly ListedFinding[]): Block[] {
  return formTable(pen, {
    columns: [
      { share: 9, head: '' },
      { share: 125, head: 'What, where, and what helps' },
      { share: 28, head: 'Planner’s answer' },
      { share: 18, head: 'Accepted by' },
    ],
    rows: findings.map((each) => [
      signCell(each.severity),
      `**${asWritten(asSentence(each.what))}** ${asWritten(each.remedy)}`,
      '',
      '',
    ]),
    width,
    row: 7.6,
    size: TYPE.note,
  });
}

/** Each in full, with how it comes about, where, and its code. */
export function findingsInFull({ pen, width }: ReviewPage, findings: readonly ListedFinding[]): Block[] {
  return formTable(pen, {
    columns: [
      { share: 9, head: '' },
      { share: 40, head: 'Finding, and where' },
      { share: 131, head: 'What, how it comes about, and what helps' },
    ],
    rows: findings.map((each) => [signCell(each.severity), placeWords(each), findingWords(each)]),
    width,
    row: 7.6,
    size: TYPE.note,
  });
}

function signCell(severity: Severity): DrawnCell {
  return {
    draw: (pen, { minX, maxX, minY, maxY }) =>
      drawFindingSign(pen, severity, { at: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 }, half: 2.6 }),
  };
}

function findingWords({ what, message, remedy }: ListedFinding): string {
  return `**${asWritten(what)}**${asWritten(`${message.slice(what.length)} ${remedy}`)}`;
}

function placeIn(unit: PaperUnit, { at }: FindingRecord): string {
  if (at === null) return '';
  const [x, y] = at.map((each) => (each / millimetresIn(unit)).toFixed(unit === 'mm' ? 1 : 2));
  return `at ${x}, ${y} ${unit}`;
}

function placeWords({ code, place, regions, path, layer, line }: ListedFinding): string {
  const places = [
    place,
    regionsPlace(regions),
    path === undefined ? '' : labelOf(path),
    layer === undefined ? '' : `layer ${layer}`,
    line === undefined ? '' : `line ${line}`,
  ].filter(Boolean);
  return `**${code}**\n${asWritten(places.join('; '))}`;
}

/** Ids or runs of them in one row. */
const MOST_PLACES = 24;

function regionsPlace(regions: readonly string[]): string {
  const words = idRuns(regions).split(' ');
  if (words.length <= MOST_PLACES) return words.join(' ');
  return `${words.slice(0, MOST_PLACES).join(' ')} … ${regions.length} regions in all`;
}

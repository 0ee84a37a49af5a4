/** The tables of the review sheets, as plan.json holds them: levels, regions, tolerance, inspection points, sources. */

import { GRADE } from '#bath/provenance.ts';
import { spansLength } from '#geometry/span.ts';
import { idRuns } from '#handoff/id-runs.ts';
import type { PaperFigures, PaperUnit } from '#handoff/paper-figures.ts';
import { asWritten } from '#handoff/pdf/flow-text.ts';
import { type FormColumn, formTable } from '#handoff/pdf/form-table.ts';
import { TYPE } from '#handoff/pdf/paper-type.ts';
import type { Block } from '#handoff/pdf/sheet-book.ts';
import { withoutFieldPaths } from '#job/field-labels.ts';
import type { BudgetRecord, PlanFileRegion, PlanFileStage } from '#job/formats/plan-file.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import { allowedSides, exact, likelySides, signed } from './exact-figures.ts';
import type { ReviewPage } from './review-page.ts';

/** mm */
const ROW = 5.4;

export function levelsTable({ pen, width, planFile, plan, job, figures }: ReviewPage): Block[] {
  const isRemasked = planFile.masking === 're-mask';
  const rows = planFile.stages.flatMap((stage, index) => {
    const lines = plan.stages[index]?.lines ?? [];
    const length = lines.reduce((sum, { spans }) => sum + spansLength(spans), 0);
    const [first = '', ...more] = idRows(stage.regions);
    return [
      [
        String(stage.number),
        exact(figures, stage.level),
        leftWords(stage.level, job.stock, figures),
        exact(figures, stage.etch),
        stage.startMinute.toFixed(1),
        stage.minutes.toFixed(1),
        String(lines.length),
        figures.length(length, { tolerance: 1 }),
        isRemasked ? String(stage.number) : sealedNumbers(stage),
        first,
      ],
      ...more.map((ids) => ['', '', '', '', '', '', '', '', '', ids]),
    ];
  });
  const { named } = figures;
  const columns: FormColumn[] = [
    { share: 11, head: 'Stage', align: 'middle', isBold: true },
    { share: 16, head: `Level, ${named}`, align: 'right', isBold: true },
    { share: 16, head: `Left, ${named}`, align: 'right' },
    { share: 16, head: `Etch, ${named}`, align: 'right' },
    { share: 17, head: 'Peeled at minute', align: 'right' },
    { share: 16, head: 'Minutes', align: 'right' },
    { share: 11, head: 'Lines', align: 'right' },
    { share: 18, head: `Long in all, ${named}`, align: 'right' },
    { share: 14, head: isRemasked ? 'Coat' : 'Sealed' },
    { share: 45, head: 'Regions' },
  ];
  return formTable(pen, { columns, rows, width, row: ROW, size: TYPE.note });
}

/** A sheet that is not as thick everywhere leaves at each place what the sections and the inspection list say. */
function leftWords(
  level: number,
  { thickness, surveyed }: ReviewPage['job']['stock'],
  figures: ReviewPage['figures'],
): string {
  if (surveyed !== undefined && surveyed.survey.model !== 'constant') return 'by survey';
  return typeof thickness === 'number' ? exact(figures, thickness - level) : 'by taper';
}

function sealedNumbers({ sealed }: PlanFileStage): string {
  return sealed.length === 0 ? '–' : idRuns(sealed.map(String), ', ');
}

/** Ids of one cell at most: a row must stand on a page. */
const MOST_IDS = 120;

function idRows(ids: readonly string[]): string[] {
  const words = idRuns(ids).split(' ');
  return Array.from({ length: Math.ceil(words.length / MOST_IDS) }, (_, row) =>
    words.slice(row * MOST_IDS, (row + 1) * MOST_IDS).join(' '),
  );
}

/** Regions with the same requirement and the same level stand in one row, with the worst of what they reach. */
export function regionsTable({ pen, width, plan, planFile, figures }: ReviewPage): Block[] {
  const usual = new Set(plan.regions.filter(({ asked }) => asked.isToleranceUsual).map(({ id }) => id));
  const alike = new Map<string, PlanFileRegion[]>();
  for (const region of [...planFile.regions].sort((a, b) => b.level - a.level)) {
    const { depth, plus, minus } = region.asked;
    const key = [region.layer, depth, plus, minus, region.level, usual.has(region.id)].join('\u0000');
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [region]);
    else group.push(region);
  }
  const rows = [...alike.values()].flatMap((group) => rowsOfRegions(group, usual, figures));
  const { named } = figures;
  const columns: FormColumn[] = [
    { share: 38, head: 'Regions', isBold: true },
    { share: 28, head: 'Layer' },
    { share: 18, head: `Required, ${named}`, align: 'right' },
    { share: 33, head: 'Tolerance', align: 'right' },
    { share: 17, head: `Level, ${named}`, align: 'right', isBold: true },
    { share: 17, head: 'Off by', align: 'right' },
    { share: 20, head: 'Least floor in tolerance', align: 'right' },
    { share: 17, head: `Deepest, ${named}`, align: 'right' },
  ];
  return formTable(pen, { columns, rows, width, row: ROW, size: TYPE.note });
}

/** @param usual ids of those whose tolerance the job leaves out */
function rowsOfRegions(
  group: readonly PlanFileRegion[],
  usual: ReadonlySet<string>,
  figures: PaperFigures,
): string[][] {
  const [any] = group;
  if (any === undefined) return [];
  const { id, asked, level, layer } = any;
  const least = Math.min(...group.map(({ reached }) => reached.share));
  const deepest = Math.max(...group.map(({ reached }) => reached.deepest));
  const [first = '', ...more] = idRows(group.map(({ id }) => id));
  const isLand = level === 0 && asked.depth === 0;
  const figuresOfRow = isLand
    ? ['land', '–', '–', '–', '–']
    : [
        exact(figures, asked.depth),
        `${allowedSides(figures, asked.plus, asked.minus)}${usual.has(id) ? '\nusual: none is given' : ''}`,
        exact(figures, level),
        signed(figures, level - asked.depth),
        `${(least * 100).toFixed(1)} %`,
      ];
  return [
    [first, layer === '' ? '–' : asWritten(layer), ...figuresOfRow, exact(figures, deepest)],
    ...more.map((ids) => [ids, '', '', '', '', '', '', '']),
  ];
}

/** A row a level and tolerance; + is too deep. */
export function budgetTable({ pen, width, planFile, figures }: ReviewPage): Block[] {
  const { budgets = [] } = planFile;
  if (budgets.length === 0) return [];
  const rows = budgets.flatMap(({ level, regions, byClock, gauged }) => {
    const [first = '', ...more] = idRows(regions);
    const both = ({ tooDeep, tooShallow }: BudgetRecord['byClock'], figure: 'likely' | 'worst') =>
      likelySides(figures, tooDeep[figure], tooShallow[figure]);
    const { tooDeep, tooShallow } = byClock;
    return [
      [
        exact(figures, level),
        first,
        allowedSides(figures, tooDeep.allowed, tooShallow.allowed),
        both(byClock, 'likely'),
        both(byClock, 'worst'),
        both(gauged, 'likely'),
        heldWords(byClock.share, gauged.share),
      ],
      ...more.map((ids) => ['', ids, '', '', '', '', '']),
    ];
  });
  const columns: FormColumn[] = [
    { share: 17, head: `Level, ${figures.named}`, align: 'right', isBold: true },
    { share: 24, head: 'Regions' },
    { share: 30, head: 'Allowed', align: 'right' },
    { share: 30, head: 'By the clock, likely', align: 'right' },
    { share: 30, head: 'At worst', align: 'right' },
    { share: 30, head: 'Gauged on the way, likely', align: 'right' },
    { share: 23, head: 'Held' },
  ];
  return formTable(pen, { columns, rows, width, row: ROW, size: TYPE.note });
}

/** A share is null where nothing is allowed. */
function heldWords(byClock: number | null, gauged: number | null): string {
  if (byClock !== null && byClock <= 1) return 'by the clock';
  return gauged !== null && gauged <= 1 ? '**only if gauged**' : '**not held**';
}

export function pointsTable({ pen, width, points, figures }: ReviewPage): Block[] {
  const rows = points.map(({ id, region, at, thickness, planned, stage, isToleranceUsual }) => [
    id,
    region,
    figures.length(at.x),
    figures.length(at.y),
    exact(figures, thickness.nominal),
    `${allowedSides(figures, thickness.plus, thickness.minus)}${isToleranceUsual === true ? ' usual' : ''}`,
    stage === 0 ? 'land' : exact(figures, planned),
  ]);
  const { named } = figures;
  const columns: FormColumn[] = [
    { share: 20, head: 'Point', isBold: true },
    { share: 25, head: 'Region' },
    { share: 25, head: `x, ${named}`, align: 'right' },
    { share: 25, head: `y, ${named}`, align: 'right' },
    { share: 27, head: `Thickness, ${named}`, align: 'right' },
    { share: 32, head: 'Tolerance', align: 'right' },
    { share: 26, head: `Etched, ${named}`, align: 'right' },
  ];
  return formTable(pen, { columns, rows, width, row: ROW, size: TYPE.note });
}

export function sourcesTable({ pen, width, planFile, figures }: ReviewPage): Block[] {
  const rows = planFile.provenance.map(({ quantity, value, unit, source, kind }) => [
    asWritten(quantity),
    asWritten(sourceFigure(value, unit, figures.units[0])),
    GRADE[kind],
    asWritten(withoutFieldPaths(source)),
  ]);
  const columns: FormColumn[] = [
    { share: 48, head: 'Figure', isBold: true },
    { share: 32, head: 'Value' },
    { share: 27, head: 'Grade' },
    { share: 73, head: 'Source' },
  ];
  return formTable(pen, { columns, rows, width, row: ROW, size: TYPE.note });
}

/** Digits of an inch figure, which a figure given in inches comes back with. */
const INCH_DIGITS = 5;

/** Lengths and speeds in the papers' first unit. */
function sourceFigure(value: number, unit: string, paper: PaperUnit | undefined): string {
  if (paper !== 'in' || !/^mm(\/min)?$/.test(unit)) return `${toMillionth(value)} ${unit}`;
  return `${Number((value / millimetresIn('in')).toPrecision(INCH_DIGITS))} ${unit.replace('mm', 'in')}`;
}

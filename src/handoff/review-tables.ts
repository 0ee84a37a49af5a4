/** The tables of the review sheets, as plan.json holds them: levels, regions, inspection points, findings, sources. */

import { spansLength } from '#geometry/span.ts';
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { BudgetRecord, PlanFile, PlanFileRegion, PlanFileStage } from '#job/formats/plan-file.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { toMillionth } from '#units/round-figures.ts';
import { idRuns } from './id-runs.ts';
import type { Pen } from './pdf/pen.ts';
import type { Block } from './pdf/sheet-book.ts';
import { table } from './pdf/table.ts';

export interface TablePage {
  readonly pen: Pen;
  /** mm */
  readonly width: number;
}

const fixed = (value: number): string => value.toFixed(3);

export function levelsTable(
  { pen, width }: TablePage,
  { planFile, plan, thickness }: { planFile: PlanFile; plan: EtchPlan; thickness: number | undefined },
): Block[] {
  const isRemasked = planFile.masking === 're-mask';
  const rows = planFile.stages.flatMap((stage, index) => {
    const lines = plan.stages[index]?.lines ?? [];
    const length = lines.reduce((sum, { spans }) => sum + spansLength(spans), 0);
    const [first = '', ...more] = idRows(stage.regions);
    return [
      [
        String(stage.number),
        fixed(stage.level),
        thickness === undefined ? 'by taper' : fixed(thickness - stage.level),
        fixed(stage.etch),
        stage.startMinute.toFixed(1),
        stage.minutes.toFixed(1),
        `${lines.length}, ${length.toFixed(0)} mm`,
        isRemasked ? String(stage.number) : sealedNumbers(stage),
        first,
      ],
      ...more.map((ids) => ['', '', '', '', '', '', '', '', ids]),
    ];
  });
  const head = [
    'Stage',
    'level mm',
    'left mm',
    'etch mm',
    'peel at min',
    'minutes',
    'lines',
    isRemasked ? 'coat' : 'sealed',
    'regions',
  ];
  return table(pen, rows, { head, shares: [0.8, 1.1, 1.1, 1.1, 1.2, 1.1, 1.5, 1.1, 3], width, labels: [0] });
}

function sealedNumbers({ sealed }: PlanFileStage): string {
  return sealed.length === 0 ? '–' : idRuns(sealed.map(String)).replaceAll(' ', ', ');
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
export function regionsTable({ pen, width }: TablePage, { regions }: PlanFile): Block[] {
  const alike = new Map<string, PlanFileRegion[]>();
  for (const region of [...regions].sort((a, b) => b.level - a.level)) {
    const { depth, plus, minus } = region.asked;
    const key = [region.layer, depth, plus, minus, region.level].join('\u0000');
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [region]);
    else group.push(region);
  }
  const rows = [...alike.values()].flatMap((group) => rowsOfRegions(group));
  const head = [
    'Regions',
    'layer',
    'required mm',
    'level mm',
    'off by',
    'least floor in tolerance',
    'deepest mm',
  ];
  return table(pen, rows, { head, shares: [3, 1.7, 2.3, 1.2, 1.1, 1.6, 1.2], width, labels: [0] });
}

function signed(off: number): string {
  const figure = fixed(Math.abs(off));
  return Number(figure) === 0 ? '0' : `${off < 0 ? '−' : '+'}${figure}`;
}

function rowsOfRegions(group: readonly PlanFileRegion[]): string[][] {
  const [any] = group;
  if (any === undefined) return [];
  const { asked, level, layer } = any;
  const off = level - asked.depth;
  const least = Math.min(...group.map(({ reached }) => reached.share));
  const deepest = Math.max(...group.map(({ reached }) => reached.deepest));
  const [first = '', ...more] = idRows(group.map(({ id }) => id));
  const isLand = level === 0 && asked.depth === 0;
  return [
    [
      first,
      layer === '' ? '–' : layer,
      isLand ? 'land' : `${fixed(asked.depth)} +${fixed(asked.plus)} −${fixed(asked.minus)}`,
      isLand ? '–' : fixed(level),
      isLand ? '–' : signed(off),
      isLand ? '–' : `${(least * 100).toFixed(1)} %`,
      fixed(deepest),
    ],
    ...more.map((ids) => [ids, '', '', '', '', '', '']),
  ];
}

/** A row a level and tolerance; + is too deep. */
export function budgetTable({ pen, width }: TablePage, budgets: readonly BudgetRecord[]): Block[] {
  const rows = budgets.flatMap(({ level, regions, byClock, gauged }) => {
    const [first = '', ...more] = idRows(regions);
    const figures = [
      bothSides(byClock, 'allowed'),
      bothSides(byClock, 'likely'),
      bothSides(byClock, 'worst'),
      bothSides(gauged, 'likely'),
      heldWords(byClock.share, gauged.share),
    ];
    return [[fixed(level), first, ...figures], ...more.map((ids) => ['', ids])];
  });
  const head = [
    'level mm',
    'regions',
    'allowed',
    'by the clock, likely',
    'at worst',
    'gauged on the way, likely',
    'held',
  ];
  return table(pen, rows, { head, shares: [1, 2.2, 1.6, 1.6, 1.6, 1.7, 1.7], width, labels: [0] });
}

function bothSides(
  { tooDeep, tooShallow }: BudgetRecord['byClock'],
  figure: 'allowed' | 'likely' | 'worst',
): string {
  return `+${fixed(tooDeep[figure])} −${fixed(tooShallow[figure])}`;
}

/** A share is null where nothing is allowed. */
function heldWords(byClock: number | null, gauged: number | null): string {
  if (byClock !== null && byClock <= 1) return 'by the clock';
  return gauged !== null && gauged <= 1 ? 'only if gauged' : 'not held';
}

export function pointsTable({ pen, width }: TablePage, points: readonly InspectionPoint[]): Block[] {
  const rows = points.map(({ id, region, at, thickness, planned, stage }) => [
    id,
    region,
    at.x.toFixed(2),
    at.y.toFixed(2),
    fixed(thickness.nominal),
    `+${fixed(thickness.plus)} −${fixed(thickness.minus)}`,
    stage === 0 ? 'land' : fixed(planned),
  ]);
  const head = ['Point', 'region', 'x mm', 'y mm', 'thickness mm', 'tolerance', 'etched mm'];
  return table(pen, rows, { head, shares: [1, 1, 1.2, 1.2, 1.3, 1.8, 1.2], width, labels: [0], row: 5 });
}

export function findingsTable({ pen, width }: TablePage, { findings }: PlanFile): Block[] {
  const rows = findings.map(({ severity, code, message, remedy, at, regions, path, layer, line }) => {
    const place = [
      at === null ? '' : `${at[0].toFixed(1)}, ${at[1].toFixed(1)}`,
      regionsPlace(regions),
      path ?? '',
      layer === undefined ? '' : `layer ${layer}`,
      line === undefined ? '' : `line ${line}`,
    ];
    return [severity, code, `${message} ${remedy}`, place.filter(Boolean).join('; ')];
  });
  return table(pen, rows, {
    head: ['', 'Finding', 'What, and what would help', 'Where'],
    shares: [0.7, 2.5, 5.5, 1.6],
    width,
    labels: [0],
  });
}

/** Ids or runs of them in the narrow column of places. */
const MOST_PLACES = 24;

function regionsPlace(regions: readonly string[]): string {
  const words = idRuns(regions).split(' ');
  if (words.length <= MOST_PLACES) return words.join(' ');
  return `${words.slice(0, MOST_PLACES).join(' ')} … ${regions.length} regions in all`;
}

const KIND = {
  published: 'published',
  'common-practice': 'common practice',
  memory: 'from memory',
  user: 'given in the job',
  measured: 'measured',
} as const;

export function sourcesTable({ pen, width }: TablePage, { provenance }: PlanFile): Block[] {
  const rows = provenance.map(({ quantity, value, unit, source, kind }) => [
    quantity,
    `${toMillionth(value)} ${unit}`,
    KIND[kind],
    source,
  ]);
  return table(pen, rows, {
    head: ['Figure', 'value', 'grade', 'source'],
    shares: [2.4, 1.6, 1.6, 5],
    width,
    labels: [0],
  });
}

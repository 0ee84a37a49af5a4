/** Changes of the plan in words, the same on paper and on screen. */

import type { FindingRecord } from '#findings/finding-record.ts';
import type { PlanFileRegion } from '#job/formats/plan-file.ts';
import { gaugedFigure, lengthFigure, type ShownUnit } from '#units/show-length.ts';
import { idRuns } from './id-runs.ts';
import type { LineChanges } from './line-changes.ts';
import type { PlanChange } from './plan-changes.ts';

/** Regions that changed alike are reported in one sentence. */
export function sayPlanChanges(
  changes: readonly PlanChange[],
  { unit = 'mm', field = (path) => path }: Partial<ReadIn> = {},
): string[] {
  const alike = new Map<string, [PlanChange, string[]]>();
  for (const change of changes) {
    const region = 'region' in change ? change.region : '';
    const key = JSON.stringify({ ...change, region: '' });
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [change, [region]]);
    else group[1].push(region);
  }
  return [...alike.values()].map(([change, regions]) => sayChange(change, { regions, field, unit }));
}

export function sayPlanChange(change: PlanChange): string {
  return sayPlanChanges([change]).join('');
}

/** How lengths and fields of the job, by their paths, are named where it is read. */
interface ReadIn {
  readonly unit: ShownUnit;
  readonly field: (path: string) => string;
}

interface Naming extends ReadIn {
  /** All that changed alike. */
  readonly regions: readonly string[];
}

function sayChange(change: PlanChange, { regions, field, unit }: Naming): string {
  const region = `${regions.length > 1 ? 'Regions' : 'Region'} ${idRuns(regions)}`;
  switch (change.kind) {
    case 'drawing':
      return change.isSameFile
        ? `The drawing ${change.now} is another issue of the file.`
        : `The drawing is ${change.now}; it was ${change.before}.`;
    case 'job':
      return `Job, ${field(change.path)}: ${valueWords(change.now)}; it was ${valueWords(change.before)}.`;
    case 'sheet':
      return Number.isFinite(change.by)
        ? `The border of the sheet moved by up to ${said(change.by, unit)}.`
        : 'The sheet has a border now that it did not have, or has none any more.';
    case 'region-new':
      return `${region}: new, ${etched(change.level, unit)}.`;
    case 'region-gone':
      return `${region} of the earlier plan: gone; it was ${etched(change.level, unit)}.`;
    case 'region-renamed':
      return `${region}: called ${change.before} before.`;
    case 'region-border':
      return `${region}: border moved by up to ${said(change.by, unit)}.`;
    case 'region-asked':
      return `${region}: required ${asked(change.now, unit)}, before ${asked(change.before, unit)}.`;
    case 'region-level':
      return `${region}: ${etched(change.now, unit)}, before ${etched(change.before, unit)}.`;
    case 'levels':
      return `Stages: ${change.now.length}, to ${list(change.now, unit)}; they were ${change.before.length}, to ${list(change.before, unit)}.`;
    case 'stage-minutes':
      return `Stage ${change.stage} is in the bath ${change.now.toFixed(1)} min; it was ${change.before.toFixed(1)}.`;
    case 'minutes':
      return `The run is ${change.now.toFixed(1)} min in the bath; it was ${change.before.toFixed(1)}.`;
    case 'lines':
      return `Lines of stage ${change.stage}: ${saidLines(change, unit)}.`;
    case 'finding-new':
      return `New finding${ofRegions(change.finding.regions)}: ${change.finding.message}`;
    case 'finding-gone':
      return `No longer found${ofRegions(change.finding.regions)}: ${change.finding.message}`;
    case 'finding-changed':
      return `Finding changed${aboutRegions(change)}: ${saidNow(change)}`;
    case 'source':
      return `${change.quantity}: ${change.now ?? 'not used any more'}; it was ${change.before ?? 'not used'}.`;
  }
}

function ofRegions(regions: readonly string[]): string {
  return regions.length === 0 ? '' : `, ${idRuns(regions)}`;
}

function aboutRegions({
  added,
  gone,
}: {
  readonly added: readonly string[];
  readonly gone: readonly string[];
}): string {
  return [
    added.length === 0 ? '' : `, now about ${idRuns(added)} too`,
    gone.length === 0 ? '' : `, no longer about ${idRuns(gone)}`,
  ].join('');
}

/** Its words now; the remedy too, where that alone has changed. */
function saidNow({ before, now }: { readonly before: FindingRecord; readonly now: FindingRecord }): string {
  return before.message === now.message && before.remedy !== now.remedy
    ? `${now.message} ${now.remedy}`
    : now.message;
}

function said(length: number, unit: ShownUnit): string {
  return `${gaugedFigure(length, unit)} ${unit}`;
}

function etched(level: number, unit: ShownUnit): string {
  return level > 0 ? `etched to ${said(level, unit)}` : 'land';
}

function asked({ depth, plus, minus }: PlanFileRegion['asked'], unit: ShownUnit): string {
  const [to, over, under] = [depth, plus, minus].map((length) => gaugedFigure(length, unit));
  return `${to} +${over} −${under} ${unit}`;
}

function list(levels: readonly number[], unit: ShownUnit): string {
  if (levels.length === 0) return 'nothing';
  return `${levels.map((level) => gaugedFigure(level, unit)).join(', ')} ${unit}`;
}

function saidLines({ moved, added, gone }: LineChanges, unit: ShownUnit): string {
  const farthest = moved.reduce((most, each) => (each.by > most.by ? each : most), {
    at: { x: 0, y: 0 },
    by: 0,
  });
  const { at, by } = farthest;
  return [
    moved.length === 0
      ? ''
      : `${moved.length} moved, most by ${said(by, unit)} at ${lengthFigure(at.x, unit)}, ${lengthFigure(at.y, unit)}`,
    added.length === 0 ? '' : `${added.length} new`,
    gone.length === 0 ? '' : `${gone.length} gone`,
  ]
    .filter(Boolean)
    .join('; ');
}

function valueWords(json: string | undefined): string {
  return json === undefined ? 'left out' : plainValue(JSON.parse(json));
}

/** `{"depth":2.5,"plus":0.08}` as `depth 2.5, plus 0.08`: keys and figures, for people. */
function plainValue(value: unknown): string {
  if (typeof value !== 'object' || value === null) return String(value);
  if (Array.isArray(value)) return `[${value.map(plainValue).join(', ')}]`;
  return Object.entries(value)
    .map(([key, each]) => `${key} ${plainValue(each)}`)
    .join(', ');
}

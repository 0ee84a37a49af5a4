/** Changes of the plan in words, the same on paper and on screen. */
import type { FindingRecord } from '#findings/finding-record.ts';
import { idRuns } from './id-runs.ts';
import type { LineChanges } from './line-changes.ts';
import type { PlanChange } from './plan-changes.ts';

/** Regions that changed alike are reported in one sentence. */
export function sayPlanChanges(changes: readonly PlanChange[], field = (path: string) => path): string[] {
  const alike = new Map<string, [PlanChange, string[]]>();
  for (const change of changes) {
    const region = 'region' in change ? change.region : '';
    const key = JSON.stringify({ ...change, region: '' });
    const group = alike.get(key);
    if (group === undefined) alike.set(key, [change, [region]]);
    else group[1].push(region);
  }
  return [...alike.values()].map(([change, regions]) => sayChange(change, { regions, field }));
}

export function sayPlanChange(change: PlanChange): string {
  return sayPlanChanges([change]).join('');
}

interface Naming {
  /** All that changed alike. */
  readonly regions: readonly string[];
  /** A field of the job, by its path. */
  readonly field: (path: string) => string;
}

function sayChange(change: PlanChange, { regions, field }: Naming): string {
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
        ? `The border of the sheet moved by up to ${mm(change.by)}.`
        : 'The sheet has a border now that it did not have, or has none any more.';
    case 'region-new':
      return `${region}: new, ${etched(change.level)}.`;
    case 'region-gone':
      return `${region} of the earlier plan: gone; it was ${etched(change.level)}.`;
    case 'region-renamed':
      return `${region}: called ${change.before} before.`;
    case 'region-border':
      return `${region}: border moved by up to ${mm(change.by)}.`;
    case 'region-asked':
      return `${region}: required ${asked(change.now)}, before ${asked(change.before)}.`;
    case 'region-level':
      return `${region}: ${etched(change.now)}, before ${etched(change.before)}.`;
    case 'levels':
      return `Stages: ${change.now.length}, to ${list(change.now)}; they were ${change.before.length}, to ${list(change.before)}.`;
    case 'stage-minutes':
      return `Stage ${change.stage} is in the bath ${change.now.toFixed(1)} min; it was ${change.before.toFixed(1)}.`;
    case 'minutes':
      return `The run is ${change.now.toFixed(1)} min in the bath; it was ${change.before.toFixed(1)}.`;
    case 'lines':
      return `Lines of stage ${change.stage}: ${saidLines(change)}.`;
    case 'finding-new':
      return `New finding${ofRegions(change.finding.regions)}: ${change.finding.message}`;
    case 'finding-gone':
      return `No longer found${ofRegions(change.finding.regions)}: ${change.finding.message}`;
    case 'finding-changed':
      return `Finding changed${aboutRegions(change)}: ${saidAnew(change)}`;
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
function saidAnew({ before, now }: { readonly before: FindingRecord; readonly now: FindingRecord }): string {
  return before.message === now.message && before.remedy !== now.remedy
    ? `${now.message} ${now.remedy}`
    : now.message;
}

function mm(value: number): string {
  return `${value.toFixed(3)} mm`;
}

function etched(level: number): string {
  return level > 0 ? `etched to ${mm(level)}` : 'land';
}

function asked({
  depth,
  plus,
  minus,
}: {
  readonly depth: number;
  readonly plus: number;
  readonly minus: number;
}): string {
  return `${depth.toFixed(3)} +${plus.toFixed(3)} −${minus.toFixed(3)} mm`;
}

function list(levels: readonly number[]): string {
  return levels.length === 0 ? 'nothing' : `${levels.map((level) => level.toFixed(3)).join(', ')} mm`;
}

function saidLines({ moved, added, gone }: LineChanges): string {
  const farthest = moved.reduce((most, each) => (each.by > most.by ? each : most), {
    at: { x: 0, y: 0 },
    by: 0,
  });
  const { at, by } = farthest;
  return [
    moved.length === 0
      ? ''
      : `${moved.length} moved, most by ${mm(by)} at ${at.x.toFixed(1)}, ${at.y.toFixed(1)}`,
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

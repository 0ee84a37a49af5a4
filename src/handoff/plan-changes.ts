/**
 * What changed from one issue of a plan to the next, for whoever reviewed the earlier one. Two plan files go in, so either may
 * be years old. A region is the same where its border is, whatever its number now; else where its number is. A stage is the
 * same by number where there are as many as before, else by level.
 */

import type { FindingRecord } from '#findings/finding-record.ts';
import { SAME_FIGURE, SAME_SPOT } from '#geometry/tolerances.ts';
import type { PlanFile, PlanFileRegion, PlanFileStage } from '#job/formats/plan-file.ts';
import { handoffProvenance } from '#job/resolve/resolve-handoff.ts';
import { hypot } from '#maths/hypot.ts';
import { fileNameOf } from '#units/file-name-of.ts';
import { toMillionth } from '#units/round-figures.ts';
import { type JobChange, jobChanges } from './job-changes.ts';
import { contoursApart, type LineChanges, lineChanges } from './line-changes.ts';

/** Lengths in mm, times in minutes; `before` and `now` stand in the earlier and in the present plan. */
export type PlanChange =
  | { readonly kind: 'drawing'; readonly before: string; readonly now: string; readonly isSameFile: boolean }
  | JobChange
  | { readonly kind: 'sheet'; readonly by: number }
  | { readonly kind: 'region-new'; readonly region: string; readonly level: number }
  | { readonly kind: 'region-gone'; readonly region: string; readonly level: number }
  | { readonly kind: 'region-renamed'; readonly region: string; readonly before: string }
  | { readonly kind: 'region-border'; readonly region: string; readonly by: number }
  | ({ readonly kind: 'region-asked'; readonly region: string } & BeforeNow<PlanFileRegion['asked']>)
  | ({ readonly kind: 'region-level'; readonly region: string } & BeforeNow<number>)
  | ({ readonly kind: 'levels' } & BeforeNow<readonly number[]>)
  | ({ readonly kind: 'stage-minutes'; readonly stage: number } & BeforeNow<number>)
  | ({ readonly kind: 'minutes' } & BeforeNow<number>)
  | ({ readonly kind: 'lines'; readonly stage: number } & LineChanges)
  | { readonly kind: 'finding-new'; readonly finding: FindingRecord }
  | { readonly kind: 'finding-gone'; readonly finding: FindingRecord }
  | ({ readonly kind: 'finding-changed' } & BeforeNow<FindingRecord> & FindingRegions)
  | ({ readonly kind: 'source'; readonly quantity: string } & BeforeNow<string | undefined>);

interface BeforeNow<Value> {
  readonly before: Value;
  readonly now: Value;
}

/** Regions that a finding is about now and was not, and the other way round; of regions that are gone the earlier ids. */
interface FindingRegions {
  readonly added: readonly string[];
  readonly gone: readonly string[];
}

/** In the order in which a reviewer asks: drawing, job, sheet, regions, stages, lines, findings, sources. Empty: nothing. */
export function planChanges(before: PlanFile, now: PlanFile): PlanChange[] {
  const pairs = pairRegions(before.regions, now.regions);
  return [
    ...drawingChanges(before, now),
    ...jobChanges(before.job, now.job),
    ...sheetChanges(before, now),
    ...regionChanges(pairs, now.regions),
    ...stageChanges(before, now),
    ...findingChanges(before.findings, now.findings, pairs),
    ...sourceChanges(before, now),
  ];
}

function drawingChanges({ drawing: old }: PlanFile, { drawing: recent }: PlanFile): PlanChange[] {
  if (old.sha256 === recent.sha256) return [];
  const [before, now] = [fileNameOf(old.file), fileNameOf(recent.file)];
  return [{ kind: 'drawing', before, now, isSameFile: before === now }];
}

function sheetChanges(before: PlanFile, now: PlanFile): PlanChange[] {
  const borders = ({ outline, cutouts }: PlanFile) => [...(outline === null ? [] : [outline]), ...cutouts];
  const by = contoursApart(borders(before), borders(now));
  return by <= SAME_FIGURE ? [] : [{ kind: 'sheet', by }];
}

interface RegionPairs {
  readonly earlierOf: ReadonlyMap<PlanFileRegion, PlanFileRegion>;
  /** Of the earlier plan, with none now. */
  readonly gone: readonly PlanFileRegion[];
}

function pairRegions(before: readonly PlanFileRegion[], now: readonly PlanFileRegion[]): RegionPairs {
  const byBorder = new Map(before.map((region) => [borderKey(region), region]));
  const earlierOf = new Map<PlanFileRegion, PlanFileRegion>();
  for (const region of now) {
    const earlier = byBorder.get(borderKey(region));
    if (earlier !== undefined) earlierOf.set(region, earlier);
  }
  const taken = new Set(earlierOf.values());
  const left = new Map(before.filter((region) => !taken.has(region)).map((region) => [region.id, region]));
  for (const region of now) {
    const earlier = earlierOf.has(region) ? undefined : left.get(region.id);
    if (earlier === undefined) continue;
    earlierOf.set(region, earlier);
    left.delete(earlier.id);
  }
  return { earlierOf, gone: [...left.values()] };
}

function regionChanges({ earlierOf, gone }: RegionPairs, now: readonly PlanFileRegion[]): PlanChange[] {
  const changes = now.flatMap((region): PlanChange[] => {
    const earlier = earlierOf.get(region);
    return earlier === undefined
      ? [{ kind: 'region-new', region: region.id, level: region.level }]
      : changesOfRegion(earlier, region);
  });
  return [
    ...changes,
    ...gone.map(({ id, level }): PlanChange => ({ kind: 'region-gone', region: id, level })),
  ];
}

function borderKey({ contours }: PlanFileRegion): string {
  return JSON.stringify(contours);
}

function changesOfRegion(earlier: PlanFileRegion, region: PlanFileRegion): PlanChange[] {
  const id = region.id;
  const changes: PlanChange[] = [];
  if (earlier.id !== id) changes.push({ kind: 'region-renamed', region: id, before: earlier.id });
  const by = contoursApart(earlier.contours, region.contours);
  if (by > SAME_FIGURE) changes.push({ kind: 'region-border', region: id, by });
  const [old, recent] = [earlier.asked, region.asked];
  const figures = ['depth', 'plus', 'minus'] as const;
  if (!figures.every((figure) => isSame(old[figure], recent[figure])))
    changes.push({ kind: 'region-asked', region: id, before: old, now: recent });
  if (!isSame(earlier.level, region.level))
    changes.push({ kind: 'region-level', region: id, before: earlier.level, now: region.level });
  return changes;
}

function stageChanges(before: PlanFile, now: PlanFile): PlanChange[] {
  const changes: PlanChange[] = [];
  const [old, recent] = [before, now].map(({ stages }) => stages.map(({ level }) => level)) as [
    number[],
    number[],
  ];
  if (old.length !== recent.length || !old.every((level, i) => isSame(level, recent[i] ?? 0)))
    changes.push({ kind: 'levels', before: old, now: recent });
  const pairs = stagePairs(before.stages, now.stages);
  for (const [earlier, stage] of pairs) {
    if (!isSame(earlier.minutes, stage.minutes))
      changes.push({
        kind: 'stage-minutes',
        stage: stage.number,
        before: earlier.minutes,
        now: stage.minutes,
      });
  }
  if (!isSame(before.totals.minutes, now.totals.minutes))
    changes.push({ kind: 'minutes', before: before.totals.minutes, now: now.totals.minutes });
  for (const [earlier, stage] of pairs) {
    const lines = lineChanges(earlier.lines, stage.lines);
    if (lines.moved.length + lines.added.length + lines.gone.length > 0)
      changes.push({ kind: 'lines', stage: stage.number, ...lines });
  }
  return changes;
}

/** Each stage with the one that it was in the earlier plan; one that has none is left out. */
export function stagePairs(
  before: readonly PlanFileStage[],
  now: readonly PlanFileStage[],
): [PlanFileStage, PlanFileStage][] {
  const isAsMany = before.length === now.length;
  return now.flatMap((stage) => {
    const earlier = before.find(({ number, level }) =>
      isAsMany ? number === stage.number : isSame(level, stage.level),
    );
    return earlier === undefined ? [] : [[earlier, stage]];
  });
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME_FIGURE;
}

function findingChanges(
  before: readonly FindingRecord[],
  now: readonly FindingRecord[],
  regions: RegionPairs,
): PlanChange[] {
  const idNow = new Map([...regions.earlierOf].map(([region, earlier]) => [earlier.id, region.id]));
  const left = new Set(before);
  const earlierOf = new Map<FindingRecord, FindingRecord>();
  // Those that agree in more find each other first, so that none is taken for another's.
  const agreements = [isSameInAll, hasSameWords, hasSameRegions, isAtOnePlace];
  for (const agree of agreements) {
    for (const finding of now) {
      if (earlierOf.has(finding)) continue;
      const earlier = [...left].find(
        (each) => each.code === finding.code && isAtOnePlace(each, finding) && agree(each, finding, idNow),
      );
      if (earlier === undefined) continue;
      earlierOf.set(finding, earlier);
      left.delete(earlier);
    }
  }
  const changes = now.flatMap((finding): PlanChange[] => {
    const earlier = earlierOf.get(finding);
    if (earlier === undefined) return [{ kind: 'finding-new', finding }];
    if (isSameInAll(earlier, finding, idNow)) return [];
    return [
      { kind: 'finding-changed', before: earlier, now: finding, ...regionsApart(earlier, finding, idNow) },
    ];
  });
  return [...changes, ...[...left].map((finding): PlanChange => ({ kind: 'finding-gone', finding }))];
}

type IdNow = ReadonlyMap<string, string>;

function isSameInAll(earlier: FindingRecord, finding: FindingRecord, idNow: IdNow): boolean {
  return hasSameWords(earlier, finding) && hasSameRegions(earlier, finding, idNow);
}

function hasSameWords(earlier: FindingRecord, finding: FindingRecord): boolean {
  return earlier.message === finding.message && earlier.remedy === finding.remedy;
}

function hasSameRegions(earlier: FindingRecord, finding: FindingRecord, idNow: IdNow): boolean {
  const { added, gone } = regionsApart(earlier, finding, idNow);
  return added.length + gone.length === 0;
}

/** By the ids of the present plan, whatever the regions were called before. */
function regionsApart(earlier: FindingRecord, finding: FindingRecord, idNow: IdNow): FindingRegions {
  const [were, are] = [earlier.regions.map((id) => idNow.get(id) ?? id), finding.regions];
  return { added: are.filter((id) => !were.includes(id)), gone: were.filter((id) => !are.includes(id)) };
}

function isAtOnePlace(a: FindingRecord, b: FindingRecord): boolean {
  if (a.at !== null && b.at !== null) return hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]) <= SAME_SPOT;
  return a.at === b.at && a.path === b.path && a.line === b.line && a.layer === b.layer;
}

function sourceChanges(before: PlanFile, now: PlanFile): PlanChange[] {
  const [old, recent] = [sourcesOf(before), sourcesOf(now)];
  return [...new Set([...recent.keys(), ...old.keys()])].flatMap((quantity): PlanChange[] => {
    const [was, is] = [old.get(quantity), recent.get(quantity)];
    return was === is ? [] : [{ kind: 'source', quantity, before: was, now: is }];
  });
}

/** Figure and where it is from, by what it is a figure of; several of one quantity stand together. */
function sourcesOf({ provenance }: PlanFile): Map<string, string> {
  // What only shapes files of the hand-off changes no plan.
  const ofFiles = new Set(handoffProvenance({}).map(({ quantity }) => quantity));
  const sources = new Map<string, string>();
  for (const { quantity, value, unit, source } of provenance) {
    if (ofFiles.has(quantity)) continue;
    const figure = unit === '' ? String(toMillionth(value)) : `${toMillionth(value)} ${unit}`;
    const said = `${figure}, ${source}`;
    const others = sources.get(quantity);
    sources.set(quantity, others === undefined ? said : `${others}; ${said}`);
  }
  return sources;
}

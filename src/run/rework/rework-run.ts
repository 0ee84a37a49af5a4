/**
 * After the run: from a plan and what its floors read, the fewest extra dips (M8.5), where edges then come out, and what can't be saved.
 * Whether any of it may be done, and what becomes of the rest, is not decided here.
 */
import { type Finding, finding, hasStop, type Place, sortFindings } from '#findings/finding.ts';
import { SAME_FIGURE, SAME_SUM } from '#geometry/tolerances.ts';
import { answersIn } from '#run/answers.ts';
import { readRunPlan } from '#run/correct-plan.ts';
import { type ReadingRow, readReadings } from '#run/correct-readings.ts';
import { judgeReadings } from '#run/judge-readings.ts';
import type { ListedReading } from '#run/listed-readings.ts';
import { type CoverLap, coverLaps } from './cover-laps.ts';
import { type ExtraEtch, extraDips } from './extra-dips.ts';
import { regionNeighbours } from './region-neighbours.ts';
import { type DepthHad, type ReworkEdge, reworkEdges } from './rework-edges.ts';
import { type ReworkFloor, type ReworkPlan, readReworkPlan } from './rework-plan.ts';
import { shareBetweenFaces } from './share-between-faces.ts';

export interface ReworkedFloor extends ReworkFloor {
  /** mm: mean of what was read last, at the end of the run or as near to it as it was read; what it gets in all; undefined where it can't be saved. */
  readonly read: number;
  readonly extra: number | undefined;
  /** What the floor behind it gets. */
  readonly extraBehind: number;
  readonly after: number;
}

export interface ExtraDip {
  readonly etch: number;
  readonly minutes: number;
  /** Floors to cover before it: they have what they need, or nobody knows what they need. */
  readonly cover: readonly string[];
  /** Floors that it etches. */
  readonly open: readonly string[];
}

export interface Rework {
  readonly floors: readonly ReworkedFloor[];
  readonly dips: readonly ExtraDip[];
  readonly edges: readonly ReworkEdge[];
  /** Where a cover may lap onto a floor that is etched on. */
  readonly laps: readonly CoverLap[];
}

export interface ReworkResult {
  readonly rework?: Rework;
  readonly findings: readonly Finding[];
}

/**
 * `stagesOver`: by number, up to which stages are over; all of them where it is not said. Only of floors that nothing etches any more it
 * speaks, and only what was read after their last stage.
 * Findings: `plan-file-unusable`, those of readings, `reading-off-floor`, `reading-in-question`, `floor-not-read`, `floor-too-thin`.
 */
export function reworkRun(
  planText: string,
  readingsText: string,
  stagesOver = Number.POSITIVE_INFINITY,
): ReworkResult {
  const plan = readReworkPlan(planText);
  if ('refused' in plan) return { findings: [plan.refused] };
  const { rows, findings } = readReadings(readingsText);
  if (hasStop(findings)) return { findings: sortFindings(findings) };
  const judged = judgeAfter(planText, rows);
  if (hasStop(judged.findings)) return { findings: sortFindings(judged.findings) };
  const sheets = sheetsRead(judged.listed);
  const over = plan.floors
    .filter(({ lastStage }) => lastStage <= stagesOver)
    .map((floor) => onSheet(floor, sheets.get(floor.id) ?? sheets.get(floor.over ?? '')));
  const read = over.map((floor) => thicknessRead(floor, judged.listed));
  const floors = over.flatMap((floor, index) => {
    const own = read[index];
    return own === undefined ? [] : [{ ...floor, read: own }];
  });
  const unread = over.filter((_, index) => read[index] === undefined);
  const shared = shareBetweenFaces(floors.map((floor) => ({ floors: floorsOf(floor), ...extraFor(floor) })));
  const { depths, gets } = extraDips([...shared.values()]);
  const getsOf = new Map([...shared.keys()].map((id, index) => [id, gets[index] ?? 0]));
  const reworked = floors.map((floor): ReworkedFloor => {
    const extra = getsOf.get(floor.id) ?? 0;
    const extraBehind = getsOf.get(floor.over ?? '') ?? 0;
    const isLost = extraFor(floor).most < -SAME_SUM;
    return {
      ...floor,
      extra: isLost ? undefined : extra,
      extraBehind,
      after: floor.read - extra - extraBehind,
    };
  });
  const dips = dipsOf(depths, {
    floors: getsOf,
    unread: [...new Set(unread.flatMap(floorsOf))].filter((id) => !getsOf.has(id)),
    rate: plan.process.rate,
  });
  return {
    rework: {
      floors: reworked,
      dips,
      laps: lapsOf(dips, plan),
      edges: reworkEdges(plan, depthsHad(reworked)),
    },
    findings: sortFindings([
      ...judged.findings,
      ...unread.map((floor) => finding('floor-not-read', {}, placeOf(floor))),
      ...reworked.flatMap(tooThin),
      ...reworked.flatMap(notServed),
    ]),
  };
}

/** Readings as `correct` judges them. */
function judgeAfter(
  planText: string,
  rows: readonly ReadingRow[],
): { readonly listed: readonly ListedReading[]; readonly findings: readonly Finding[] } {
  const read = readRunPlan(planText);
  if ('refused' in read) return { listed: [], findings: [read.refused] };
  const answers = answersIn(rows);
  if (hasStop(answers.findings)) return { listed: [], findings: answers.findings };
  return judgeReadings(read, rows, answers);
}

/** One, or one of either face. */
function floorsOf({ id, over }: ReworkFloor): string[] {
  return over === undefined ? [id] : [id, over];
}

function placeOf(floor: ReworkFloor): Place {
  const [x, y] = floor.label;
  return { regions: floorsOf(floor), at: { x, y } };
}

function extraFor({ read, thickness, plus, minus }: ReworkFloor & { readonly read: number }): ExtraEtch {
  return { least: Math.max(0, read - thickness - minus), most: read - thickness + plus };
}

/** Mean of the readings that count at the last moment, mm; none where all that were taken then are asked about. */
function thicknessRead(floor: ReworkFloor, listed: readonly ListedReading[]): number | undefined {
  const { id, over, lastStage } = floor;
  const own = listed.filter(
    ({ region, behind, kind, stage, state }) =>
      ((region === id && behind === over) || (region === over && behind === id)) &&
      kind === 'thickness' &&
      stage >= lastStage &&
      (state === 'counts' || state === 'asked'),
  );
  const stage = Math.max(...own.map((each) => each.stage));
  const ofStage = own.filter((each) => each.stage === stage);
  // A row without minutes was read at the end of its stage.
  const minutes = Math.max(...ofStage.map((each) => each.minutes ?? Number.POSITIVE_INFINITY));
  const values = ofStage.flatMap((each) =>
    (each.minutes ?? Number.POSITIVE_INFINITY) === minutes && each.state === 'counts' ? [each.read] : [],
  );
  return values.length === 0 ? undefined : meanOf(values);
}

/** By region: the sheet as it was read before the first dip, mm. */
function sheetsRead(listed: readonly ListedReading[]): Map<string, number> {
  const before = listed.filter(
    ({ kind, stage, state }) => kind === 'thickness' && stage === 0 && state === 'counts',
  );
  return new Map(
    before.map(({ region }) => [
      region,
      meanOf(before.flatMap((each) => (each.region === region ? [each.read] : []))),
    ]),
  );
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, each) => sum + each, 0) / values.length;
}

/** The sheet there as it was read, if it was; where a depth is asked, what is to be left follows it. */
function onSheet(floor: ReworkFloor, sheet = floor.sheet): ReworkFloor {
  const { asDepth, thickness } = floor;
  return { ...floor, sheet, thickness: asDepth ? thickness + sheet - floor.sheet : thickness };
}

/** By floor, by what it leaves alone where that was read; where both faces were etched, each is off alike. */
function depthsHad(floors: readonly ReworkedFloor[]): Map<string, DepthHad> {
  const alone = floors.filter(({ over }) => over === undefined);
  return new Map(
    [...floors.filter(({ over }) => over !== undefined), ...alone].flatMap((floor) => {
      const { id, over, level, sheet, behind, read, extra = 0, extraBehind } = floor;
      const off = sheet - level - behind - read;
      if (over === undefined) return [[id, { depth: level + off + extra, extra }] as const];
      return [
        [id, { depth: level + off / 2 + extra, extra }] as const,
        [over, { depth: behind + off / 2 + extraBehind, extra: extraBehind }] as const,
      ];
    }),
  );
}

interface Dipped {
  /** By id, what each gets in all, mm. */
  readonly floors: ReadonlyMap<string, number>;
  /** Ids of floors that nobody read. */
  readonly unread: readonly string[];
  readonly rate: number;
}

/** Before each dip the floors are covered that have what they need by then; those that nobody read before the first. */
function dipsOf(depths: readonly number[], { floors, unread, rate }: Dipped): ExtraDip[] {
  return depths.map((depth, index) => {
    const before = depths[index - 1] ?? 0;
    const idsOf = (isThat: (extra: number) => boolean) =>
      [...floors].flatMap(([id, extra]) => (isThat(extra) ? [id] : []));
    const etch = depth - before;
    return {
      etch,
      minutes: etch / rate,
      cover: [
        ...idsOf((extra) => (index === 0 ? extra === 0 : extra === before)),
        ...(index === 0 ? unread : []),
      ],
      open: idsOf((extra) => extra > before),
    };
  });
}

function lapsOf(dips: readonly ExtraDip[], { planFile, process }: ReworkPlan): CoverLap[] {
  if (dips.length === 0) return [];
  return coverLaps(dips, {
    levelOf: new Map(planFile.regions.map(({ id, level }) => [id, level])),
    neighbours: regionNeighbours(planFile),
    etchFactor: process.etchFactor,
  });
}

function tooThin(floor: ReworkedFloor): Finding[] {
  const { read, thickness, plus, extra, area } = floor;
  if (extra !== undefined) return [];
  return [finding('floor-too-thin', { read, least: thickness - plus, area }, placeOf(floor))];
}

/** Of a floor that lies over several others, what serves one place may be too much or too little for another. */
function notServed(floor: ReworkedFloor): Finding[] {
  const { extra, after, thickness, plus, minus, area } = floor;
  const [least, most] = [thickness - plus, thickness + minus];
  if (extra === undefined || (after >= least - SAME_FIGURE && after <= most + SAME_FIGURE)) return [];
  return [finding('floor-not-served', { after, least, most, area }, placeOf(floor))];
}

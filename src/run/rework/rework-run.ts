/**
 * After the run: from a plan and what its floors read, the fewest extra dips (M8.5), where edges then come out, and what can't be saved.
 * Whether any of it may be done, and what becomes of the rest, is not decided here.
 */
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
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

export interface ReworkedFloor extends ReworkFloor {
  /** mm: mean of what was read last, at the end of the run or as near to it as it was read; what it gets in all; undefined where it can't be saved. */
  readonly read: number;
  readonly extra: number | undefined;
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
  const judged = judgeAfter(planText, rows, plan.floors);
  if (hasStop(judged.findings)) return { findings: sortFindings(judged.findings) };
  const sheets = sheetsRead(judged.listed);
  const over = plan.floors
    .filter(({ lastStage }) => lastStage <= stagesOver)
    .map((floor) => onSheet(floor, sheets.get(floor.id)));
  const read = thicknessesRead(over, judged.listed);
  const floors = over.filter(({ id }) => read.has(id));
  const { depths, gets } = extraDips(floors.map((floor) => extraFor(floor, read.get(floor.id) ?? 0)));
  const reworked = floors.map((floor, index): ReworkedFloor => {
    const own = read.get(floor.id) ?? 0;
    const extra = gets[index];
    return { ...floor, read: own, extra, after: own - facesOf(floor) * (extra ?? 0) };
  });
  const dips = dipsOf(depths, {
    floors: reworked,
    unread: over.flatMap(({ id }) => (read.has(id) ? [] : [id])),
    rate: plan.process.rate,
  });
  return {
    rework: {
      floors: reworked,
      dips,
      laps: lapsOf(dips, plan),
      edges: reworkEdges(plan, new Map(reworked.map((each) => [each.id, depthHad(each)]))),
    },
    findings: sortFindings([
      ...judged.findings,
      ...over.flatMap(({ id, label: [x, y] }) =>
        read.has(id) ? [] : [finding('floor-not-read', {}, { regions: [id], at: { x, y } })],
      ),
      ...reworked.flatMap(tooThin),
    ]),
  };
}

/** Readings as `correct` judges them, and thicknesses also where both faces are etched: each with what is gone behind its floor. */
function judgeAfter(
  planText: string,
  rows: readonly ReadingRow[],
  floors: readonly ReworkFloor[],
): { readonly listed: readonly ListedReading[]; readonly findings: readonly Finding[] } {
  const read = readRunPlan(planText);
  if ('refused' in read) return { listed: [], findings: [read.refused] };
  const answers = answersIn(rows);
  if (hasStop(answers.findings)) return { listed: [], findings: answers.findings };
  const behindOf = new Map(floors.map(({ id, behind }) => [id, behind]));
  const regions = read.plan.regions.map((region) => ({ ...region, behind: behindOf.get(region.id) ?? 0 }));
  const judged = judgeReadings(
    { ...read, plan: { ...read.plan, regions, hasFarFloors: false } },
    rows,
    answers,
  );
  return { ...judged, findings: judged.findings.map((found) => asGauged(found, behindOf)) };
}

/** What is asked about, as it was read: without the metal that the other face took. */
function asGauged(found: Finding, behindOf: ReadonlyMap<string, number>): Finding {
  if (found.code !== 'reading-in-question') return found;
  const behind = behindOf.get(found.place.regions?.[0] ?? '') ?? 0;
  const { read, expected } = found.facts;
  return { ...found, facts: { ...found.facts, read: read - behind, expected: expected - behind } };
}

/** Faces that a dip etches of this floor's metal. */
function facesOf({ behind }: ReworkFloor): 1 | 2 {
  return behind > 0 ? 2 : 1;
}

function extraFor(floor: ReworkFloor, read: number): ExtraEtch {
  const { thickness, plus, minus } = floor;
  const faces = facesOf(floor);
  return { least: Math.max(0, read - thickness - minus) / faces, most: (read - thickness + plus) / faces };
}

/** Means by region of the readings that count at the last moment of each, mm; none where all that were taken then are asked about. */
function thicknessesRead(
  floors: readonly ReworkFloor[],
  listed: readonly ListedReading[],
): Map<string, number> {
  const read = new Map<string, number>();
  for (const { id, lastStage } of floors) {
    const own = listed.filter(
      ({ region, kind, stage, state }) =>
        region === id &&
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
    if (values.length > 0) read.set(id, meanOf(values));
  }
  return read;
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

/** Where both faces were etched, each is off alike. */
function depthHad(floor: ReworkedFloor): DepthHad {
  const { level, sheet, behind, after, extra = 0 } = floor;
  return { depth: level + (sheet - level - behind - after) / facesOf(floor), extra };
}

interface Dipped {
  readonly floors: readonly ReworkedFloor[];
  /** Ids of floors that nobody read. */
  readonly unread: readonly string[];
  readonly rate: number;
}

/** Before each dip the floors are covered that have what they need by then; those that nobody read before the first. */
function dipsOf(depths: readonly number[], { floors, unread, rate }: Dipped): ExtraDip[] {
  return depths.map((depth, index) => {
    const before = depths[index - 1] ?? 0;
    const isOpen = ({ extra = 0 }: ReworkedFloor) => extra > before;
    const isNewlyDone = ({ extra = 0 }: ReworkedFloor) => (index === 0 ? extra === 0 : extra === before);
    const etch = depth - before;
    return {
      etch,
      minutes: etch / rate,
      cover: [...floors.filter(isNewlyDone).map(({ id }) => id), ...(index === 0 ? unread : [])],
      open: floors.filter(isOpen).map(({ id }) => id),
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

function tooThin({ id, label: [x, y], read, thickness, plus, extra, area }: ReworkedFloor): Finding[] {
  if (extra !== undefined) return [];
  const facts = { read, least: thickness - plus, area };
  return [finding('floor-too-thin', facts, { regions: [id], at: { x, y } })];
}

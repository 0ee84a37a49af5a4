/**
 * After the run: from a plan and what its floors read, the fewest extra dips (M8.5), where edges then come out, and what can't be saved.
 * Whether any of it may be done, and what becomes of the rest, is not decided here.
 */
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { locateAreas } from '#geometry/loops/area-locator.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { edgePlace, plannedRun } from '#plan/edge-place.ts';
import { answersIn } from '#run/answers.ts';
import { type ReadingRow, readReadings } from '#run/correct-readings.ts';
import { millimetresIn } from '#units/length-unit.ts';
import { type ExtraEtch, extraDips } from './extra-dips.ts';
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
  /** Floors to cover before it: they have what they need. */
  readonly cover: readonly string[];
  /** Floors that it etches. */
  readonly open: readonly string[];
}

export interface ReworkEdge {
  readonly level: number;
  readonly beside: number;
  /** mm outside its line, with one coat still on, once the deeper floor has had its extra etch and the other is covered. */
  readonly off: number;
}

export interface Rework {
  readonly floors: readonly ReworkedFloor[];
  readonly dips: readonly ExtraDip[];
  readonly edges: readonly ReworkEdge[];
}

export interface ReworkResult {
  readonly rework?: Rework;
  readonly findings: readonly Finding[];
}

/** Findings: `plan-file-unusable`, those of readings, `reading-off-floor`, `floor-not-read`, `floor-too-thin`. */
export function reworkRun(planText: string, readingsText: string): ReworkResult {
  const plan = readReworkPlan(planText);
  if ('refused' in plan) return { findings: [plan.refused] };
  const { rows, findings } = readReadings(readingsText);
  if (hasStop(findings)) return { findings: sortFindings(findings) };
  const read = thicknessesRead(plan, rows);
  const floors = plan.floors.filter(({ id }) => read.has(id));
  const { depths, gets } = extraDips(floors.map((floor) => extraFor(floor, read.get(floor.id) ?? 0)));
  const reworked = floors.map((floor, index): ReworkedFloor => {
    const own = read.get(floor.id) ?? 0;
    const extra = gets[index];
    return { ...floor, read: own, extra, after: own - (extra ?? 0) };
  });
  return {
    rework: {
      floors: reworked,
      dips: dipsOf(depths, reworked, plan.process.rate),
      edges: edgesAfter(plan, reworked),
    },
    findings: sortFindings([
      ...plan.floors.flatMap(({ id, label: [x, y] }) =>
        read.has(id) ? [] : [finding('floor-not-read', {}, { regions: [id], at: { x, y } })],
      ),
      ...reworked.flatMap(tooThin),
    ]),
  };
}

function extraFor({ thickness, plus, minus }: ReworkFloor, read: number): ExtraEtch {
  return { least: Math.max(0, read - thickness - minus), most: read - thickness + plus };
}

/** Means by region of the readings at the last moment of each that are not struck out, mm. */
function thicknessesRead({ planFile, floors }: ReworkPlan, rows: readonly ReadingRow[]): Map<string, number> {
  const drawn = millimetresIn(planFile.drawing.unit);
  const known = new Set(floors.map(({ id }) => id));
  const { struck } = answersIn(rows);
  const near = planFile.regions.filter(({ face }) => face !== 'far');
  const { at } = locateAreas(
    near.map(({ contours }) => contours.map((contour) => pathOfContour(contour).spans)),
  );
  const regionAt = (x: number, y: number) => near[at({ x: x * drawn, y: y * drawn })]?.id;
  const last = new Map<string, { stage: number; minutes: number; values: number[] }>();
  for (const [index, row] of rows.entries()) {
    const { stage, minutes = Number.POSITIVE_INFINITY, region, x, y, thickness } = row;
    if (thickness === undefined || struck.has(index + 1)) continue;
    const id = region ?? (x === undefined || y === undefined ? undefined : regionAt(x, y));
    if (id === undefined || !known.has(id)) continue;
    const value = thickness * millimetresIn(row.unit ?? planFile.job.units ?? 'mm');
    const before = last.get(id) ?? { stage: -1, minutes: 0, values: [] };
    const later = stage - before.stage || (minutes === before.minutes ? 0 : minutes - before.minutes);
    if (later > 0) last.set(id, { stage, minutes, values: [value] });
    if (later === 0) before.values.push(value);
  }
  return new Map(
    [...last].map(([id, { values }]) => [id, values.reduce((sum, each) => sum + each, 0) / values.length]),
  );
}

/** Before each dip the floors are covered that have what they need by then. */
function dipsOf(depths: readonly number[], floors: readonly ReworkedFloor[], rate: number): ExtraDip[] {
  return depths.map((depth, index) => {
    const before = depths[index - 1] ?? 0;
    const isOpen = ({ extra = 0 }: ReworkedFloor) => extra > before;
    const isNewlyDone = ({ extra = 0 }: ReworkedFloor) => (index === 0 ? extra === 0 : extra === before);
    const etch = depth - before;
    return {
      etch,
      minutes: etch / rate,
      cover: floors.filter(isNewlyDone).map(({ id }) => id),
      open: floors.filter(isOpen).map(({ id }) => id),
    };
  });
}

/** Of each step whose deeper floor is etched on: from the plan's depths, its most etched floor counts. */
function edgesAfter({ planFile, lines }: ReworkPlan, floors: readonly ReworkedFloor[]): ReworkEdge[] {
  const extraOf = new Map(floors.map(({ id, extra = 0 }) => [id, extra]));
  return (planFile.lineBudgets ?? []).flatMap(({ level, beside, regions }) => {
    const extra = Math.max(0, ...regions.map((id) => extraOf.get(id) ?? 0));
    if (extra === 0) return [];
    const run = plannedRun(lines);
    const own = lines.levels.indexOf(level);
    const etches = run.etches.map((etch, stage) => (stage === own ? etch + extra : etch));
    return [{ level, beside, off: edgePlace({ level, beside }, lines, { ...run, etches }) }];
  });
}

function tooThin({ id, label: [x, y], read, thickness, plus, extra, area }: ReworkedFloor): Finding[] {
  if (extra !== undefined) return [];
  const facts = { read, least: thickness - plus, area };
  return [finding('floor-too-thin', facts, { regions: [id], at: { x, y } })];
}

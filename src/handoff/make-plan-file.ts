/**
 * plan.json from a plan. Figures are rounded to a millionth (a nanometre, a nano-minute), bulges to 12 places: the same job
 * gives the same bytes, and the file is a third shorter than with every digit of a double.
 */
import type { Tank } from '#bath/bath-load.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { LineBudget } from '#checks/line-budget.ts';
import { type ToleranceBudget, worseSide } from '#checks/tolerance-budget.ts';
import type { Finding } from '#findings/finding.ts';
import { findingRecord } from '#findings/finding-record.ts';
import { assert } from '#geometry/assert.ts';
import { type Loop, loopArea, type Path } from '#geometry/span.ts';
import type {
  BudgetRecord,
  Contour,
  LevelChoice,
  PlanFile,
  PlanFileRegion,
  ShownPlan,
  ShownRegion,
  ShownStage,
  SizingRecord,
  WithdrawalRecord,
} from '#job/formats/plan-file.ts';
import type { SheetSide } from '#job/job.ts';
import type { JobFile } from '#job/job-file.ts';
import type { EtchPlan, PlannedRegion, Stage, WithdrawalChoice } from '#plan/etch-plan.ts';
import { toMillionth as round, roundFigures } from '#units/round-figures.ts';
import { BATH_SHEET_PROVENANCE, bathRecord } from './bath-record.ts';
import { contourOfLoop, contourOfPath } from './contour.ts';
import { lineBudgetRecord } from './line-budget-record.ts';
import type { PlanMeasures } from './plan-measures.ts';

/** Contours of loops and paths that were rounded before, kept as long as those live. */
export type ContourMemory = WeakMap<Loop | Path, Contour>;

export interface ShownPlanInput {
  /** The job as read, defaults filled in. */
  readonly job: JobFile;
  readonly drawing: PlanFile['drawing'];
  readonly plan: EtchPlan;
  readonly provenance: readonly Provenance[];
  readonly cautions: readonly string[];
  readonly sizing?: SizingRecord | undefined;
  readonly contours?: ContourMemory | undefined;
}

export interface PlanFileInput extends ShownPlanInput {
  readonly measures: PlanMeasures;
  readonly metal: MetalFacts;
  readonly budgets?: readonly ToleranceBudget[];
  /** In the frame of the plan. */
  readonly lineBudgets?: readonly LineBudget[];
  readonly survey?: PlanFile['survey'];
  readonly findings: readonly Finding[];
}

/** What turns volumes into masses and gas; a figure that nobody gave stays out of the plan. */
export interface MetalFacts {
  /** g/cm³ */
  readonly density: number | undefined;
  /** Litres at 0 °C and 101.325 kPa for each gram dissolved. */
  readonly hydrogenLitresPerGram: number | undefined;
  readonly tank?: Tank | undefined;
  /** Hung in the bath at once. */
  readonly parts?: number | undefined;
  /** Of the sheet before it is etched, once it is sized, mm³; undefined where it has no border. */
  readonly sheetVolume: number | undefined;
}

export function makePlanFile(input: PlanFileInput): PlanFile {
  const { plan, measures, metal, sizing } = input;
  const { regions, masking, stages, job, drawing, outline, cutouts, provenance, cautions } = showPlan(input);
  const knowsGas = metal.hydrogenLitresPerGram !== undefined && metal.density !== undefined;
  const bath = knowsGas
    ? bathRecord(plan, measures, { ...metal, density: metal.density, sizing })
    : undefined;
  return {
    format: 'isobath-plan',
    version: 1,
    job,
    drawing,
    outline,
    cutouts,
    regions: regions.map(({ id, face, layer, label, area, contours, asked, level }) => {
      const reached = reachedRecord(id, measures);
      return face === undefined
        ? { id, layer, label, area, contours, asked, level, reached }
        : { id, face, layer, label, area, contours, asked, level, reached };
    }),
    masking,
    stages: stages.map((stage, index) => {
      const volume = measures.stages[index]?.removedVolume;
      assert(volume !== undefined, 'every stage has been measured');
      return { ...stage, removedVolume: round(volume), removedMass: massOf(volume, metal) };
    }),
    totals: totalsOf(plan, { measures, metal, sizing }),
    ...(plan.levelChoices === undefined ? {} : { levelChoices: plan.levelChoices.map(levelChoiceRecord) }),
    ...(input.budgets === undefined ? {} : { budgets: input.budgets.map(budgetRecord) }),
    ...(input.lineBudgets === undefined ? {} : { lineBudgets: input.lineBudgets.map(lineBudgetRecord) }),
    ...(input.survey === undefined ? {} : { survey: input.survey }),
    ...(sizing === undefined ? {} : { sizing: roundFigures(sizing) }),
    ...(plan.maskings === undefined ? {} : { maskings: roundFigures(plan.maskings) }),
    ...(plan.withdrawals === undefined ? {} : { withdrawals: plan.withdrawals.map(withdrawalRecord) }),
    ...(bath === undefined ? {} : { bathSheet: bath }),
    findings: input.findings.map(findingRecord),
    provenance: bath === undefined ? provenance : [...provenance, ...BATH_SHEET_PROVENANCE],
    cautions,
  };
}

/** All of the plan file that is known before anything is measured, the same contours for the same loops. */
export function showPlan({
  job,
  drawing,
  plan,
  provenance,
  cautions,
  sizing,
  contours = new WeakMap(),
}: ShownPlanInput): ShownPlan {
  const outline = [...plan.sheet].sort((a, b) => loopArea(b) - loopArea(a))[0];
  const rounded = contourRounder(contours);
  return {
    job,
    drawing,
    outline: outline === undefined ? null : rounded.ofLoop(outline),
    cutouts: plan.sheet.filter((loop) => loop !== outline).map(rounded.ofLoop),
    regions:
      plan.far === undefined
        ? plan.regions.map((region) => regionRecord(region, rounded))
        : [...sideRecords(plan, 'near', rounded), ...sideRecords(plan.far, 'far', rounded)],
    masking: plan.masking,
    stages: plan.stages.map((stage, index) =>
      // With a new coat for each stage no line of a later one is cut yet.
      stageRecord(stage, {
        later: plan.masking === 're-mask' ? [] : plan.stages.slice(index + 1),
        far: plan.far?.stages,
        rounded,
      }),
    ),
    ...(sizing === undefined ? {} : { sizing: roundFigures(sizing) }),
    totals: { minutes: totalMinutes(plan, sizing) },
    provenance: provenance.map(({ field, ...row }) => row),
    cautions,
  };
}

interface Rounder {
  readonly ofLoop: (loop: Loop) => Contour;
  readonly ofPath: (path: Path) => Contour;
}

function contourRounder(known: ContourMemory): Rounder {
  const kept = (key: Loop | Path, make: () => Contour): Contour => {
    const before = known.get(key);
    if (before !== undefined) return before;
    const contour = roundContour(make());
    known.set(key, contour);
    return contour;
  };
  return {
    ofLoop: (loop) => kept(loop, () => contourOfLoop(loop)),
    ofPath: (path) => kept(path, () => contourOfPath(path)),
  };
}

function sideRecords({ regions }: EtchPlan, side: SheetSide, rounded: Rounder): ShownRegion[] {
  return regions.map((region) => {
    const { id, ...rest } = regionRecord(region, rounded);
    return { id, face: side, ...rest };
  });
}

function regionRecord(region: PlannedRegion, rounded: Rounder): ShownRegion {
  const { depth, plus, minus } = region.asked;
  return {
    id: region.id,
    layer: region.layer,
    label: [round(region.label.x), round(region.label.y)],
    area: round(region.area),
    contours: region.loops.map(rounded.ofLoop),
    asked: { depth: round(depth), plus: round(plus), minus: round(minus) },
    level: round(region.level),
  };
}

function reachedRecord(id: string, measures: PlanMeasures): PlanFileRegion['reached'] {
  const reached = measures.regions.get(id);
  assert(reached !== undefined, 'every region has been measured');
  const { floorArea, share, deepest, shallowest } = reached;
  return {
    floorArea: round(floorArea),
    share: round(share),
    deepest: round(deepest),
    shallowest: round(shallowest),
  };
}

function levelChoiceRecord({ stages, levels, worstShare, regions }: LevelChoice): LevelChoice {
  return {
    stages,
    levels: levels.map(round),
    worstShare: round(worstShare),
    regions: regions.map(({ id, level, share }) => ({ id, level: round(level), share: round(share) })),
  };
}

interface StageSetting {
  /** Stages whose lines are still sealed. */
  readonly later: readonly Stage[];
  readonly far: readonly Stage[] | undefined;
  readonly rounded: Rounder;
}

function stageRecord(stage: Stage, { later, far, rounded }: StageSetting): ShownStage {
  const beyond = far?.find(({ number }) => number === stage.number);
  const hasLines = ({ number, lines }: Stage) =>
    lines.length > 0 || far?.some((each) => each.number === number && each.lines.length > 0) === true;
  return {
    number: stage.number,
    level: round(stage.level),
    etch: round(stage.etch),
    minutes: round(stage.minutes),
    startMinute: round(stage.startMinute),
    color: stage.color,
    regions: beyond === undefined ? stage.regions : [...stage.regions, ...beyond.regions],
    sealed: later.filter(hasLines).map(({ number }) => number),
    piece: stage.piece.map(rounded.ofLoop),
    opening: stage.opening.map(rounded.ofLoop),
    lines: stage.lines.map(rounded.ofPath),
    ...(beyond === undefined ? {} : { far: farRecord(beyond, rounded) }),
  };
}

function farRecord({ piece, opening, lines }: Stage, rounded: Rounder): NonNullable<ShownStage['far']> {
  return {
    piece: piece.map(rounded.ofLoop),
    opening: opening.map(rounded.ofLoop),
    lines: lines.map(rounded.ofPath),
  };
}

/** The sizing's metal and minutes among them. */
function totalsOf(
  plan: EtchPlan,
  { measures, metal, sizing }: Pick<PlanFileInput, 'measures' | 'metal' | 'sizing'>,
): PlanFile['totals'] {
  const sized = sizing?.removedVolume ?? 0;
  const removedVolume = measures.stages.reduce((sum, stage) => sum + stage.removedVolume, sized);
  const removedMass = massOf(removedVolume, metal);
  const sheetMass = metal.sheetVolume === undefined ? null : massOf(metal.sheetVolume + sized, metal);
  const litres = metal.hydrogenLitresPerGram;
  return {
    minutes: totalMinutes(plan, sizing),
    removedVolume: round(removedVolume),
    removedMass,
    partMass: sheetMass === null || removedMass === null ? null : round(sheetMass - removedMass),
    hydrogenLitres: litres === undefined || removedMass === null ? null : round(removedMass * litres),
  };
}

function totalMinutes(plan: EtchPlan, sizing: SizingRecord | undefined): number {
  return round(plan.stages.reduce((sum, stage) => sum + stage.minutes, sizing?.minutes ?? 0));
}

function budgetRecord({ remedy: { changes, sum }, ...budget }: ToleranceBudget): BudgetRecord {
  return roundFigures({ ...budget, remedy: { changes, ...sum[worseSide(sum)] } });
}

function withdrawalRecord(choice: WithdrawalChoice): WithdrawalRecord {
  const { regions, down, rows, minutes, worstDeviation, steps = null } = choice;
  return roundFigures({ regions, down: [down.x, down.y] as const, rows, minutes, worstDeviation, steps });
}

/** Grams (M5.2); 1 g/cm³ is 0.001 g/mm³. */
function massOf(volume: number, { density }: MetalFacts): number | null {
  return density === undefined ? null : round((volume * density) / 1000);
}

function roundContour({ closed, vertices }: Contour): Contour {
  return { closed, vertices: vertices.map(([x, y, bulge]) => [round(x), round(y), roundBulge(bulge)]) };
}

function roundBulge(bulge: number): number {
  return Math.round(bulge * 1e12) / 1e12 + 0;
}

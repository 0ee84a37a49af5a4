/**
 * plan.json from a plan. Figures are rounded to a millionth (a nanometre, a nano-minute), bulges to 12 places: the same job
 * gives the same bytes, and the file is a third shorter than with every digit of a double.
 */
import type { Tank } from '#bath/bath-load.ts';
import type { Provenance } from '#bath/provenance.ts';
import type { ToleranceBudget } from '#checks/tolerance-budget.ts';
import type { Finding } from '#findings/finding.ts';
import { findingRecord } from '#findings/finding-record.ts';
import { assert } from '#geometry/assert.ts';
import { type Loop, loopArea, type Path } from '#geometry/span.ts';
import type { JobFile } from '#job/job-file.ts';
import type {
  Contour,
  LevelChoiceRecord,
  PlanFile,
  PlanFileRegion,
  ShownPlan,
  ShownRegion,
  ShownStage,
  WithdrawalRecord,
} from '#job/plan-file.ts';
import type {
  EtchPlan,
  LevelChoice,
  MaskingChoice,
  PlannedRegion,
  Stage,
  WithdrawalChoice,
} from '#plan/etch-plan.ts';
import { BATH_SHEET_PROVENANCE, bathRecord } from './bath-record.ts';
import { budgetRecord } from './budget-record.ts';
import { contourOfLoop, contourOfPath } from './contour.ts';
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
  readonly contours?: ContourMemory | undefined;
}

export interface PlanFileInput extends ShownPlanInput {
  readonly measures: PlanMeasures;
  readonly metal: MetalFacts;
  readonly budgets?: readonly ToleranceBudget[];
  readonly findings: readonly Finding[];
}

/** What turns volumes into masses and gas; a figure that nobody gave stays out of the plan. */
export interface MetalFacts {
  /** g/cm³ */
  readonly density: number | undefined;
  /** Litres at 0 °C and 101.325 kPa for each gram dissolved. */
  readonly hydrogenLitresPerGram: number | undefined;
  readonly tank?: Tank | undefined;
  /** Of the sheet before it is etched, mm³; undefined where it has no border. */
  readonly sheetVolume: number | undefined;
}

export function makePlanFile(input: PlanFileInput): PlanFile {
  const { plan, measures, metal } = input;
  const { regions, masking, stages, job, drawing, outline, cutouts, provenance, cautions } = showPlan(input);
  const knowsGas = metal.hydrogenLitresPerGram !== undefined && metal.density !== undefined;
  const bath = knowsGas
    ? bathRecord(plan, measures, { density: metal.density, tank: metal.tank })
    : undefined;
  return {
    format: 'isobath-plan',
    version: 1,
    job,
    drawing,
    outline,
    cutouts,
    regions: regions.map((region) => ({ ...region, reached: reachedRecord(region.id, measures) })),
    masking,
    stages: stages.map((stage, index) => {
      const volume = measures.stages[index]?.removedVolume;
      assert(volume !== undefined, 'every stage has been measured');
      return { ...stage, removedVolume: round(volume), removedMass: massOf(volume, metal) };
    }),
    totals: totalsOf(plan, measures, metal),
    ...(plan.levelChoices === undefined ? {} : { levelChoices: plan.levelChoices.map(choiceRecord) }),
    ...(input.budgets === undefined ? {} : { budgets: input.budgets.map(budgetRecord) }),
    ...(plan.maskings === undefined ? {} : { maskings: plan.maskings.map(maskingRecord) }),
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
  contours = new WeakMap(),
}: ShownPlanInput): ShownPlan {
  const outline = [...plan.sheet].sort((a, b) => loopArea(b) - loopArea(a))[0];
  const rounded = contourRounder(contours);
  return {
    job,
    drawing,
    outline: outline === undefined ? null : rounded.ofLoop(outline),
    cutouts: plan.sheet.filter((loop) => loop !== outline).map(rounded.ofLoop),
    regions: plan.regions.map((region) => regionRecord(region, rounded)),
    masking: plan.masking,
    stages: plan.stages.map((stage, index) =>
      // With a coat a stage no line of a later one is cut yet.
      stageRecord(stage, plan.masking === 're-mask' ? [] : plan.stages.slice(index + 1), rounded),
    ),
    totals: { minutes: totalMinutes(plan) },
    provenance,
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
  return {
    floorArea: round(reached.floorArea),
    share: round(reached.share),
    deepest: round(reached.deepest),
    shallowest: round(reached.shallowest),
  };
}

function stageRecord(stage: Stage, later: readonly Stage[], rounded: Rounder): ShownStage {
  return {
    number: stage.number,
    level: round(stage.level),
    etch: round(stage.etch),
    minutes: round(stage.minutes),
    startMinute: round(stage.startMinute),
    color: stage.color,
    regions: stage.regions,
    sealed: later.filter(({ lines }) => lines.length > 0).map(({ number }) => number),
    piece: stage.piece.map(rounded.ofLoop),
    opening: stage.opening.map(rounded.ofLoop),
    lines: stage.lines.map(rounded.ofPath),
  };
}

function totalsOf(plan: EtchPlan, measures: PlanMeasures, metal: MetalFacts): PlanFile['totals'] {
  const removedVolume = measures.stages.reduce((sum, stage) => sum + stage.removedVolume, 0);
  const removedMass = massOf(removedVolume, metal);
  const sheetMass = metal.sheetVolume === undefined ? null : massOf(metal.sheetVolume, metal);
  const litres = metal.hydrogenLitresPerGram;
  return {
    minutes: totalMinutes(plan),
    removedVolume: round(removedVolume),
    removedMass,
    partMass: sheetMass === null || removedMass === null ? null : round(sheetMass - removedMass),
    hydrogenLitres: litres === undefined || removedMass === null ? null : round(removedMass * litres),
  };
}

function totalMinutes(plan: EtchPlan): number {
  return round(plan.stages.reduce((sum, stage) => sum + stage.minutes, 0));
}

function withdrawalRecord(choice: WithdrawalChoice): WithdrawalRecord {
  const { regions, down, rows, minutes, worstDeviation, steps } = choice;
  return {
    regions,
    down: [round(down.x), round(down.y)],
    rows: rows.map((row) => ({
      minute: round(row.minute),
      waterline: round(row.waterline),
      speed: round(row.speed),
    })),
    minutes: round(minutes),
    worstDeviation: round(worstDeviation),
    steps:
      steps === undefined
        ? null
        : {
            stages: steps.stages,
            minutes: round(steps.minutes),
            worstDeviation: round(steps.worstDeviation),
          },
  };
}

function maskingRecord({ walls, ...choice }: MaskingChoice): MaskingChoice {
  return {
    ...choice,
    minutes: round(choice.minutes),
    worstShare: round(choice.worstShare),
    worstDeviation: round(choice.worstDeviation),
    overhang: round(choice.overhang),
    walls: walls.map(({ level, beside, allowance, fillet, corner }) => ({
      level: round(level),
      beside: round(beside),
      allowance: round(allowance),
      fillet: round(fillet),
      corner: round(corner),
    })),
  };
}

function choiceRecord({ stages, levels, worstShare, regions }: LevelChoice): LevelChoiceRecord {
  return {
    stages,
    levels: levels.map(round),
    worstShare: round(worstShare),
    regions: regions.map(({ id, level, share }) => ({ id, level: round(level), share: round(share) })),
  };
}

/** Grams; g/cm³ is a thousandth of a gram a cubic millimetre. */
function massOf(volume: number, { density }: MetalFacts): number | null {
  return density === undefined ? null : round((volume * density) / 1000);
}

function roundContour({ closed, vertices }: Contour): Contour {
  return { closed, vertices: vertices.map(([x, y, bulge]) => [round(x), round(y), roundBulge(bulge)]) };
}

/** Adding 0 turns −0 into 0. */
function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

function roundBulge(bulge: number): number {
  return Math.round(bulge * 1e12) / 1e12 + 0;
}

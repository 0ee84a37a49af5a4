/**
 * plan.json from a plan. Figures are rounded to a millionth (a nanometre, a nano-minute), bulges to 12 places: the same job
 * gives the same bytes, and the file is a third shorter than with every digit of a double.
 */
import type { Provenance } from '#bath/provenance.ts';
import type { Finding } from '#findings/finding.ts';
import { findingRecord } from '#findings/finding-record.ts';
import { assert } from '#geometry/assert.ts';
import { loopArea } from '#geometry/span.ts';
import type { EtchPlan, PlannedRegion, Stage } from '#plan/etch-plan.ts';
import { CAUTIONS } from './cautions.ts';
import { contourOfLoop, contourOfPath } from './contour.ts';
import type { Contour, PlanFile, PlanFileRegion, PlanFileStage } from './plan-file.ts';
import type { PlanMeasures } from './plan-measures.ts';

export interface PlanFileInput {
  /** The job as read, defaults filled in. */
  readonly job: unknown;
  readonly drawing: PlanFile['drawing'];
  readonly plan: EtchPlan;
  readonly measures: PlanMeasures;
  readonly metal: MetalFacts;
  readonly findings: readonly Finding[];
  readonly provenance: readonly Provenance[];
}

/** What turns volumes into masses and gas; a figure that nobody gave stays out of the plan. */
export interface MetalFacts {
  /** g/cm³ */
  readonly density: number | undefined;
  /** Litres at 0 °C and 101.325 kPa for each gram dissolved. */
  readonly hydrogenLitresPerGram: number | undefined;
  /** mm; undefined for a tapered sheet. */
  readonly thickness: number | undefined;
}

export function makePlanFile(input: PlanFileInput): PlanFile {
  const { plan, measures, metal } = input;
  const outline = [...plan.sheet].sort((a, b) => loopArea(b) - loopArea(a))[0];
  return {
    format: 'isobath-plan',
    version: 1,
    job: input.job,
    drawing: input.drawing,
    outline: outline === undefined ? null : roundContour(contourOfLoop(outline)),
    cutouts: plan.sheet.filter((loop) => loop !== outline).map((loop) => roundContour(contourOfLoop(loop))),
    regions: plan.regions.map((region) => regionRecord(region, measures)),
    stages: plan.stages.map((stage, index) => stageRecord({ stage, index, plan, measures, metal })),
    totals: totalsOf(plan, measures, metal),
    findings: input.findings.map(findingRecord),
    provenance: input.provenance,
    cautions: CAUTIONS,
  };
}

function regionRecord(region: PlannedRegion, measures: PlanMeasures): PlanFileRegion {
  const { depth, plus, minus } = region.asked;
  const reached = measures.regions.get(region.id);
  assert(reached !== undefined, 'every region has been measured');
  return {
    id: region.id,
    layer: region.layer,
    label: [round(region.label.x), round(region.label.y)],
    area: round(region.area),
    contours: region.loops.map((loop) => roundContour(contourOfLoop(loop))),
    asked: { depth: round(depth), plus: round(plus), minus: round(minus) },
    level: round(region.level),
    reached: {
      floorArea: round(reached.floorArea),
      share: round(reached.share),
      deepest: round(reached.deepest),
      shallowest: round(reached.shallowest),
    },
  };
}

interface StageInput {
  readonly stage: Stage;
  readonly index: number;
  readonly plan: EtchPlan;
  readonly measures: PlanMeasures;
  readonly metal: MetalFacts;
}

function stageRecord({ stage, index, plan, measures, metal }: StageInput): PlanFileStage {
  const volume = measures.stages[index]?.removedVolume;
  assert(volume !== undefined, 'every stage has been measured');
  return {
    number: stage.number,
    level: round(stage.level),
    etch: round(stage.etch),
    minutes: round(stage.minutes),
    startMinute: round(stage.startMinute),
    color: stage.color,
    regions: stage.regions,
    sealed: plan.stages.slice(index + 1).map((later) => later.number),
    piece: stage.piece.map((loop) => roundContour(contourOfLoop(loop))),
    opening: stage.opening.map((loop) => roundContour(contourOfLoop(loop))),
    lines: stage.lines.map((line) => roundContour(contourOfPath(line))),
    removedVolume: round(volume),
    removedMass: massOf(volume, metal),
  };
}

function totalsOf(plan: EtchPlan, measures: PlanMeasures, metal: MetalFacts): PlanFile['totals'] {
  const removedVolume = measures.stages.reduce((sum, stage) => sum + stage.removedVolume, 0);
  const removedMass = massOf(removedVolume, metal);
  const sheetArea = plan.sheet.reduce((sum, loop) => sum + loopArea(loop), 0);
  const sheetMass =
    metal.thickness === undefined || sheetArea <= 0 ? null : massOf(sheetArea * metal.thickness, metal);
  const litres = metal.hydrogenLitresPerGram;
  return {
    minutes: round(plan.stages.reduce((sum, stage) => sum + stage.minutes, 0)),
    removedVolume: round(removedVolume),
    removedMass,
    partMass: sheetMass === null || removedMass === null ? null : round(sheetMass - removedMass),
    hydrogenLitres: litres === undefined || removedMass === null ? null : round(removedMass * litres),
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

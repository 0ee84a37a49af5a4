/**
 * bands.dxf: along each drawn edge the band in which it comes out by root-sum-square, as closed outlines, in the unit and frame of the
 * drawing. BAND-01, BAND-02, … in the order of `lineBudgets` in plan.json; EDGES the drawn edges themselves, OUTLINE the sheet, NOTES (off)
 * what each band is. Nothing of it is to be cut.
 */

import { drawnStepsOfBoth } from '#checks/drawn-steps.ts';
import type { DrawingOut, LayerOut, OutlineOut } from '#drawing/write/drawing-out.ts';
import { writeDrawing } from '#drawing/write/write-drawing.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { growSpans } from '#geometry/grow/grow-spans.ts';
import type { Span } from '#geometry/span.ts';
import { LEAST_BAND } from '#geometry/tolerances.ts';
import type { Contour, LineBudgetRecord } from '#job/formats/plan-file.ts';
import type { Job } from '#job/job.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import { twoDigits } from '#units/two-digits.ts';
import { CAUTIONS } from './cautions.ts';
import { contourOfLoop, contourOfPath } from './contour.ts';
import { unitScale } from './scribe-drawing.ts';

export interface BandDrawingInput {
  readonly name: string;
  readonly plan: EtchPlan;
  readonly rules: Job['rules'];
  /** Of the plan, in its order. */
  readonly budgets: readonly LineBudgetRecord[];
  readonly unit: LengthUnit;
  /** Of figures in the notes: the job's. */
  readonly depthUnit: ShownUnit;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
}

/** Colours by number that are distinct on black and on white: red, green, blue, magenta, orange, brown. */
const COLORS = [1, 94, 5, 6, 30, 34] as const;

export function bandDrawing(input: BandDrawingInput): Uint8Array {
  const { plan, rules, budgets, unit } = input;
  const toUnit = unitScale(unit);
  const outlines: OutlineOut[] = [];
  const push = (layer: string, contour: Contour | undefined): void => {
    if (contour !== undefined) outlines.push({ layer, ...contour });
  };
  for (const loop of plan.sheet) push('OUTLINE', toUnit(contourOfLoop(loop)));
  const steps = drawnStepsOfBoth(plan, rules);
  steps.forEach(({ edges }, index) => {
    const half = budgets[index]?.byClock.outward.likely ?? 0;
    for (const span of edges) push('EDGES', toUnit(contourOfPath({ closed: false, spans: [span] })));
    if (half < LEAST_BAND) return;
    for (const loop of growSpans(edges, half)) push(bandLayer(index), toUnit(contourOfLoop(loop)));
  });
  const drawing: DrawingOut = {
    unit,
    layers: layersOf(steps.length),
    outlines,
    notes: notesOf(
      input,
      steps.flatMap(({ edges }) => edges),
    ),
  };
  return writeDrawing(drawing);
}

function bandLayer(index: number): string {
  return `BAND-${twoDigits(index + 1)}`;
}

function layersOf(bands: number): LayerOut[] {
  return [
    ...Array.from({ length: bands }, (_, index) => ({
      name: bandLayer(index),
      color: COLORS[index % COLORS.length] ?? COLORS[0],
      shown: true,
    })),
    { name: 'EDGES', color: 8, shown: true },
    { name: 'OUTLINE', color: 7, shown: true },
    { name: 'NOTES', color: 8, shown: false },
  ];
}

function notesOf(
  { name, planHash, plan, budgets, unit, depthUnit }: BandDrawingInput,
  edges: readonly Span[],
): DrawingOut['notes'] {
  const spans = [...plan.sheet.flat(), ...edges];
  const box = spans.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : boxOfSpans(spans);
  const height = Math.max(1, (box.maxX - box.minX) / 50);
  const texts = [
    `Bands of drawn edges: ${name}`,
    `Plan ${planHash}`,
    `Unit: ${unit}. Bands by root-sum-square, run by the clock. Nothing here is to be cut.`,
    ...budgets.map((budget, index) => bandNote(budget, index, depthUnit)),
    ...CAUTIONS.slice(0, 1),
  ];
  const millimetres = millimetresIn(unit);
  return texts.map((text, index) => ({
    layer: 'NOTES',
    at: [box.minX / millimetres, (box.minY - height * 1.8 * (index + 2)) / millimetres],
    height: height / millimetres,
    text,
  }));
}

function bandNote({ level, beside, byClock }: LineBudgetRecord, index: number, unit: ShownUnit): string {
  const figure = (length: number) => gaugedFigure(length, unit);
  const { outward, inward } = byClock;
  const neighbour = beside === 0 ? 'land' : `${figure(beside)} ${unit}`;
  return `${bandLayer(index)}: ${figure(level)} ${unit} beside ${neighbour}, ±${figure(outward.likely)} ${unit}; at worst +${figure(outward.worst)} -${figure(inward.worst)} ${unit}`;
}

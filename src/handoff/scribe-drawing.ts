/**
 * scribe.dxf: the lines to cut in the maskant, a layer a stage, in the unit and frame of the drawing they were planned from.
 * In R12 for old readers too. Lines and arcs only, one polyline a scribe line; no segment shorter than 0.01 mm. The sheet's outline and the notes have
 * layers of their own; NOTES is off, so that a machine program made from the file holds cuts alone.
 */

import type { DrawingOut, LayerOut, NoteOut, OutlineOut } from '#drawing/write/drawing-out.ts';
import { coordinateDecimals, writeDrawing } from '#drawing/write/write-drawing.ts';
import { writeOldDrawing } from '#drawing/write/write-old-drawing.ts';
import { itemAt } from '#geometry/assert.ts';
import { boxOfSpans } from '#geometry/box.ts';
import type { CuttingChoices } from '#job/fields/cutting-fields.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { gaugedFigure, type ShownUnit } from '#units/show-length.ts';
import { CAUTIONS } from './cautions.ts';
import { contourOfLoop, contourOfPath } from './contour.ts';
import { cutLines } from './cut-lines.ts';
import { LEAST_SEGMENT } from './followable-line.ts';
import { layerColorOf } from './layer-colors.ts';
import { mergeMicroSegments } from './merge-micro-segments.ts';
import { stagesPastEdge } from './run-over-edge.ts';
import { stageLayer } from './stage-layer.ts';

const OUTLINE_LAYER = 'OUTLINE';
const NOTES_LAYER = 'NOTES';

export interface ScribeDrawingInput {
  readonly name: string;
  readonly plan: Pick<EtchPlan, 'stages' | 'sheet' | 'masking'>;
  /** Of the whole plan, where the file holds one of its stages alone. */
  readonly stageCount?: number;
  /** The drawing's unit. */
  readonly unit: LengthUnit;
  /** Of depths in the notes: the job's. */
  readonly depthUnit: ShownUnit;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
  /** R12 for old readers. */
  readonly release?: ScribeRelease;
  /** How the lines are gone along; left out, as planned. */
  readonly choices?: Omit<CuttingChoices, 'split'>;
  /** mm that lines run on past the sheet's edge where they end at it. */
  readonly overrun?: number;
}

export type ScribeRelease = '2000' | 'r12';

const AS_PLANNED = { start: 'as-planned', direction: 'climb', overcut: 0, order: 'as-planned' } as const;

/** Bytes of scribe.dxf. */
export function scribeDrawing(input: ScribeDrawingInput): Uint8Array {
  const { plan, unit, choices = AS_PLANNED, overrun = 0 } = input;
  const toUnit = unitScale(unit);
  const outlines: OutlineOut[] = [];
  for (const loop of plan.sheet) pushContour(outlines, OUTLINE_LAYER, toUnit(contourOfLoop(loop)));
  for (const { stage, path } of cutLines(stagesPastEdge(plan, overrun), choices)) {
    pushContour(outlines, stageLayer('SCRIBE', stage.number), toUnit(contourOfPath(path)));
  }
  const drawing: DrawingOut = {
    unit,
    layers: layersOf(plan.stages, {
      stages: input.stageCount ?? plan.stages.length,
      masking: plan.masking,
    }),
    outlines,
    notes: notesOf(input),
  };
  return input.release === 'r12' ? writeOldDrawing(drawing) : writeDrawing(drawing);
}

/** Layer of a stage's scribe lines: SCRIBE-01, SCRIBE-02 … */

/** From millimetres to the drawing's unit as it will be written, micro segments merged. */
export function unitScale(unit: LengthUnit): (contour: Contour) => Contour | undefined {
  const millimetres = millimetresIn(unit);
  const decimals = coordinateDecimals(unit);
  const round = (value: number): number => Number(value.toFixed(decimals));
  return ({ closed, vertices }) =>
    mergeMicroSegments(
      { closed, vertices: vertices.map(([x, y, bulge]) => [x / millimetres, y / millimetres, bulge]) },
      { least: LEAST_SEGMENT / millimetres, round },
    );
}

function pushContour(outlines: OutlineOut[], layer: string, contour: Contour | undefined): void {
  if (contour !== undefined) outlines.push({ layer, ...contour });
}

function layersOf(stages: readonly Stage[], of: Parameters<typeof layerColorOf>[1]): LayerOut[] {
  const layers = stages.map((stage): LayerOut => {
    return { name: stageLayer('SCRIBE', stage.number), color: layerColorOf(stage, of), shown: true };
  });
  // 7 is the ink colour: black on white, white on black. 8 is grey.
  layers.push({ name: OUTLINE_LAYER, color: 7, shown: true }, { name: NOTES_LAYER, color: 8, shown: false });
  return layers;
}

/** Lines of text below the part: a fiftieth of its width high, at least 1 mm. */
function notesOf({ name, planHash, plan, unit, depthUnit }: ScribeDrawingInput): NoteOut[] {
  const millimetres = millimetresIn(unit);
  const spans = [
    ...plan.sheet.flat(),
    ...plan.stages.flatMap((stage) => stage.lines.flatMap((line) => line.spans)),
  ];
  const box = spans.length === 0 ? { minX: 0, minY: 0, maxX: 0, maxY: 0 } : boxOfSpans(spans);
  const height = Math.max(1, (box.maxX - box.minX) / 50);
  const texts = [
    `Scribe lines: ${name}`,
    `Plan ${planHash}`,
    `Unit: ${unit}. ${plan.masking === 're-mask' ? 'A new coat for each stage: cut only the layer of the coat that is on.' : 'Cut every line before the first dip; seal the lines of later stages.'}`,
    ...plan.stages.map((stage) => stageNote(stage, depthUnit)),
    itemAt(CAUTIONS, 0),
  ];
  return texts.map((text, index) => ({
    layer: NOTES_LAYER,
    at: [box.minX / millimetres, (box.minY - height * 1.8 * (index + 2)) / millimetres],
    height: height / millimetres,
    text,
  }));
}

function stageNote(stage: Stage, unit: ShownUnit): string {
  const regions = stage.regions.length > 12 ? `${stage.regions.length} regions` : stage.regions.join(' ');
  return `${stageLayer('SCRIBE', stage.number)}: to ${gaugedFigure(stage.level, unit)} ${unit}, ${stage.minutes.toFixed(1)} min; ${regions}`;
}

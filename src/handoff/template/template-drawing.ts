/**
 * template-01.dxf and so on, to cut a template from: closed slots on SLOT-01, SLOT-02 … by stage, the sheet's edge on SHEET, tooling
 * holes on HOLES, the part's edge on PART; stage marks, words and the scale-check square on layers of their own, to be engraved or left out. True arcs, in
 * the unit and frame of the drawing that the plan was made from, stretched where the template is.
 */

import type { DrawingOut, LayerOut, NoteOut, OutlineOut } from '#drawing/write/drawing-out.ts';
import { writeDrawing } from '#drawing/write/write-drawing.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { contourOfPath } from '#handoff/contour.ts';
import { layerColorOf } from '#handoff/layer-colors.ts';
import { unitScale } from '#handoff/scribe-drawing.ts';
import { stageLayer } from '#handoff/stage-layer.ts';
import type { Stage } from '#plan/etch-plan.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import type { InkText } from './ink.ts';
import { templateLabel } from './template-label.ts';
import type { TemplateInput, TemplateSet } from './template-set.ts';
import { circleOf } from './template-sheet.ts';

export interface TemplateDrawingInput {
  readonly set: TemplateSet;
  /** From 1. */
  readonly number: number;
  readonly planHash: string;
  readonly unit: LengthUnit;
  /** mm: where the plan's frame has its origin in the drawing's own; undefined where the two are one. */
  readonly origin?: Point | undefined;
}

export function templateDrawing({
  set,
  number,
  planHash,
  unit,
  origin = { x: 0, y: 0 },
}: TemplateDrawingInput): Uint8Array {
  const { sheet, templates, input } = set;
  const toUnit = unitScale(unit);
  const millimetres = millimetresIn(unit);
  const by = { x: origin.x / millimetres, y: origin.y / millimetres };
  const outlines: OutlineOut[] = [];
  const draw = (layer: string, path: Path): void => {
    const contour = toUnit(contourOfPath(path));
    if (contour !== undefined) outlines.push(movedOutline({ layer, ...contour }, by));
  };
  const slots = itemAt(templates, number - 1);
  const label = templateLabel(set, number, planHash);
  const marks = itemAt(set.marks, number - 1);
  for (const { outline, stage } of slots) {
    for (const loop of outline) draw(stageLayer('SLOT', stage.number), { closed: true, spans: loop });
  }
  draw('SHEET', { closed: true, spans: sheet.outline });
  for (const edge of sheet.part) draw('PART', { closed: true, spans: edge });
  for (const hole of sheet.holes) draw('HOLES', { closed: true, spans: circleOf(hole) });
  for (const { path, stage } of [...marks.flatMap(({ lines }) => lines), ...label.lines]) {
    draw(stage === undefined ? 'WORDS' : stageLayer('MARK', stage.number), path);
  }
  draw('SCALE', label.square);
  const drawing: DrawingOut = {
    unit,
    layers: layersOf([...new Set(slots.map(({ stage }) => stage))], input.plan),
    outlines,
    notes: [...label.texts, ...marks.flatMap(({ texts }) => texts), ...itemAt(set.names, number - 1)].map(
      (text) => noteOf({ ...text, at: movePoint(text.at, origin) }, unit),
    ),
  };
  return writeDrawing(drawing);
}

/** Moved once it is written in vertices and bulges, so that a far origin costs the arcs nothing. */
function movedOutline({ vertices, ...outline }: OutlineOut, by: Point): OutlineOut {
  return { ...outline, vertices: vertices.map(([x, y, bulge]) => [x + by.x, y + by.y, bulge]) };
}

/** Each stage in one colour number, the same on every template of the plan. */
function layersOf(shown: readonly Stage[], { stages, masking }: TemplateInput['plan']): LayerOut[] {
  const layers = shown.flatMap((stage) => {
    const color = layerColorOf(stage, { stages: stages.length, masking });
    return (['SLOT', 'MARK'] as const).map((kind): LayerOut => {
      return { name: stageLayer(kind, stage.number), color, shown: true };
    });
  });
  // 7 is the ink colour: black on white, white on black. 8 is grey.
  for (const name of ['SHEET', 'HOLES', 'PART']) layers.push({ name, color: 7, shown: true });
  for (const name of ['WORDS', 'SCALE']) layers.push({ name, color: 8, shown: true });
  return layers;
}

function noteOf({ at, height, text }: InkText, unit: LengthUnit): NoteOut {
  const millimetres = millimetresIn(unit);
  return { layer: 'WORDS', at: [at.x / millimetres, at.y / millimetres], height: height / millimetres, text };
}

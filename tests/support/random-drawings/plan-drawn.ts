/** A drawn part read from its DXF text, asked by points and planned: the whole way that a job takes, files apart. */

import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { SheetSide } from '#job/job.ts';
import { findRegions } from '#part/find-regions.ts';
import type { Part } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { runJob } from '#run/run-job.ts';
import type { DrawnCurve } from './drawn-part.ts';
import { BACK, CUTS, type DrawnPart, SHEET } from './drawn-part.ts';
import { type DxfForm, dxfOfCurves } from './dxf-of-curves.ts';

export interface DrawnAsk {
  /** mm, in the drawing's frame. */
  readonly at: Point;
  readonly depth: number;
  readonly face?: SheetSide;
}

/** A drawing of a part, and of its far face where that has one of its own. */
export interface Drawn extends DxfForm {
  readonly curves: readonly DrawnCurve[];
  readonly own?: readonly DrawnCurve[];
  /** What the job says of the far face. */
  readonly far?: object;
}

export interface PlannedDrawing {
  readonly findings: readonly Finding[];
  readonly part: Part | undefined;
  readonly plan: EtchPlan | undefined;
  /** Metal taken from all faces, mm³. */
  readonly removed: number | undefined;
}

/** What is asked of the part: its depths dealt to the regions, largest first. */
export function asksOf({ curves, depths }: DrawnPart): DrawnAsk[] {
  const text = dxfOfCurves(curves, { unit: 'mm', isExploded: false });
  const drawing = readDrawing(new TextEncoder().encode(text), {});
  const layers = { outline: [SHEET], regions: undefined, ignore: [] };
  const { part } = findRegions(drawing, { layers, joinTolerance: 0.05 });
  return [...part.regions]
    .sort((a, b) => b.area - a.area)
    .slice(1)
    .map(({ label }, i) => ({ at: label, depth: depths[i % depths.length] ?? 0 }))
    .filter(({ depth }) => depth > 0);
}

export async function planDrawn(
  part: DrawnPart,
  drawn: Drawn,
  asks: readonly DrawnAsk[],
): Promise<PlannedDrawing> {
  const size = drawn.unit === 'in' ? 1 / 25.4 : 1;
  const hasLayer = (name: string) =>
    [...drawn.curves, ...(drawn.own ?? [])].some(({ layer }) => layer === name);
  const job = {
    format: 'isobath-job',
    version: 1,
    name: 'Drawn part',
    drawing: 'drawn-part.dxf',
    units: 'mm',
    layers: {
      outline: [SHEET],
      ...(hasLayer(BACK) ? { far: [BACK] } : {}),
      ...(hasLayer(CUTS) ? { both: [CUTS] } : {}),
    },
    ...(drawn.far === undefined ? {} : { far: drawn.far }),
    stock: { thickness: 6 },
    process: {
      etchFactor: part.factor,
      rate: 0.025,
      edgeDatum: part.edgeDatum,
      masking: part.masking,
    },
    requirements: [
      ...asks.map(({ at, depth, face }) => ({
        at: [at.x * size, at.y * size],
        depth,
        plus: part.plus,
        minus: part.minus,
        ...(face === undefined ? {} : { face }),
      })),
      ...(hasLayer(CUTS) ? [{ layer: CUTS, through: part.through ?? true, face: 'both' }] : []),
    ],
    levels: part.levels,
  };
  const bytesOf = (curves: readonly DrawnCurve[]) => new TextEncoder().encode(dxfOfCurves(curves, drawn));
  const {
    findings,
    part: found,
    plan,
    planFile,
  } = await runJob(
    {
      jobText: JSON.stringify(job),
      drawingName: 'drawn-part.dxf',
      drawingBytes: bytesOf(drawn.curves),
      ...(drawn.own === undefined ? {} : { farDrawingBytes: bytesOf(drawn.own) }),
    },
    { withoutFiles: true },
  );
  return { findings, part: found, plan, removed: planFile?.totals.removedVolume };
}

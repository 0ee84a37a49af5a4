/** A drawn part read from its DXF text, asked by points and planned: the whole way that a job takes, files apart. */

import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import { findRegions } from '#part/find-regions.ts';
import type { Part } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { runJob } from '#run/run-job.ts';
import type { DrawnCurve } from './drawn-part.ts';
import { type DrawnPart, SHEET } from './drawn-part.ts';
import { type DxfForm, dxfOfCurves } from './dxf-of-curves.ts';

export interface DrawnAsk {
  /** mm, in the drawing's frame. */
  readonly at: Point;
  readonly depth: number;
}

export interface PlannedDrawing {
  readonly findings: readonly Finding[];
  readonly part: Part | undefined;
  readonly plan: EtchPlan | undefined;
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
  drawn: DxfForm & { readonly curves: readonly DrawnCurve[] },
  asks: readonly DrawnAsk[],
): Promise<PlannedDrawing> {
  const size = drawn.unit === 'in' ? 1 / 25.4 : 1;
  const job = {
    format: 'isobath-job',
    version: 1,
    name: 'Drawn part',
    drawing: 'drawn-part.dxf',
    units: 'mm',
    layers: { outline: [SHEET] },
    stock: { thickness: 6 },
    process: {
      etchFactor: part.factor,
      rate: 0.025,
      edgeDatum: part.edgeDatum,
      masking: part.masking,
    },
    requirements: asks.map(({ at, depth }) => ({
      at: [at.x * size, at.y * size],
      depth,
      plus: part.plus,
      minus: part.minus,
    })),
    levels: part.levels,
  };
  const {
    findings,
    part: found,
    plan,
  } = await runJob(
    {
      jobText: JSON.stringify(job),
      drawingName: 'drawn-part.dxf',
      drawingBytes: new TextEncoder().encode(dxfOfCurves(drawn.curves, drawn)),
    },
    { withoutFiles: true },
  );
  return { findings, part: found, plan };
}

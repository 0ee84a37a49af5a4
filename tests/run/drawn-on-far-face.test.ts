/**
 * M9.1 random parts whose pockets are drawn for the far face come out as they would on the near one, in the part's frame: on a layer
 * seen through, on one seen from the far face, and in a drawing of their own that is turned over, turned and shifted.
 */
import { expect, test } from 'vitest';
import { loopsArea, type Span, spansLength } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { runJob } from '#run/run-job.ts';
import { type Movement, moveSpan } from '#support/geometry/move-spans.ts';
import { drawPart } from '#support/random-drawings/draw-part.ts';
import { type DrawnCurve, type DrawnPart, SHEET } from '#support/random-drawings/drawn-part.ts';
import { dxfOfCurves } from '#support/random-drawings/dxf-of-curves.ts';
import { asksOf, type DrawnAsk } from '#support/random-drawings/plan-drawn.ts';
import { PROPERTY_SEED } from '#support/seeds/seed-of-run.ts';

const BACK = 'BACK';

interface Drawn {
  readonly curves: readonly DrawnCurve[];
  readonly own?: readonly DrawnCurve[];
  readonly job: object;
}

async function planOf(
  part: DrawnPart,
  asks: readonly DrawnAsk[],
  { curves, own, job }: Drawn,
): Promise<EtchPlan> {
  const bytesOf = (drawn: readonly DrawnCurve[]) =>
    new TextEncoder().encode(dxfOfCurves(drawn, { unit: 'mm', isExploded: false }));
  const { plan, findings } = await runJob(
    {
      jobText: JSON.stringify({
        format: 'isobath-job',
        version: 1,
        name: 'Drawn part',
        drawing: 'drawn.dxf',
        layers: { outline: [SHEET] },
        stock: { thickness: 9 },
        process: { etchFactor: part.factor, rate: 0.025, edgeDatum: part.edgeDatum, masking: part.masking },
        requirements: asks.map(({ at, depth }) => ({
          at: [at.x, at.y],
          depth,
          plus: part.plus,
          minus: part.minus,
          ...('far' in job ? { face: 'far' } : {}),
        })),
        levels: part.levels,
        ...job,
      }),
      drawingName: 'drawn.dxf',
      drawingBytes: bytesOf(curves),
      ...(own === undefined ? {} : { farDrawingBytes: bytesOf(own) }),
    },
    { withoutFiles: true },
  );
  if (plan === undefined) throw new Error(JSON.stringify(findings));
  return plan;
}

/** What a face comes to, stage by stage: lines to half a micrometre, areas to half a thousandth of a mm². */
function figuresOf({ stages }: EtchPlan) {
  return stages.map(({ level, piece, opening, lines }) => ({
    level,
    piece: expect.closeTo(loopsArea(piece), 3),
    opening: expect.closeTo(loopsArea(opening), 3),
    lines: expect.closeTo(
      lines.reduce((sum, { spans }) => sum + spansLength(spans), 0),
      3,
    ),
  }));
}

function measured({ stages }: EtchPlan) {
  return stages.map(({ level, piece, opening, lines }) => ({
    level,
    piece: loopsArea(piece),
    opening: loopsArea(opening),
    lines: lines.reduce((sum, { spans }) => sum + spansLength(spans), 0),
  }));
}

function moved(curves: readonly DrawnCurve[], movement: Movement): DrawnCurve[] {
  return curves.flatMap((curve) =>
    'loop' in curve ? [{ ...curve, loop: curve.loop.map((span: Span) => moveSpan(span, movement)) }] : [],
  );
}

const CASES = Array.from({ length: 22 }, (_, index) => index);

test.each(CASES)('M9.1: random part %d', { tags: ['long'] }, async (index) => {
  const part = drawPart(PROPERTY_SEED, index);
  const asks = asksOf(part);
  // What is moved here is made of lines and arcs.
  if (asks.length === 0 || part.curves.some((curve) => 'spline' in curve)) return;
  const [sheet, pockets] = [true, false].map((isSheet) =>
    part.curves.filter(({ layer }) => (layer === SHEET) === isSheet),
  ) as [DrawnCurve[], DrawnCurve[]];
  const back = pockets.map((curve) => ({ ...curve, layer: BACK }));
  const near = await planOf(part, asks, { curves: part.curves, job: {} });
  const expected = figuresOf(near);

  const layers = { outline: [SHEET], far: [BACK] };
  const through = await planOf(part, asks, { curves: [...sheet, ...back], job: { layers, far: {} } });
  expect(measured(through.far ?? near)).toEqual(expected);
  expect(through.far).toBeDefined();

  // About the line x = 31: mirrored about the x axis and turned by half a turn.
  const over: Movement = { mirrored: true, turn: Math.PI, factor: 1, shift: { x: 62, y: 0 } };
  const mirror = { from: [31, -5], to: [31, 40] };
  const seen = await planOf(part, asks, {
    curves: [...sheet, ...moved(back, over)],
    job: { layers, far: { view: 'far', mirror } },
  });
  expect(measured(seen.far ?? near)).toEqual(expected);

  const away: Movement = { mirrored: true, turn: 0.7, factor: 1, shift: { x: -310, y: 95 } };
  const place = (x: number, y: number) => {
    const span = moveSpan({ kind: 'line', start: { x, y }, end: { x: x + 1, y } }, away);
    return [span.start.x, span.start.y];
  };
  const points = {
    near: [
      [3, 4],
      [66, 29],
    ],
    far: [place(3, 4), place(66, 29)],
  };
  const own = await planOf(part, asks, {
    curves: sheet,
    own: moved(back, away),
    job: { layers: { outline: [SHEET] }, far: { drawing: 'back.dxf', view: 'far', points } },
  });
  expect(measured(own.far ?? near)).toEqual(expected);
});

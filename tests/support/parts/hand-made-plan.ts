/** A plan written by hand, so that the hand-off files can be judged without the planner: a plate, a round pocket, a slot and an open line. */
import { arcSpan, type Loop, lineSpan, type Path, type Span } from '#geometry/span.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';

const plate = polygon([0, 0], [120, 0], [120, 80], [0, 80]);
const round = circle(30, 40, 12.5);
const slot = slotLoop({ x: 60, y: 20, length: 40, radius: 6 });

/** Three quarters of a rounded frame that ends on the slot's line: open. */
const open: Path = {
  closed: false,
  spans: [
    lineSpan({ x: 60, y: 26 }, { x: 60, y: 60 }),
    arcSpan({ center: { x: 65, y: 60 }, radius: 5, from: Math.PI, sweep: -Math.PI / 2 }),
    lineSpan({ x: 65, y: 65 }, { x: 100, y: 65 }),
  ],
};

export const handMadePlan: EtchPlan = {
  arrangement: { vertices: [], edges: [], faces: [] },
  regionOfFace: [],
  masking: 'peel-next',
  regions: [
    {
      id: 'R01',
      face: 1,
      layer: 'POCKETS',
      layers: ['POCKETS'],
      label: { x: 30, y: 40 },
      area: Math.PI * 15 ** 2,
      loops: [circle(30, 40, 15)],
      asked: { depth: 2.5, plus: 0.05, minus: 0.05 },
      level: 2.5,
    },
    {
      id: 'R02',
      face: 2,
      layer: 'SLOTS',
      layers: ['SLOTS'],
      label: { x: 80, y: 20 },
      area: 40 * 14 + Math.PI * 49,
      loops: [slotLoop({ x: 60, y: 20, length: 40, radius: 7 })],
      asked: { depth: 1, plus: 0.05, minus: 0.05 },
      level: 1,
    },
  ],
  sheet: [plate],
  stages: [
    stage({
      number: 1,
      level: 2.5,
      etch: 1.5,
      startMinute: 0,
      color: '#0b3c5d',
      regions: ['R01'],
      piece: [round],
      lines: [{ closed: true, spans: round }],
    }),
    stage({
      number: 2,
      level: 1,
      etch: 1,
      startMinute: 60,
      color: '#7fb7be',
      regions: ['R02'],
      piece: [slot],
      opening: [round, slot],
      lines: [{ closed: true, spans: slot }, open],
    }),
  ],
  etchFactor: [[1, 1]],
  rate: 0.025,
  findings: [],
};

function stage(given: Omit<Stage, 'minutes' | 'opening' | 'base'> & { opening?: readonly Loop[] }): Stage {
  return { base: 0, minutes: given.etch / 0.025, opening: given.piece, ...given };
}

function polygon(...corners: readonly (readonly [number, number])[]): Span[] {
  const points = corners.map(([x, y]) => ({ x, y }));
  return points.map((start, index) => lineSpan(start, points[(index + 1) % points.length] ?? start));
}

function circle(x: number, y: number, radius: number): Span[] {
  return [0, Math.PI].map((from) => arcSpan({ center: { x, y }, radius, from, sweep: Math.PI }));
}

/** From `x` to `x + length` along y, round at both ends. */
function slotLoop({
  x,
  y,
  length,
  radius,
}: {
  x: number;
  y: number;
  length: number;
  radius: number;
}): Span[] {
  return [
    lineSpan({ x, y: y - radius }, { x: x + length, y: y - radius }),
    arcSpan({ center: { x: x + length, y }, radius, from: -Math.PI / 2, sweep: Math.PI }),
    lineSpan({ x: x + length, y: y + radius }, { x, y: y + radius }),
    arcSpan({ center: { x, y }, radius, from: Math.PI / 2, sweep: Math.PI }),
  ];
}

/** The made-up grid of pockets as files: a drawing, and a job that asks for its three depths. */
import { bulgeOf, type Loop } from '#geometry/span.ts';
import { pocketGrid } from '#support/parts/pocket-grid.ts';
import { dxfText, outline } from './dxf-text.ts';

export interface PocketGridFiles {
  readonly drawing: string;
  readonly job: string;
}

export function pocketGridFiles(columns: number, rows: number): PocketGridFiles {
  const { sheet, outlines, depths } = pocketGrid(columns, rows);
  const layerOf = (index: number) => (index < 0 ? 'SHEET' : `D${(depths[index]?.[2] ?? 0) * 10}`);
  const names = ['SHEET', ...new Set(outlines.map((_, index) => layerOf(index)))];
  const drawing = dxfText({
    insunits: 4,
    layers: names.map((name, index) => ({ name, color: index + 1 })),
    entities: [sheet, ...outlines].map((loop, index) => outline(layerOf(index - 1), vertices(loop))),
  });
  const job = {
    format: 'isobath-job',
    version: 1,
    name: 'Pocket grid',
    drawing: 'grid.dxf',
    layers: { outline: ['SHEET'] },
    stock: { alloy: 'al-2024-t3', thickness: 5 },
    process: { etchFactor: 1, rate: 0.03 },
    requirements: [1, 2.2, 3].map((depth) => ({ layer: `D${depth * 10}`, depth, plus: 0.05, minus: 0.05 })),
    levels: 'as-drawn',
  };
  return { drawing, job: JSON.stringify(job) };
}

function vertices(loop: Loop) {
  return loop.map((span) => ({ ...span.start, bulge: bulgeOf(span) }));
}

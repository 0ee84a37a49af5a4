/** The made-up grid of pockets as files: a drawing, and a job that asks for its three depths. */
import { bulgeOf, type Loop } from '#geometry/span.ts';
import { differentPockets, meshOfHoles } from '#support/parts/drawn-anew.ts';
import { type PocketGrid, pocketGrid } from '#support/parts/pocket-grid.ts';
import { circle, dxfText, outline } from './dxf-text.ts';

export interface PocketGridFiles {
  readonly drawing: string;
  readonly job: string;
}

export function pocketGridFiles(columns: number, rows: number): PocketGridFiles {
  return filesOf(pocketGrid(columns, rows));
}

/** The same of pockets of which no two are alike. */
export function differentPocketsFiles(columns: number, rows: number, seed: number): PocketGridFiles {
  return filesOf(differentPockets(columns, rows, seed));
}

/** A thin sheet with a mesh of holes in it, all etched to one depth. */
export function meshFiles(columns: number, rows: number, seed: number): PocketGridFiles {
  const { sheet, holes } = meshOfHoles(columns, rows, seed);
  const drawing = dxfText({
    insunits: 4,
    layers: [
      { name: 'SHEET', color: 1 },
      { name: 'HOLES', color: 2 },
    ],
    entities: [
      outline('SHEET', vertices(sheet)),
      ...holes.map(({ center, radius }) => circle('HOLES', center, radius)),
    ],
  });
  const job = {
    format: 'isobath-job',
    version: 1,
    name: 'Mesh',
    drawing: 'grid.dxf',
    layers: { outline: ['SHEET'] },
    stock: { alloy: 'al-2024-t3', thickness: 0.2 },
    process: { etchFactor: 1, rate: 0.03 },
    rules: { minWeb: 0.05, minLineSpacing: 0.1, minPieceWidth: 0.1, minLandWidth: 0.1 },
    requirements: [{ layer: 'HOLES', depth: 0.1, plus: 0.02, minus: 0.02 }],
    levels: 'as-drawn',
  };
  return { drawing, job: JSON.stringify(job) };
}

function filesOf({ sheet, outlines, depths }: PocketGrid): PocketGridFiles {
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

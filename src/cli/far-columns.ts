/** Further columns of places on a part that is etched on both faces: what the far one has there, from its own surface. */
import type { PlaceDepth } from '#run/depth-job.ts';
import type { EtchedPart } from '#run/etched-part.ts';
import type { CsvRow } from './csv-text.ts';

const COLUMNS = ['farDepth', 'farTarget', 'farStage'];

export function columnsOf(own: readonly string[], { far }: EtchedPart): readonly string[] {
  return far === undefined ? own : [...own, ...COLUMNS];
}

export function farColumns(far: PlaceDepth['far']): CsvRow {
  if (far === undefined) return {};
  return { farDepth: far.depth, farTarget: far.target, farStage: far.stage };
}

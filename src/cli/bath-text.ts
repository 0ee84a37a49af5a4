/** The bath sheet as lines of text for under a stage table: what the run does to the bath, and to the air above it. */
import type { RunResult } from '#run/run-job.ts';

type BathSheet = NonNullable<RunResult['planFile']>['bathSheet'];

/** None where the bath is not calculated. */
export function bathText(sheet: BathSheet): string[] {
  if (sheet === undefined) return [];
  const { metal, caustic, hydrogen, load, peak, heat } = sheet;
  const gas = `${hydrogen.at25C.toFixed(1)} l hydrogen at 25 °C`;
  return [
    'The bath, and the air above it:',
    `${metal.toFixed(1)} g dissolved, ${caustic.toFixed(1)} g caustic soda used up, ${gas}`,
    `peak, ${peak.stage === 0 ? 'sizing' : `in stage ${peak.stage}`}: ${peak.hydrogen.toFixed(2)} l/min hydrogen at 25 °C, at least ${peak.ventilation.toFixed(0)} l/min of air to extract`,
    ...(heat === undefined ? [] : [heatLine(heat)]),
    ...(load === undefined ? [] : [loadLine(load)]),
    '',
  ];
}

function heatLine({
  parts,
  kilojoules,
  warmer,
  faster,
}: NonNullable<NonNullable<BathSheet>['heat']>): string {
  const of = parts === 1 ? '' : ` of ${parts} parts`;
  const what = `heat${of} ${kilojoules.toFixed(0)} kJ`;
  if (warmer === undefined || faster === undefined) return what;
  return `${what}: at most ${warmer.toFixed(1)} K warmer, ${(100 * faster).toFixed(0)} % faster`;
}

function loadLine({ before, after, limit }: NonNullable<NonNullable<BathSheet>['load']>): string {
  return `dissolved metal ${before.toFixed(1)} g/L before, ${after.toFixed(1)} after, ${limit.toFixed(1)} at most`;
}

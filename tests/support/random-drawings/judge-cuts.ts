/** One random part, planned: every border of a piece cut once, the sheet's edge never, and no border left a chord. */
import { cutFaults } from '#support/geometry/cut-faults.ts';
import type { TrialFailure } from '#support/seeds/trials.ts';
import { drawPart } from './draw-part.ts';
import { asksOf, planDrawn } from './plan-drawn.ts';
import { linesOf, svgOfLines } from './svg-of-plans.ts';

export async function judgeCuts(seed: number, index: number): Promise<TrialFailure[]> {
  const part = drawPart(seed, index);
  const asks = asksOf(part);
  if (asks.length === 0) return [];
  const { plan } = await planDrawn(part, { curves: part.curves, unit: 'mm', isExploded: false }, asks);
  if (plan === undefined) return [];
  const chords = plan.findings.filter(({ code }) => code === 'border-left-as-chords').map(({ code }) => code);
  const faults = [...chords, ...cutFaults(plan)];
  if (faults.length === 0) return [];
  const title = `${part.kind}, ${part.edgeDatum}, ${part.masking}`;
  return [
    {
      what: `${title}: ${faults.join('; ')}`,
      picture: () =>
        svgOfLines(title, [
          { color: '#999', width: 1, spans: plan.regions.flatMap(({ loops }) => loops.flat()) },
          { color: '#d22', width: 3, spans: linesOf(plan) },
        ]),
    },
  ];
}

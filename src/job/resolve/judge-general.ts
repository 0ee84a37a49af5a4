/** A bath's general figure gets the plan going, but it is not this bath's figure; without one there is no plan. */
import type { Bath } from '#bath/known-figures.ts';
import type { Sourced } from '#bath/provenance.ts';
import { type Finding, finding } from '#findings/finding.ts';

const PLACES = { 'etch factor': 'process.etchFactor', 'etch rate': 'process.rate' } as const;
const UNITS = { 'etch factor': 'undercut / depth', 'etch rate': 'mm/min' } as const;

export function judgeGeneral(
  figure: keyof typeof PLACES,
  value: Sourced | undefined,
  bath: Bath | undefined,
): Finding[] {
  const place = { path: PLACES[figure] };
  if (value === undefined || bath === undefined) {
    return [finding('process-figure-missing', { figure, bath: bath?.name }, place)];
  }
  // A shop's own figure may be a measured one.
  if (value.kind === 'measured') return [];
  const facts = { figure, value: value.value, unit: UNITS[figure], bath: bath.name };
  return [finding('process-figure-not-measured', facts, place)];
}

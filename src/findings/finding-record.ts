/** A finding as it stands in plan.json and in what `--json` prints: words and figures, no code needed to read it. */
import type { Finding } from './finding.ts';
import { sayFinding } from './say-finding.ts';
import type { Severity } from './severity.ts';

export interface FindingRecord {
  readonly code: string;
  readonly severity: Severity;
  readonly message: string;
  readonly remedy: string;
  /** mm, in the drawing's frame. */
  readonly at: readonly [number, number] | null;
  readonly regions: readonly string[];
  readonly value: number | null;
  readonly limit: number | null;
  /** Path in the job file, line of the file, layer of the drawing, where that is the place. */
  readonly path?: string;
  readonly line?: number;
  readonly layer?: string;
}

export function findingRecord(finding: Finding): FindingRecord {
  const { code, severity, place } = finding;
  const { reason, remedy, value, limit } = sayFinding(finding);
  return {
    code,
    severity,
    message: reason,
    remedy,
    at: place.at === undefined ? null : [round(place.at.x), round(place.at.y)],
    regions: place.regions ?? [],
    value: figure(value),
    limit: figure(limit),
    ...(place.path === undefined ? {} : { path: place.path }),
    ...(place.line === undefined ? {} : { line: place.line }),
    ...(place.layer === undefined ? {} : { layer: place.layer }),
  };
}

/** JSON has no infinity: a figure that is none is left out. */
function figure(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : round(value);
}

/** To a nanometre; never −0. */
function round(value: number): number {
  return Math.round(value * 1e6) / 1e6 + 0;
}

/** A finding as it stands in plan.json and in what `--json` prints: words and figures, no code needed to read it. */
import { bulgeOf, type Path } from '#geometry/span.ts';
import { toMillionth as round } from '#units/round-figures.ts';
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
  /** The file, where it is neither the job nor its drawing. */
  readonly file?: string;
  /** Path in the job file, line of the file, layer of the drawing, where that is the place. */
  readonly path?: string;
  readonly line?: number;
  readonly layer?: string;
  /** What to highlight, as contours: vertices [x, y, bulge], mm. */
  readonly outline?: readonly OutlineRecord[];
}

export interface OutlineRecord {
  readonly closed: boolean;
  readonly vertices: readonly (readonly [x: number, y: number, bulge: number])[];
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
    ...(place.file === undefined ? {} : { file: place.file }),
    ...(place.path === undefined ? {} : { path: place.path }),
    ...(place.line === undefined ? {} : { line: place.line }),
    ...(place.layer === undefined ? {} : { layer: place.layer }),
    ...(place.outline === undefined ? {} : { outline: place.outline.map(outlineRecord) }),
  };
}

function outlineRecord({ closed, spans }: Path): OutlineRecord {
  const vertices = spans.map(
    (span) => [round(span.start.x), round(span.start.y), round(bulgeOf(span))] as const,
  );
  const last = spans.at(-1);
  if (!closed && last !== undefined) vertices.push([round(last.end.x), round(last.end.y), 0]);
  return { closed, vertices };
}

/** JSON has no infinity: a figure that is none is left out. */
function figure(value: number | undefined): number | null {
  return value === undefined || !Number.isFinite(value) ? null : round(value);
}

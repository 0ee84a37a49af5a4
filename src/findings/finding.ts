/**
 * A finding is what the engineer can correct: a code, numbers and a place, never a sentence.
 * Sentences are made from it by `say-finding.ts`, the same for terminal, workbench and paper.
 */
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';
import { CATALOGUE, type FactsByCode, type FindingCode } from './catalogue.ts';
import type { Severity } from './severity.ts';

export type { FindingCode };

/** Where it is: as much as is known. */
export interface Place {
  /** On the part, millimetres in the drawing's frame. */
  readonly at?: Point;
  /** Path in a job file, such as `requirements[0].depth`. */
  readonly path?: string;
  /** Name of the file that path and line belong to, where it is neither the job nor its drawing. */
  readonly file?: string;
  /** Line of a text file, from 1. */
  readonly line?: number;
  /** Ids of the regions concerned. */
  readonly regions?: readonly string[];
  /** Layer of the drawing. */
  readonly layer?: string;
  /** What to highlight, in the frame of `at`: borders concerned, or the way across a narrow place. */
  readonly outline?: readonly Path[];
}

export type Finding = {
  [Code in FindingCode]: {
    readonly code: Code;
    readonly severity: Severity;
    readonly facts: FactsByCode[Code];
    readonly place: Place;
  };
}[FindingCode];

/** Makes a finding; its severity stands in the catalogue. */
export function finding<Code extends FindingCode>(
  code: Code,
  facts: FactsByCode[Code],
  place: Place = {},
): Finding {
  return { code, severity: CATALOGUE[code].severity, facts, place } as Finding;
}

const RANK: Record<Severity, number> = { stop: 0, warn: 1, note: 2 };

/** The stable order in which findings are shown: most serious first, then by code, then by place. */
export function sortFindings(findings: readonly Finding[]): Finding[] {
  return [...findings].sort(
    (a, b) =>
      RANK[a.severity] - RANK[b.severity] ||
      compareText(a.code, b.code) ||
      (a.place.line ?? 0) - (b.place.line ?? 0) ||
      (a.place.at?.y ?? 0) - (b.place.at?.y ?? 0) ||
      (a.place.at?.x ?? 0) - (b.place.at?.x ?? 0) ||
      compareText(a.place.path ?? '', b.place.path ?? ''),
  );
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

export function hasStop(findings: readonly Finding[]): boolean {
  return findings.some((each) => each.severity === 'stop');
}

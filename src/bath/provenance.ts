/** Where a figure comes from. Every built-in value carries it into the plan. */

export type ProvenanceKind = 'published' | 'common-practice' | 'memory' | 'user' | 'measured';

export interface Provenance {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly kind: ProvenanceKind;
  /** How far it may be off either way, with a confidence of 95 %, in the same unit; where that is known. */
  readonly plusMinus?: number;
  /** The field of the job that it is the value of, by its path. Plans are written without it. */
  readonly field?: string;
}

/** A figure with where it comes from, before it is put to use under the name of a quantity. */
export interface Sourced {
  readonly value: number;
  readonly source: string;
  readonly kind: ProvenanceKind;
  readonly plusMinus?: number;
}

/** How well a figure is known, in words. */
export const GRADE: Readonly<Record<ProvenanceKind, string>> = {
  published: 'published',
  'common-practice': 'common practice',
  memory: 'from memory',
  user: 'given in the job',
  measured: 'measured',
};

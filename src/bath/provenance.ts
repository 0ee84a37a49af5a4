/** Where a figure comes from. Every built-in value carries it into the plan. */

type ProvenanceKind = 'published' | 'common-practice' | 'memory' | 'user' | 'measured';

export interface Provenance {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly kind: ProvenanceKind;
}

/** A figure with where it comes from, before it is put to use under the name of a quantity. */
export interface Sourced {
  readonly value: number;
  readonly source: string;
  readonly kind: ProvenanceKind;
}

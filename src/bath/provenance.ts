/** Where a figure comes from. Every built-in value carries it into the plan. */

export type ProvenanceKind = 'published' | 'common-practice' | 'memory' | 'user' | 'measured';

export interface Provenance {
  readonly quantity: string;
  readonly value: number;
  readonly unit: string;
  readonly source: string;
  readonly kind: ProvenanceKind;
}

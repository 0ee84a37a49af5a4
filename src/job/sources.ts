/** Where a default comes from, in few words. */
import type { Found } from './fields/field.ts';

type Sourced<Value> = Required<Pick<Found<Value>, 'value' | 'source' | 'kind'>>;

export function fromMemory<Value>(value: Value): Sourced<Value> {
  return { value, source: 'from memory', kind: 'memory' };
}

export function commonPractice<Value>(value: Value, what: string): Sourced<Value> {
  return { value, source: `common practice: ${what}`, kind: 'common-practice' };
}

export function ownChoice<Value>(value: Value): Sourced<Value> {
  return { value, source: 'our own choice', kind: 'memory' };
}

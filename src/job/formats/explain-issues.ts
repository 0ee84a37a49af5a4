/** Turns what the schema library objects to into findings that say what was found and what was expected. */
import type * as z from 'zod/mini';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { JsonPath, PlaceOf } from './read-json.ts';

type Issue = z.core.$ZodIssue;

/** What was read, the schema that it was held to, and where in the text each path stands. */
interface Setting {
  readonly root: unknown;
  readonly schema: unknown;
  readonly placeOf: PlaceOf;
}

export function explainIssues(issues: readonly Issue[], setting: Setting): Finding[] {
  return issues.flatMap((issue) => explainIssue(issue, [], setting));
}

function explainIssue(issue: Issue, base: JsonPath, setting: Setting): Finding[] {
  const path = [...base, ...(issue.path as JsonPath)];
  const { root, schema, placeOf } = setting;
  if (issue.code === 'unrecognized_keys') {
    const known = knownKeys(schema, path);
    return issue.keys.map((key) =>
      finding('job-key-unknown', { key, meant: nearestWord(key, known), known }, placeOf([...path, key])),
    );
  }
  const value = valueAt(root, path);
  if (issue.code === 'invalid_union' && value !== undefined) {
    const branch = likeliestBranch(issue.errors);
    if (branch !== undefined) return branch.flatMap((inner) => explainIssue(inner, path, setting));
  }
  const expected = expectedBy(issue);
  const key = path.at(-1);
  if (value === undefined && typeof key === 'string') {
    return [finding('job-key-missing', { key, expected }, placeOf(path))];
  }
  return [finding('job-value-wrong', { found: spellValue(value), expected }, placeOf(path))];
}

/** The alternative that was meant: one whose kind of value is right, and of those the one with the fewest faults. */
function likeliestBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | undefined {
  return branches
    .filter((issues) => !issues.some((each) => each.path.length === 0 && isWrongKind(each)))
    .sort((a, b) => countFaults(a) - countFaults(b))[0];
}

function isWrongKind(issue: Issue): boolean {
  return issue.code === 'invalid_type' || issue.code === 'invalid_value';
}

function countFaults(issues: readonly Issue[]): number {
  return issues.reduce((sum, each) => sum + (each.code === 'unrecognized_keys' ? each.keys.length : 1), 0);
}

/** Words for each kind of value, by the library's name for it. */
const KINDS: Readonly<Record<string, string>> = {
  number: 'a number',
  string: 'a text in quotes',
  array: 'a list',
  tuple: 'a list of two numbers',
  object: 'an object in { }',
};

/** In words, behind “is not”, “expected”. */
export function expectedBy(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return KINDS[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return issue.values.map((each) => JSON.stringify(each)).join(' or ');
    case 'invalid_format':
      return issue.format === 'date' ? 'a day such as "2026-05-31"' : 'another text';
    case 'invalid_union':
      return [...new Set(issue.errors.flatMap((branch) => branch.slice(0, 1).map(expectedBy)))].join(' or ');
    case 'too_small':
      if (issue.origin === 'array') return countWords(issue.minimum, 'at least');
      if (issue.origin === 'string') return 'a text that is not empty';
      return `a number of ${issue.inclusive === true ? 'at least' : 'more than'} ${issue.minimum}`;
    case 'too_big':
      if (issue.origin === 'array') return countWords(issue.maximum, 'at most');
      if (issue.origin === 'string') return `a text of at most ${issue.maximum} characters`;
      return `a number of ${issue.inclusive === true ? 'at most' : 'less than'} ${issue.maximum}`;
    default:
      return 'another value';
  }
}

function countWords(count: number | bigint, how: string): string {
  return `${how} ${count} ${Number(count) === 1 ? 'item' : 'items'} in the list`;
}

function spellValue(value: unknown): string {
  if (value === undefined) return 'nothing';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  if (typeof value === 'object' && value !== null) return 'an object';
  if (typeof value === 'string') return `the text ${JSON.stringify(shorten(value))}`;
  return String(value);
}

function shorten(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}

function valueAt(root: unknown, path: JsonPath): unknown {
  let value = root;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Record<string | number, unknown>)[step];
  }
  return value;
}

/** The keys that the schema knows at a path. */
function knownKeys(root: unknown, path: JsonPath): string[] {
  let schemas: readonly unknown[] = [root];
  for (const step of path) schemas = schemas.flatMap((schema) => stepInto(schema, step));
  return [...new Set(schemas.flatMap(unwrap).flatMap((schema) => Object.keys(schema.shape ?? {})))];
}

/** As much of the library's schema definitions as the walk needs. */
interface Definition {
  readonly type: string;
  readonly shape?: Readonly<Record<string, unknown>>;
  readonly element?: unknown;
  readonly innerType?: unknown;
  readonly options?: readonly unknown[];
}

function unwrap(schema: unknown): Definition[] {
  if (schema === undefined) return [];
  const definition = (schema as { readonly _zod: { readonly def: Definition } })._zod.def;
  if (definition.innerType !== undefined) return unwrap(definition.innerType);
  if (definition.type === 'union') return (definition.options ?? []).flatMap(unwrap);
  return [definition];
}

function stepInto(schema: unknown, step: string | number): unknown[] {
  return unwrap(schema).map((each) => (typeof step === 'number' ? each.element : each.shape?.[step]));
}

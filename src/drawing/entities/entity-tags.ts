/**
 * One entity as its range of tags, with what every entity shares already read. Groups are found by code, never by position, since
 * DXF allows any order. A value that should be a number and is none is remembered, and costs the entity.
 */

import type { DecodeText } from '#drawing/read/decode-text.ts';
import { codeAt, lineAt, numberAt, type TagTable, wordAt } from '#drawing/read/tag-table.ts';
import type { FactsByCode } from '#findings/catalogue.ts';
import { type Finding, type FindingCode, finding } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';

export interface EntityTags {
  readonly tags: TagTable;
  readonly decode: DecodeText;
  /** mm in one drawing unit: what tolerances are held against. */
  readonly millimetres: number;
  /** Kind in capitals. */
  readonly kind: string;
  readonly handle: string | undefined;
  readonly layer: string;
  /** Undefined where it is that of the layer or the block. */
  readonly lineType: string | undefined;
  readonly line: number;
  readonly inPaper: boolean;
  readonly invisible: boolean;
  /** First tag after the kind, the end of the entity's own groups, and the end with vertices or attributes. */
  readonly first: number;
  readonly headEnd: number;
  readonly end: number;
  /** What was found wrong so far. */
  readonly findings: Finding[];
}

export interface EntityFile {
  readonly tags: TagTable;
  readonly decode: DecodeText;
  readonly millimetres: number;
}

/** Groups that stand once in an entity of these kinds (DXF reference, entities). */
const ONCE: ReadonlyMap<string, ReadonlySet<number>> = new Map([
  ['LINE', new Set([10, 20, 11, 21])],
  ['CIRCLE', new Set([10, 20, 40])],
  ['ARC', new Set([10, 20, 40, 50, 51])],
  ['ELLIPSE', new Set([10, 20, 11, 21, 40, 41, 42])],
  ['INSERT', new Set([2, 10, 20, 41, 42, 44, 45, 50, 70, 71])],
]);

/** Group 101 opens an embedded object that uses the same codes for other things: nothing after it belongs to the entity. */
const EMBEDDED = 101;
/** From here on groups are extended data, which belong to other programs. */
const EXTENDED = 1000;

export function openEntity(file: EntityFile, range: { first: number; end: number }): EntityTags {
  const { tags, decode, millimetres } = file;
  const first = range.first + 1;
  let headEnd = first;
  let handle: string | undefined;
  let layer: string | undefined;
  let lineType: string | undefined;
  const switches: number[] = [];
  for (; headEnd < range.end; headEnd++) {
    const code = codeAt(tags, headEnd);
    if (code === 0 || code === EMBEDDED) break;
    if (code === 8) layer ??= textAt(tags, decode, headEnd);
    else if (code === 6) lineType ??= wordAt(tags, headEnd);
    else if (code === 5) handle ??= wordAt(tags, headEnd);
    else if (code === 67 || code === 60) switches.push(headEnd);
  }
  const isSwitchedOn = (code: number) =>
    switches.some((at) => codeAt(tags, at) === code && numberAt(tags, at) === 1);
  const entity: EntityTags = {
    tags,
    decode,
    millimetres,
    kind: wordAt(tags, range.first).toUpperCase(),
    handle,
    layer: layer || '0',
    lineType: lineType === undefined || /^by(?:layer|block)$/i.test(lineType) ? undefined : lineType,
    line: lineAt(tags, range.first),
    inPaper: isSwitchedOn(67),
    invisible: isSwitchedOn(60),
    first,
    headEnd,
    end: range.end,
    findings: [],
  };
  for (const at of switches) flagsAt(entity, at);
  reportRepeated(entity);
  return entity;
}

function reportRepeated(entity: EntityTags): void {
  const once = ONCE.get(entity.kind);
  if (once === undefined) return;
  const seen = new Map<number, number>();
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(entity.tags, at);
    if (code >= EXTENDED) break;
    if (once.has(code)) seen.set(code, (seen.get(code) ?? 0) + 1);
  }
  for (const [group, times] of seen) if (times > 1) report(entity, 'entity-group-repeated', { group, times });
}

function textAt(tags: TagTable, decode: DecodeText, at: number): string {
  return decode(tags.bytes, tags.starts[at] as number, tags.ends[at] as number);
}

/** Facts without kind and handle, which `report` adds. */
type OwnFacts<Code extends FindingCode> = Omit<FactsByCode[Code], 'kind' | 'handle'>;

export function report<Code extends FindingCode>(
  entity: EntityTags,
  code: Code,
  facts: OwnFacts<Code>,
  at?: Point,
): void {
  const whole = { kind: entity.kind, handle: entity.handle, ...facts } as unknown as FactsByCode[Code];
  const place = { line: entity.line, layer: entity.layer };
  entity.findings.push(finding(code, whole, at === undefined ? place : { ...place, at }));
}

/** The value of a tag as a number. NaN, and reported once for the entity, when it is none. */
export function strictNumber(entity: EntityTags, at: number): number {
  const value = numberAt(entity.tags, at);
  if (Number.isNaN(value) && !hasBadNumber(entity)) reportBadNumber(entity, at);
  return value;
}

function reportBadNumber(entity: EntityTags, at: number): void {
  const text = textAt(entity.tags, entity.decode, at).slice(0, 40);
  report(entity, 'entity-number-bad', { group: codeAt(entity.tags, at), text });
}

/** An entity with a bad number is left out, whatever else could be made of it. */
export function hasBadNumber(entity: EntityTags): boolean {
  return entity.findings.some((each) => each.code === 'entity-number-bad');
}

/** The first value under a code among the entity's own groups. */
export function numberOf(entity: EntityTags, code: number): number | undefined {
  for (let at = entity.first; at < entity.headEnd; at++) {
    if (codeAt(entity.tags, at) === code) return strictNumber(entity, at);
  }
  return undefined;
}

/** Bits under a code; 0 when it is absent. What no 16 bits can hold is reported as no number. */
export function flagsOf(entity: EntityTags, code: number): number {
  for (let at = entity.first; at < entity.headEnd; at++) {
    if (codeAt(entity.tags, at) === code) return flagsAt(entity, at);
  }
  return 0;
}

const SIXTEEN_BITS = 65_535;

export function flagsAt(entity: EntityTags, at: number): number {
  const value = strictNumber(entity, at);
  if (Number.isInteger(value) && Math.abs(value) <= SIXTEEN_BITS) return value;
  if (!hasBadNumber(entity)) reportBadNumber(entity, at);
  return 0;
}

/** Flags, counts and degree of the whole, and what follows the y of a vertex: bulge and number. */
const NEVER_BETWEEN: ReadonlySet<number> = new Set([42, 43, 70, 71, 72, 73, 74, 90, 91]);

/** Each x under a code is followed by its y under the code ten higher, before the next x and whatever else belongs to vertex or entity. */
export function arePairsWhole({ tags, first, headEnd }: EntityTags, codeX: number): boolean {
  let isOwed = false;
  for (let at = first; at < headEnd; at++) {
    const code = codeAt(tags, at);
    if (isOwed && NEVER_BETWEEN.has(code)) return false;
    if (code !== codeX && code !== codeX + 10) continue;
    if (isOwed === (code === codeX)) return false;
    isOwed = !isOwed;
  }
  return !isOwed;
}

/** The point under codes x and x + 10; absent when either is. */
export function pointOf(entity: EntityTags, codeX: number): Point | undefined {
  const x = numberOf(entity, codeX);
  const y = numberOf(entity, codeX + 10);
  return x === undefined || y === undefined ? undefined : { x, y };
}

export function textOf(entity: EntityTags, code: number): string | undefined {
  for (let at = entity.first; at < entity.headEnd; at++) {
    if (codeAt(entity.tags, at) === code) return textAt(entity.tags, entity.decode, at);
  }
  return undefined;
}

/** In millimetres. */
export function scaled(entity: EntityTags, { x, y }: Point): Point {
  return { x: x * entity.millimetres, y: y * entity.millimetres };
}

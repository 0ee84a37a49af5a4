/**
 * Condenses the tags of a drawing to a clean skeleton that dxf-parser can walk: only the LAYER table, BLOCKS and ENTITIES, every
 * part closed, repeated sections joined, and entities as references to their tags, one reference for each run of them. So nothing inside
 * an entity can hang or fool the walk, and line numbers stay known. Names are marked with `=`, which keeps `__proto__` an
 * ordinary name in the walker's plain objects. Cost: one look at each tag.
 */

import { MOST_ENTITIES } from '#drawing/drawing-limits.ts';
import { type Finding, finding } from '#findings/finding.ts';
import type { DecodeText } from './decode-text.ts';
import { strayInHeader } from './read-header.ts';
import { codeAt, lineAt, numberAt, opens, type TagTable, wordAt } from './tag-table.ts';

export interface Condensed {
  readonly skeleton: string;
  /** First tag of entity number n (from 1) at n − 1, and the tag after its last, vertices and attributes included. */
  readonly firsts: readonly number[];
  readonly ends: readonly number[];
  /** `$INSUNITS` values of blocks, by the block's name in capitals. */
  readonly blockUnits: ReadonlyMap<string, number>;
  /** Line types of layers, by the layer's name in capitals. */
  readonly lineTypes: ReadonlyMap<string, string>;
  readonly findings: readonly Finding[];
  /** The file has sections at all. */
  readonly hasSections: boolean;
  readonly tooManyEntities: boolean;
}

/** What precedes a name in the skeleton. */
export const NAME_MARK = '=';
/** The one kind of entity in the skeleton: a run of entities, the number of its first under group 90, of its last under 91. */
export const REFERENCE = 'RUN';

interface Work {
  readonly tags: TagTable;
  readonly decode: DecodeText;
  readonly firsts: number[];
  readonly ends: number[];
  readonly layers: string[];
  readonly blocks: string[];
  readonly entities: string[];
  readonly blockUnits: Map<string, number>;
  readonly lineTypes: Map<string, string>;
  readonly findings: Finding[];
  /** Tags outside sections, or inside one before its first entity. */
  readonly astray: number[];
}

export function condenseDrawing(
  file: { tags: TagTable; ended: boolean; lastLine: number },
  decode: DecodeText,
): Condensed {
  const { tags } = file;
  const work: Work = {
    tags,
    decode,
    firsts: [],
    ends: [],
    layers: [],
    blocks: [],
    entities: [],
    blockUnits: new Map(),
    lineTypes: new Map(),
    findings: [],
    astray: [],
  };
  const seen = new Set<string>();
  let cutIn: string | undefined;
  for (let at = 0; at < tags.count; ) {
    if (!opens(tags, at, 'SECTION')) {
      at = passAstray(work, at);
      continue;
    }
    const named = at + 1 < tags.count && codeAt(tags, at + 1) === 2;
    const section = named ? wordAt(tags, at + 1).toUpperCase() : '';
    if (seen.has(section)) {
      work.findings.push(finding('drawing-section-repeated', { section }, { line: lineAt(tags, at) }));
    }
    seen.add(section);
    at = readSection(work, section, named ? at + 2 : at + 1);
    if (at < tags.count && opens(tags, at, 'ENDSEC')) at++;
    else if (at < tags.count) reportUnclosed(work, `The ${section} section`, 'ENDSEC', at);
    else if (SECTIONS.has(section)) cutIn = `the ${section} section`;
  }
  if (seen.size > 0) reportAstray(work);
  if (!file.ended && seen.size > 0) {
    if (cutIn === undefined && !seen.has('ENTITIES')) cutIn = 'the part before its ENTITIES section';
    const line = file.lastLine;
    work.findings.push(
      cutIn === undefined
        ? finding('drawing-end-missing', { line }, { line })
        : finding('drawing-cut-short', { part: cutIn, line }, { line }),
    );
  }
  return {
    skeleton: skeletonOf(work),
    firsts: work.firsts,
    ends: work.ends,
    blockUnits: work.blockUnits,
    lineTypes: work.lineTypes,
    findings: work.findings,
    hasSections: seen.size > 0,
    tooManyEntities: isFull(work),
  };
}

const SECTIONS: ReadonlySet<string> = new Set(['HEADER', 'TABLES', 'BLOCKS', 'ENTITIES']);

function readSection(work: Work, section: string, from: number): number {
  if (section === 'TABLES') return readTables(work, passHead(work, from));
  if (section === 'BLOCKS') return readBlocks(work, from);
  if (section === 'ENTITIES') return readEntities(work, from, work.entities);
  let at = from;
  while (at < work.tags.count && !endsSection(work.tags, at)) at++;
  if (section === 'HEADER') work.astray.push(...strayInHeader(work.tags, from, at));
  return at;
}

function endsSection(tags: TagTable, at: number): boolean {
  return (
    codeAt(tags, at) === 0 &&
    (opens(tags, at, 'ENDSEC') || opens(tags, at, 'SECTION') || opens(tags, at, 'EOF'))
  );
}

/** On to the next tag; the mark of the file's end belongs nowhere else. */
function passAstray(work: Work, at: number): number {
  if (!opens(work.tags, at, 'EOF')) work.astray.push(at);
  return at + 1;
}

/** Tags that belong to no section or no entity: what a lost or changed line leaves behind. */
function reportAstray(work: Work): void {
  const [first] = work.astray;
  if (first === undefined) return;
  work.findings.push(
    finding('drawing-out-of-step', { lines: 2 * work.astray.length }, { line: lineAt(work.tags, first) }),
  );
}

function reportUnclosed(work: Work, part: string, lacks: string, at: number): void {
  const line = lineAt(work.tags, Math.min(at, work.tags.count - 1));
  work.findings.push(finding('drawing-part-unclosed', { part, lacks }, { line }));
}

/** Groups before the first table belong to none. */
function passHead(work: Work, from: number): number {
  const at = afterGroups(work.tags, from);
  if (at > from) work.astray.push(from);
  return at;
}

function readTables(work: Work, from: number): number {
  const { tags } = work;
  let at = from;
  let table: string | undefined;
  for (; at < tags.count && !endsSection(tags, at); at++) {
    if (codeAt(tags, at) !== 0) continue;
    if (opens(tags, at, 'TABLE')) {
      if (table !== undefined) reportUnclosed(work, `The ${table} table`, 'ENDTAB', at);
      table = at + 1 < tags.count && codeAt(tags, at + 1) === 2 ? wordAt(tags, at + 1).toUpperCase() : '';
    } else if (opens(tags, at, 'ENDTAB')) {
      if (table === undefined) work.astray.push(at);
      table = undefined;
    } else if (opens(tags, at, 'LAYER')) readLayer(work, at);
    else if (opens(tags, at, 'BLOCK_RECORD')) readBlockRecord(work, at);
  }
  if (table !== undefined && at < tags.count) reportUnclosed(work, `The ${table} table`, 'ENDTAB', at);
  return at;
}

function readLayer(work: Work, at: number): void {
  const name = textOf(work, at, 2);
  if (name === undefined) return;
  // Bit 1 of the flags is frozen; bit 2, frozen in new viewports, hides nothing here and is kept from the walker, which minds it.
  const [flags, color] = [flagOf(work, at, { code: 70, name }), flagOf(work, at, { code: 62, name })];
  const frozen = (flags ?? 0) & 1;
  const lineType = textOf(work, at, 6);
  if (lineType !== undefined && !/^continuous$/i.test(lineType))
    work.lineTypes.set(name.toUpperCase(), lineType);
  work.layers.push(`0\nLAYER\n2\n${NAME_MARK}${name}\n70\n${frozen}\n62\n${(color ?? 7) < 0 ? -1 : 1}\n`);
}

/** A flag of a layer; what is no whole number of 16 bits is reported, and the layer is shown. */
function flagOf(
  work: Work,
  record: number,
  { code, name }: { readonly code: number; readonly name: string },
): number | undefined {
  const value = groupNumber(work, record, code);
  if (value === undefined || (Number.isInteger(value) && Math.abs(value) < 65_536)) return value;
  const facts = {
    kind: `LAYER ${name}`,
    handle: undefined,
    group: code,
    text: textOf(work, record, code) ?? '',
  };
  work.findings.push(finding('entity-number-bad', facts, { line: lineAt(work.tags, record) }));
  return undefined;
}

function readBlockRecord(work: Work, at: number): void {
  const name = textOf(work, at, 2);
  const units = integerOf(work, at, 70);
  if (name !== undefined && units !== undefined && units > 0) work.blockUnits.set(name.toUpperCase(), units);
}

function readBlocks(work: Work, from: number): number {
  const { tags } = work;
  let at = from;
  while (at < tags.count && !endsSection(tags, at)) {
    if (!opens(tags, at, 'BLOCK')) {
      work.astray.push(at);
      at++;
      continue;
    }
    const name = textOf(work, at, 2);
    const entities: string[] = [];
    const head = blockHead(work, at, name);
    at = readEntities(work, afterGroups(tags, at + 1), entities);
    if (head !== undefined) work.blocks.push(`${head}${entities.join('')}0\nENDBLK\n`);
    if (at < tags.count && opens(tags, at, 'ENDBLK')) at = afterGroups(tags, at + 1);
    else if (at < tags.count) reportUnclosed(work, `Block ${name ?? 'without a name'}`, 'ENDBLK', at);
  }
  return at;
}

function blockHead(work: Work, at: number, name: string | undefined): string | undefined {
  const x = groupNumber(work, at, 10) ?? 0;
  const y = groupNumber(work, at, 20) ?? 0;
  const place = { line: lineAt(work.tags, at) };
  if (name === undefined || name === '') {
    work.findings.push(
      finding('entity-incomplete', { kind: 'BLOCK', handle: textOf(work, at, 5), lacks: 'a name' }, place),
    );
    return undefined;
  }
  if (!Number.isFinite(x) || !Number.isFinite(y)) {
    const group = Number.isFinite(x) ? 20 : 10;
    const facts = { kind: `BLOCK ${name}`, handle: undefined, group, text: textOf(work, at, group) ?? '' };
    work.findings.push(finding('entity-number-bad', facts, place));
    return undefined;
  }
  const flags = integerOf(work, at, 70) ?? 0;
  const path = textOf(work, at, 1) ?? '';
  return `0\nBLOCK\n2\n${NAME_MARK}${name}\n70\n${flags}\n10\n${x}\n20\n${y}\n30\n0\n1\n${NAME_MARK}${path}\n`;
}

/** Reads entities up to the end of the block or section that holds them. */
function readEntities(work: Work, from: number, into: string[]): number {
  const before = work.firsts.length;
  const end = numberEntities(work, from, into !== work.entities);
  const last = work.firsts.length;
  if (last > before) into.push(`0\n${REFERENCE}\n90\n${before + 1}\n91\n${last}\n`);
  return end;
}

function numberEntities(work: Work, from: number, forBlock: boolean): number {
  const { tags } = work;
  let at = from;
  for (; at < tags.count && codeAt(tags, at) !== 0; at++) work.astray.push(at);
  while (at < tags.count && !endsSection(tags, at)) {
    if (opens(tags, at, 'SEQEND')) {
      at = afterGroups(tags, at + 1);
      continue;
    }
    if (forBlock && (opens(tags, at, 'ENDBLK') || opens(tags, at, 'BLOCK'))) break;
    const end = entityEnd(tags, at);
    if (!isFull(work)) {
      work.firsts.push(at);
      work.ends.push(end);
    }
    at = end;
  }
  return at;
}

function isFull(work: Work): boolean {
  return work.firsts.length > MOST_ENTITIES;
}

/** The tag after an entity: a POLYLINE takes its VERTEX entities along, an INSERT its ATTRIBs, both their SEQEND. */
function entityEnd(tags: TagTable, first: number): number {
  const part = opens(tags, first, 'POLYLINE')
    ? 'VERTEX'
    : opens(tags, first, 'INSERT')
      ? 'ATTRIB'
      : undefined;
  let at = afterGroups(tags, first + 1);
  if (part === undefined) return at;
  while (at < tags.count && opens(tags, at, part)) at = afterGroups(tags, at + 1);
  if (at < tags.count && opens(tags, at, 'SEQEND')) at = afterGroups(tags, at + 1);
  return at;
}

/** The next 0 tag from `at` on. */
function afterGroups(tags: TagTable, from: number): number {
  let at = from;
  while (at < tags.count && codeAt(tags, at) !== 0) at++;
  return at;
}

/** The tag of the record at `at` with this code. */
function tagOf(tags: TagTable, record: number, code: number): number | undefined {
  for (let at = record + 1; at < tags.count && codeAt(tags, at) !== 0; at++)
    if (codeAt(tags, at) === code) return at;
  return undefined;
}

function textOf(work: Work, record: number, code: number): string | undefined {
  const at = tagOf(work.tags, record, code);
  const { tags } = work;
  return at === undefined
    ? undefined
    : work.decode(tags.bytes, tags.starts[at] as number, tags.ends[at] as number);
}

function groupNumber(work: Work, record: number, code: number): number | undefined {
  const at = tagOf(work.tags, record, code);
  return at === undefined ? undefined : numberAt(work.tags, at);
}

function integerOf(work: Work, record: number, code: number): number | undefined {
  const value = groupNumber(work, record, code);
  return value !== undefined && Number.isInteger(value) ? value : undefined;
}

function skeletonOf(work: Work): string {
  const { layers, blocks, entities } = work;
  const table = layers.length === 0 ? '' : `0\nTABLE\n2\nLAYER\n${layers.join('')}0\nENDTAB\n`;
  return [
    section('TABLES', table),
    section('BLOCKS', blocks.join('')),
    section('ENTITIES', entities.join('')),
    '0\nEOF\n',
  ].join('');
}

function section(name: string, body: string): string {
  return `0\nSECTION\n2\n${name}\n${body}0\nENDSEC\n`;
}

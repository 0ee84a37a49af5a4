/** TEXT and MTEXT: what they say, without their formatting, where, and how they hang there (DXF reference, TEXT and MTEXT). Never geometry. */
import { MIRROR_X, mapPoint } from '#drawing/curves/affine.ts';
import { mapHung } from '#drawing/curves/map-hung.ts';
import type { HungText } from '#drawing/drawing.ts';
import { codeAt } from '#drawing/read/tag-table.ts';
import { itemAt } from '#geometry/assert.ts';
import { add, distance, type Point, scale, subtract } from '#geometry/point.ts';
import { cos, sin } from '#maths/sine.ts';
import type { Decoded } from './decoded.ts';
import { type EntityTags, flagsOf, numberOf, pointOf, report, strictNumber } from './entity-tags.ts';
import { facingOf } from './extrusion.ts';

const BLANK = 32;

export function decodeText(entity: EntityTags): Decoded {
  const place = placeOfText(entity);
  const facing = facingOf(entity);
  if (facing === undefined) return undefined;
  const isUp = facing === 'up' || place === undefined;
  const seen = isUp ? place : { at: mapPoint(MIRROR_X, place.at), hung: mapHung(MIRROR_X, place.hung) };
  return noteOf(entity, plainText(partsOf(entity)), seen);
}

export function decodeMultilineText(entity: EntityTags): Decoded {
  const at = pointOf(entity, 10);
  // Attachment points 1 to 9 run row by row from the top left.
  const cell = Math.min(8, Math.max(0, flagsOf(entity, 71) - 1));
  const hung = {
    along: directionOfMultiline(entity),
    across: itemAt(ACROSS, cell % 3),
    up: itemAt(['top', 'middle', 'base'] as const, Math.floor(cell / 3)),
  };
  return noteOf(entity, plainText(unformatted(partsOf(entity))), at && { at, hung });
}

interface HungPlace {
  readonly at: Point;
  readonly hung: HungText;
}

const ACROSS = ['start', 'middle', 'end'] as const;
/** Horizontal justification that fills the way from the first point to the second; and one that is centred both ways. */
const FILLING: ReadonlySet<number> = new Set([3, 5]);
const CENTRED = 4;

/** A justified text hangs on its second point; one that fills the way between both, on the middle of it. */
function placeOfText(entity: EntityTags): HungPlace | undefined {
  const [across, height] = [flagsOf(entity, 72), flagsOf(entity, 73)];
  const [first, second] = [pointOf(entity, 10), pointOf(entity, 11)];
  const along = directionOf(numberOf(entity, 50) ?? 0);
  const isJustified = across !== 0 || height !== 0;
  if (!isJustified || second === undefined) {
    return first && { at: first, hung: { along, across: 'start', up: 'base' } };
  }
  if (FILLING.has(across) && first !== undefined && distance(first, second) > 0) {
    const way = subtract(second, first);
    return { at: add(first, scale(way, 0.5)), hung: { along: way, across: 'middle', up: 'base' } };
  }
  if (across === CENTRED) return { at: second, hung: { along, across: 'middle', up: 'middle' } };
  const up = height === 2 ? 'middle' : height === 3 ? 'top' : 'base';
  return { at: second, hung: { along, across: ACROSS[across] ?? 'start', up } };
}

/**
 * Along the direction given, or the angle where that comes after it. The reference has radians there; programs write degrees (from
 * memory). Where columns are given angles stand for their heights.
 */
function directionOfMultiline(entity: EntityTags): Point {
  let along: Point | undefined;
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(entity.tags, at);
    if (code === 11) along = pointOf(entity, 11);
    else if (code === 50) along = directionOf(strictNumber(entity, at));
    else if (code === COLUMNS) break;
  }
  return along === undefined || (along.x === 0 && along.y === 0) ? directionOf(0) : along;
}

/** Type of the columns, before their heights. */
const COLUMNS = 75;

function directionOf(degrees: number): Point {
  const angle = (degrees * Math.PI) / 180;
  return { x: cos(angle), y: sin(angle) };
}

function noteOf(entity: EntityTags, text: string, place: HungPlace | undefined): Decoded {
  if (place === undefined) {
    report(entity, 'entity-incomplete', { lacks: 'its place' });
    return undefined;
  }
  if (text === '') return { what: 'passed', why: 'it says nothing', mayMatter: false };
  return { what: 'note', text, ...place };
}

/** Long texts come in parts under 3, the last one under 1. */
function partsOf(entity: EntityTags): string {
  let text = '';
  let last = '';
  for (let at = entity.first; at < entity.headEnd; at++) {
    const code = codeAt(entity.tags, at);
    if (code === 3) text += partWithBlanks(entity, at);
    else if (code === 1) last = partWithBlanks(entity, at);
  }
  return text + last;
}

/** A part may end or begin with the blank between two words, which the tags trim. */
function partWithBlanks({ tags, decode }: EntityTags, at: number): string {
  let start = tags.starts[at] as number;
  let end = tags.ends[at] as number;
  while (tags.bytes[start - 1] === BLANK) start--;
  while (tags.bytes[end] === BLANK) end++;
  return decode(tags.bytes, start, end);
}

/** Control codes of MTEXT (DXF reference, MTEXT): \P new line, \~ blank, \S stacking, \L … switches, \f … ; settings, { } groups. */
function unformatted(text: string): string {
  return text
    .replace(/\\P/g, ' ')
    .replace(/\\~/g, ' ')
    .replace(/\\S([^;]*);/g, (_, stacked: string) => stacked.replace(/[\^#]/g, '/'))
    .replace(/\\[ACcFfHpQTW][^;]*;/g, '')
    .replace(/\\[LlOoKk]/g, '')
    .replace(/(^|[^\\])[{}]+/g, '$1')
    .replace(/\\([\\{}])/g, '$1');
}

const SIGNS: Readonly<Record<string, string>> = { c: 'Ø', d: '°', p: '±', '%': '%', u: '', o: '', k: '' };

/** %%c, %%d, %%p and character numbers, blanks put together. */
function plainText(text: string): string {
  return text
    .replace(/%%(\d{3})/g, (_, number: string) => String.fromCharCode(Number(number)))
    .replace(/%%([cdpuok%])/gi, (_, letter: string) => SIGNS[letter.toLowerCase()] ?? '')
    .replace(/\s+/g, ' ')
    .trim();
}

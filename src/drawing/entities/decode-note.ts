/** TEXT and MTEXT: what they say, without their formatting, and where. Never geometry. */
import { MIRROR_X, mapPoint } from '#drawing/curves/affine.ts';
import { codeAt } from '#drawing/read/tag-table.ts';
import type { Decoded } from './decoded.ts';
import { type EntityTags, flagsOf, pointOf, report } from './entity-tags.ts';
import { facingOf } from './extrusion.ts';

const BLANK = 32;

export function decodeText(entity: EntityTags): Decoded {
  // A justified text hangs on its second point.
  const justified = flagsOf(entity, 72) !== 0 || flagsOf(entity, 73) !== 0;
  const at = (justified ? pointOf(entity, 11) : undefined) ?? pointOf(entity, 10);
  const facing = facingOf(entity);
  if (facing === undefined) return undefined;
  return noteOf(entity, plainText(partsOf(entity)), at && (facing === 'up' ? at : mapPoint(MIRROR_X, at)));
}

export function decodeMultilineText(entity: EntityTags): Decoded {
  return noteOf(entity, plainText(unformatted(partsOf(entity))), pointOf(entity, 10));
}

function noteOf(entity: EntityTags, text: string, at: { x: number; y: number } | undefined): Decoded {
  if (at === undefined) {
    report(entity, 'entity-incomplete', { lacks: 'its place' });
    return undefined;
  }
  if (text === '') return { what: 'passed', why: 'it says nothing', mayMatter: false };
  return { what: 'note', text, at };
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

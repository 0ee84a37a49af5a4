/**
 * Frames of texts. Programs write the frame of an MTEXT as a polyline of its own, and name its handle in the text's extended data,
 * between the marks ACAD_MTEXT_TEXT_BORDERS_BEGIN and _END. Cost: one look at each tag.
 */
import { codeAt, type TagTable, wordAt } from './tag-table.ts';

const TEXT = 1000;
const HANDLE = 1005;
const BEGIN = 'ACAD_MTEXT_TEXT_BORDERS_BEGIN';

/** Handles of polylines that are frames of texts. */
export function textFrames(tags: TagTable): ReadonlySet<string> {
  const frames = new Set<string>();
  let isWithin = false;
  for (let at = 0; at < tags.count; at++) {
    const code = codeAt(tags, at);
    if (code === TEXT) isWithin = wordAt(tags, at) === BEGIN;
    else if (code < TEXT) isWithin = false;
    else if (isWithin && code === HANDLE) frames.add(wordAt(tags, at));
  }
  return frames;
}

/**
 * The one way in for drawings: bytes of a DXF to curves in millimetres, notes, layers and findings. Reads what is there and says
 * what is not; throws for nothing that a file can hold, and ends in time linear in its size. One call, no pauses: 50 MB take a second or two,
 * so hosts that must stay awake call it in a worker.
 */

import type { Drawing, WideLines } from '#drawing/drawing.ts';
import { MOST_BYTES, MOST_ENTITIES } from '#drawing/drawing-limits.ts';
import { noCurvesCause } from '#findings/drawing-findings.ts';
import { type Finding, finding, sortFindings } from '#findings/finding.ts';
import { type Box, boxOfSpans } from '#geometry/box.ts';
import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { condenseDrawing } from './condense-drawing.ts';
import { readDecimalCommas } from './decimal-commas.ts';
import { decodeBinary } from './decode-binary.ts';
import { textDecoder } from './decode-text.ts';
import { doubtUnit, type Extent, settleUnit } from './drawing-unit.ts';
import { type Gathered, type GatherInput, gatherDrawing } from './gather-drawing.ts';
import { localOrigin } from './local-origin.ts';
import { readHeader } from './read-header.ts';
import { readTags } from './read-tags.ts';
import { latin, sniffFile } from './sniff-file.ts';
import { textFrames } from './text-frames.ts';
import { walkContainer } from './walk-container.ts';

export interface ReadOptions {
  /** The unit that the drawing is drawn in, whatever it says itself. */
  readonly unit?: LengthUnit | undefined;
  /** What is taken of polylines that have a width; their centre lines unless the job says otherwise. */
  readonly wideLines?: WideLines | undefined;
  /** Called with the share done (0 to 1) and what is being worked on. */
  readonly progress?: ((share: number, what: string) => void) | undefined;
}

export function readDrawing(bytes: Uint8Array, options: ReadOptions = {}): Drawing {
  const { progress } = options;
  if (bytes.length > MOST_BYTES) {
    return unread([finding('drawing-too-big', { what: 'bytes', found: bytes.length, limit: MOST_BYTES })]);
  }
  const sniffed = sniffFile(bytes);
  if (sniffed.kind === 'empty') return unread([finding('drawing-empty', { bytes: bytes.length })]);
  if (sniffed.kind === 'wrong') return unread([finding('drawing-wrong-kind', { is: sniffed.is })]);
  progress?.(0, 'reading the drawing');
  const read = readTags(sniffed.kind === 'binary' ? decodeBinary(bytes) : bytes);
  const decimals = readDecimalCommas(read.tags);
  const { tags } = decimals;
  const header = readHeader(tags);
  const utf8Mark = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf;
  const decode = textDecoder({ ...header, utf8Mark });
  const condensed = condenseDrawing({ ...read, tags }, decode);
  if (!condensed.hasSections) return unread([finding('drawing-not-dxf', { begins: beginningOf(bytes) })]);
  const unit = settleUnit(header, options.unit);
  const findings: Finding[] = [...condensed.findings];
  if (read.outOfStep.lines > 0) {
    findings.push(
      finding('drawing-out-of-step', { lines: read.outOfStep.lines }, { line: read.outOfStep.first }),
    );
  }
  if (decimals.commas > 0) {
    const { commas, points, line, isMixed } = decimals;
    findings.push(
      isMixed
        ? finding('drawing-decimals-mixed', { commas, points }, { line })
        : finding('drawing-decimal-commas', { commas }, { line }),
    );
  }
  const stated = { unit: unit.unit, statedUnit: unit.stated };
  if (condensed.tooManyEntities) {
    const found = condensed.firsts.length;
    findings.push(finding('drawing-too-big', { what: 'entities', found, limit: MOST_ENTITIES }));
    return { ...unread(findings), ...stated };
  }
  progress?.(0.3, 'walking the drawing');
  const container = walkContainer(condensed.skeleton);
  const { gathered, origin } = gatherNear({
    file: { tags, decode, millimetres: unit.millimetres },
    condensed,
    container,
    unit: unit.unit,
    wideLines: options.wideLines,
    frames: textFrames(tags),
    isReported: ({ code, facts }) =>
      decimals.isMixed && code === 'entity-number-bad' && facts.text.includes(','),
    progress: progress && ((share) => progress(0.4 + 0.6 * share, 'reading entities')),
  });
  if (origin !== undefined) findings.push(finding('drawing-far-out', { at: [origin.x, origin.y] }));
  const { outOfRange, ...given } = gathered;
  findings.push(...gathered.findings, ...doubtUnit(header, unit, extentOf({ ...given, outOfRange })));
  if (gathered.curves.length === 0 && !findings.some(({ code }) => code === 'drawing-too-big')) {
    const { length: all } = condensed.firsts;
    const { length: entities } = container.entities;
    const cause = noCurvesCause(entitiesUnder(findings));
    findings.push(finding('drawing-without-curves', { entities, inBlocks: all - entities, cause }));
  }
  progress?.(1, 'drawing read');
  return {
    ...given,
    ...stated,
    ...(origin === undefined ? {} : { origin }),
    findings: sortFindings(findings),
  };
}

/** Gathered in the drawing's own frame, or about a local origin where that keeps more of it. */
function gatherNear(input: Omit<GatherInput, 'origin'>): {
  readonly gathered: Gathered;
  readonly origin?: Point;
} {
  const gathered = gatherDrawing({ ...input, origin: { x: 0, y: 0 } });
  const own = gathered.curves.map(({ spans }) => boxOfSpans(spans));
  const origin = localOrigin(own, gathered.outOfRange);
  if (origin === undefined) return { gathered };
  const moved = gatherDrawing({ ...input, origin });
  return moved.outOfRange.length < gathered.outOfRange.length ? { gathered: moved, origin } : { gathered };
}

/** How many entities the findings of each code stand for. */
function entitiesUnder(findings: readonly Finding[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { code, facts } of findings) {
    const own =
      'count' in facts
        ? facts.count
        : 'entities' in facts
          ? facts.entities
          : 'insertions' in facts
            ? facts.insertions
            : 1;
    counts.set(code, (counts.get(code) ?? 0) + own);
  }
  return counts;
}

/** A drawing of which nothing could be used. */
function unread(findings: readonly Finding[]): Drawing {
  return {
    unit: undefined,
    statedUnit: undefined,
    layers: [],
    curves: [],
    notes: [],
    passedOver: [],
    findings: sortFindings(findings),
  };
}

/** The first characters, such as can be printed. */
function beginningOf(bytes: Uint8Array): string {
  return latin(bytes, 0, 60)
    .replace(/[^\x20-\x7e]+/g, ' ')
    .trim()
    .slice(0, 40);
}

/** Sides of the box around all curves, mm; where all reach too far, around those. Undefined where there is nothing. */
function extentOf({ curves, outOfRange }: Gathered): Extent | undefined {
  const boxes = curves.length === 0 ? outOfRange : curves.map(({ spans }) => boxOfSpans(spans));
  if (boxes.length === 0) return undefined;
  const side = (low: (box: Box) => number, high: (box: Box) => number): number =>
    boxes.reduce((most, box) => Math.max(most, high(box)), Number.NEGATIVE_INFINITY) -
    boxes.reduce((least, box) => Math.min(least, low(box)), Number.POSITIVE_INFINITY);
  return {
    width: side(
      ({ minX }) => minX,
      ({ maxX }) => maxX,
    ),
    height: side(
      ({ minY }) => minY,
      ({ maxY }) => maxY,
    ),
  };
}

/**
 * Drawings that nobody here made, read beside ezdxf where that can be had: none may hang, no entity may be lost in silence, and
 * length and box must be the same, or a finding must say why not. `npm run trials -- --drawings FOLDER`; without a folder nothing is tried.
 */
import { spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import type { Drawing } from '#drawing/drawing.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding, FindingCode } from '#findings/finding.ts';
import { spansLength } from '#geometry/span.ts';
import { measureDrawing } from '#support/drawings/measure-drawing.ts';

const FOLDER = process.env['DRAWINGS'];
const SCRIPT = fileURLToPath(new URL('../../oracle/measure-drawings.py', import.meta.url));
/** Seconds of processor time that one drawing may take. */
const MOST_SECONDS = 5;
/** Of the larger of the two. */
const SAME = 1e-4;

/** Findings about a file or a block as a whole: what they cost may be of any kind. */
const OF_ANY_KIND: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'block-external',
  'block-inside-itself',
  'block-missing',
  'drawing-cut-short',
  'drawing-empty',
  'drawing-not-dxf',
  'drawing-out-of-step',
  'drawing-part-unclosed',
  'drawing-section-repeated',
  'drawing-too-big',
  'drawing-wrong-kind',
]);

/** Findings that say that entities of the kind that they name were not taken, or otherwise than another program may take them. */
const OF_ITS_KIND: ReadonlySet<FindingCode> = new Set<FindingCode>([
  'entity-cannot-be-read',
  'entity-group-repeated',
  'entity-incomplete',
  'entity-not-flat',
  'entity-number-bad',
  'entity-out-of-range',
  'entity-tilted',
  'entity-too-fine',
  'entity-without-size',
  'polyline-count-differs',
  'spline-through-points',
  'spline-unusable',
]);

/** What ezdxf found in a drawing, in its own unit. */
interface Measured {
  readonly path: string;
  readonly fault?: string;
  readonly curves?: number;
  readonly length?: number;
  readonly box?: readonly [number, number, number, number] | null;
  readonly kinds?: Readonly<Record<string, number>>;
  /** By kind, what stands in blocks too. */
  readonly lengths?: Readonly<Record<string, number>>;
}

test.skipIf(FOLDER === undefined)('drawings of others, beside ezdxf', () => {
  const files = drawingsIn(FOLDER ?? '');
  const outside = measuredOutside(files);
  const table = { drawings: files.length, compared: 0, alike: 0, explained: 0, seconds: 0 };
  const reasons = new Map<string, number>();
  const faults: string[] = [];
  for (const file of files) {
    const before = process.cpuUsage();
    // A millimetre, so that figures compare; what a drawing says of its unit is no matter here.
    const drawing = readDrawing(readFileSync(file), { unit: 'mm' });
    const { user, system } = process.cpuUsage(before);
    const seconds = (user + system) / 1e6;
    table.seconds = Math.max(table.seconds, seconds);
    if (seconds > MOST_SECONDS) faults.push(`${file}: ${seconds.toFixed(1)} s of processor time`);
    const other = outside.get(file);
    if (other?.kinds === undefined) {
      const why = other?.fault ?? 'ezdxf is not installed';
      reasons.set(
        `not compared: ${why.slice(0, 60)}`,
        (reasons.get(`not compared: ${why.slice(0, 60)}`) ?? 0) + 1,
      );
      continue;
    }
    table.compared += 1;
    const differences = compare(drawing, other);
    if (differences.length === 0) {
      table.alike += 1;
      continue;
    }
    const reported = new Set<string>();
    const unexplained = differences.filter(({ kind }) => {
      const found = drawing.findings.filter((each) => explains(each, kind));
      for (const { code, facts } of found) reported.add('kind' in facts ? `${code} (${facts.kind})` : code);
      return found.length === 0;
    });
    if (unexplained.length > 0) faults.push(`${file}: ${unexplained.map(({ what }) => what).join('; ')}`);
    else table.explained += 1;
    for (const code of reported) reasons.set(code, (reasons.get(code) ?? 0) + 1);
  }
  console.info(table, Object.fromEntries([...reasons].sort(([a], [b]) => (a < b ? -1 : 1))));
  expect(faults).toEqual([]);
});

/** Whether a finding is about what a difference is of: a kind of entity, or for the box and the whole any of them. */
function explains({ code, facts }: Finding, kind: string | undefined): boolean {
  if (OF_ANY_KIND.has(code)) return true;
  const of = 'kind' in facts ? facts.kind : undefined;
  // ezdxf draws the dimensions that stand in blocks, of lines, arcs and solids; here they are passed over, and reported.
  if (code === 'entity-passed-over') return of === 'DIMENSION';
  // What an insertion loses may be of any kind.
  return (
    OF_ITS_KIND.has(code) && (kind === undefined || kindOf(of) === kind || of === kind || of === 'INSERT')
  );
}

interface Difference {
  readonly what: string;
  /** Undefined: of the drawing as a whole. */
  readonly kind: string | undefined;
}

function compare(drawing: Drawing, { length = 0, box, kinds = {}, lengths = {} }: Measured): Difference[] {
  const differences: Difference[] = [];
  const own = measureDrawing(drawing);
  const ofKind = byKind(drawing.curves.map(({ kind, spans }) => [kind, spansLength(spans)]));
  const outside = byKind(Object.entries(lengths));
  for (const kind of new Set([...ofKind.keys(), ...outside.keys()])) {
    const [here, there] = [ofKind.get(kind) ?? 0, outside.get(kind) ?? 0];
    if (Math.abs(here - there) > SAME * Math.max(own.length, length) + 1e-6)
      differences.push({ what: `length of ${kind} ${here}, ezdxf ${there}`, kind });
  }
  if (!isSame(own.length, length) && differences.length === 0) {
    differences.push({ what: `length ${own.length}, ezdxf ${length}`, kind: undefined });
  }
  if (box !== null && box !== undefined && own.curves > 0) {
    const size = Math.max(box[2] - box[0], box[3] - box[1]);
    const { x, y } = drawing.origin ?? { x: 0, y: 0 };
    const sides = [own.box.minX + x, own.box.minY + y, own.box.maxX + x, own.box.maxY + y];
    const apart = Math.max(...sides.map((side, n) => Math.abs(side - (box[n] ?? 0))));
    if (apart > SAME * size) differences.push({ what: `box apart by ${apart} of ${size}`, kind: undefined });
  }
  for (const [kind, count] of Object.entries(kinds)) {
    const counted = drawing.layers.reduce((sum, { counts }) => sum + (counts[kind] ?? 0), 0);
    if (counted < count) differences.push({ what: `${count - counted} of ${count} ${kind} lost`, kind });
  }
  return differences;
}

function kindOf(kind: string | undefined): string {
  return kind === 'ARC' || kind === 'CIRCLE' ? 'ELLIPSE' : (kind ?? '');
}

/** Circles and arcs that an insertion scales unlike are ellipses to the one and circles to the other: they are one kind here. */
function byKind(lengths: readonly (readonly [kind: string, length: number])[]): Map<string, number> {
  const sums = new Map<string, number>();
  for (const [kind, length] of lengths) {
    const of = kindOf(kind);
    sums.set(of, (sums.get(of) ?? 0) + length);
  }
  return sums;
}

function isSame(a: number, b: number): boolean {
  return Math.abs(a - b) <= SAME * Math.max(a, b) + 1e-6;
}

function drawingsIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.dxf$/i.test(name))
    .map((name) => join(folder, name))
    .filter((path) => statSync(path).isFile())
    .sort();
}

function measuredOutside(files: readonly string[]): Map<string, Measured> {
  const python = ['/usr/bin/python3', 'python3'].find(
    (each) => spawnSync(each, ['-c', 'import ezdxf']).status === 0,
  );
  if (python === undefined) return new Map();
  const { stdout } = spawnSync(python, [SCRIPT], {
    input: files.map((file) => `${file}\n`).join(''),
    encoding: 'utf8',
    maxBuffer: 1e9,
  });
  const rows = stdout.split('\n').filter((line) => line !== '');
  // Python's JSON writes infinity and NaN as words.
  const read = rows.map((row) => JSON.parse(row.replaceAll(/\b(?:-?Infinity|NaN)\b/g, '0')) as Measured);
  return new Map(read.map((row) => [row.path, row]));
}

/** How two plans of one part differ that is drawn in two ways: lines, lengths cut, findings, names of regions. Empty where they don't. */
import type { Finding } from '#findings/finding.ts';
import { boxOfSpan, growBox } from '#geometry/box.ts';
import { indexBoxes } from '#geometry/box-index.ts';
import { isInsideLoops } from '#geometry/loops/inside-loops.ts';
import type { Point } from '#geometry/point.ts';
import { distanceToSpan, pointAlong, type Span, spansLength } from '#geometry/span.ts';
import type { SheetSide } from '#job/job.ts';
import type { Region } from '#part/part.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { PartVariant } from './part-variants.ts';
import type { PlannedDrawing } from './plan-drawn.ts';

/** mm that a line may be off, as docs/method.md grants a scribe line in all. */
const SAME_LINE = 0.005;
/** mm of line cut in all, for each line. */
const SAME_LENGTH = 0.02;
/** Share and mm by which a finding's figures may differ. */
const SAME_FIGURE = { share: 2e-3, least: 2e-3 };

export function comparePlanned(first: PlannedDrawing, other: PlannedDrawing, variant: PartVariant): string[] {
  const name = new Map(SIDES.flatMap((side) => [...nameMap(first, other, { side, variant })]));
  return [
    ...(variant.keepsIds ? compareNames(name) : []),
    ...compareFindings(
      aboutThePart(first),
      aboutThePart(other),
      (id) => name.get(id) ?? `no region for ${id}`,
    ),
    ...SIDES.flatMap((side) =>
      compareLines(faceOf(first.plan, side), faceOf(other.plan, thereOf(side, variant)), variant).map(
        (difference) => (side === 'far' ? `far face, ${difference}` : difference),
      ),
    ),
    ...compareRemoved(first, other),
  ];
}

const SIDES = ['near', 'far'] as const satisfies readonly SheetSide[];

function thereOf(side: SheetSide, { isTurnedOver }: PartVariant): SheetSide {
  return isTurnedOver === true ? (side === 'near' ? 'far' : 'near') : side;
}

function faceOf(plan: EtchPlan | undefined, side: SheetSide): EtchPlan | undefined {
  return side === 'near' ? plan : plan?.far;
}

/** Share by which the metal taken may differ, and mm³ that it may at least. */
const SAME_METAL = { share: 1e-4, least: 0.05 };

function compareRemoved({ removed: first }: PlannedDrawing, { removed: other }: PlannedDrawing): string[] {
  if (first === undefined || other === undefined) return [];
  const most = Math.max(SAME_METAL.least, SAME_METAL.share * first);
  return Math.abs(first - other) <= most ? [] : [`takes ${first} mm³, the other ${other}`];
}

function regionsOf({ part, plan }: PlannedDrawing, side: SheetSide): readonly Region[] {
  return (side === 'near' ? part?.regions : plan?.far?.regions) ?? [];
}

/** Region of a face of the first drawing to the same ground in the other, by the ids. */
function nameMap(
  first: PlannedDrawing,
  other: PlannedDrawing,
  { side, variant }: { readonly side: SheetSide; readonly variant: PartVariant },
): Map<string, string> {
  const names = new Map<string, string>();
  const there = regionsOf(other, thereOf(side, variant));
  for (const { id, label } of regionsOf(first, side)) {
    const at = variant.placed(label);
    names.set(id, there.find(({ loops }) => isInsideLoops(loops, at))?.id ?? 'none');
  }
  return names;
}

function compareNames(names: ReadonlyMap<string, string>): string[] {
  return [...names].filter(([id, there]) => id !== there).map(([id, there]) => `${id} is called ${there}`);
}

function aboutThePart({ findings }: PlannedDrawing): Finding[] {
  return findings.filter(({ code }) => !OF_HOW_IT_IS_DRAWN.has(code));
}

function compareFindings(
  first: readonly Finding[],
  other: readonly Finding[],
  named: (id: string) => string,
): string[] {
  const left = first.map((each) => said(each, named));
  const right = other.map((each) => said(each, (id) => id));
  const differences: string[] = [];
  const unmatched = [...right];
  for (const mine of left) {
    const at = unmatched.findIndex((theirs) => theirs.head === mine.head && isSame(theirs.facts, mine.facts));
    if (at < 0) differences.push(`only first: ${mine.head} ${JSON.stringify(mine.facts)}`);
    else unmatched.splice(at, 1);
  }
  return [
    ...differences,
    ...unmatched.map(({ head, facts }) => `only other: ${head} ${JSON.stringify(facts)}`),
  ];
}

interface Said {
  readonly head: string;
  readonly facts: Readonly<Record<string, unknown>>;
}

/** A drawing taken apart really has the borders twice that two of its outlines shared, and no outline left that crosses itself. */
const OF_HOW_IT_IS_DRAWN: ReadonlySet<string> = new Set([
  'line-doubled',
  'outline-crosses-itself',
  'outlines-overlap',
]);

/** Line numbers and places in the drawing are what a variant changes. */
const OF_THE_DRAWING = new Set(['line', 'otherLine', 'at', 'kind', 'regions']);
/** A web's two levels, whichever face is the near one. */
const OF_A_SIDE = new Set(['near', 'far']);

function said({ code, facts, place }: Finding, named: (id: string) => string): Said {
  const regions = (place.regions ?? []).map(named).sort();
  return {
    head: `${code} ${regions.join(' ')}`,
    facts: Object.fromEntries(
      Object.entries(facts).filter(([key]) => !(OF_THE_DRAWING.has(key) || OF_A_SIDE.has(key))),
    ),
  };
}

function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === 'number' && typeof b === 'number') {
    return Math.abs(a - b) <= Math.max(SAME_FIGURE.least, SAME_FIGURE.share * Math.abs(a));
  }
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return a === b;
  const keys = Object.keys(a);
  const [left, right] = [a as Record<string, unknown>, b as Record<string, unknown>];
  return keys.length === Object.keys(b).length && keys.every((key) => isSame(left[key], right[key]));
}

function compareLines(
  first: EtchPlan | undefined,
  other: EtchPlan | undefined,
  { placedBack }: PartVariant,
): string[] {
  const left = first?.stages ?? [];
  const right = other?.stages ?? [];
  if (left.length !== right.length) return [`${left.length} stages, ${right.length} in the other`];
  return left.flatMap((stage, i) => {
    const mine = stage.lines.flatMap(({ spans }) => spans);
    const theirs = (right[i]?.lines ?? []).flatMap(({ spans }) => spans).map(placedBack);
    const where = `stage ${stage.number}`;
    const gap = Math.max(farthest(mine, theirs), farthest(theirs, mine));
    const [long, there] = [spansLength(mine), spansLength(theirs)];
    const most = SAME_LENGTH * Math.max(1, stage.lines.length);
    return [
      ...(gap > SAME_LINE ? [`${where}: lines ${gap.toFixed(4)} mm apart`] : []),
      ...(Math.abs(long - there) > most
        ? [`${where}: cuts ${long.toFixed(4)}, the other ${there.toFixed(4)} mm`]
        : []),
    ];
  });
}

const SHARES = [0.001, 0.1, 0.25, 0.5, 0.75, 0.9, 0.999];

/** The farthest that any of some places along the spans lies from the others, up to a hair over the tolerance or endless. */
function farthest(from: readonly Span[], to: readonly Span[]): number {
  if (from.length === 0) return 0;
  const index = indexBoxes(to.map((span) => growBox(boxOfSpan(span), 2 * SAME_LINE)));
  let worst = 0;
  for (const span of from) {
    for (const share of SHARES) worst = Math.max(worst, nearest(pointAlong(span, share), to, index));
  }
  return worst;
}

function nearest({ x, y }: Point, spans: readonly Span[], index: ReturnType<typeof indexBoxes>): number {
  const near = spans.length === 0 ? [] : index.meeting({ minX: x, minY: y, maxX: x, maxY: y });
  const gaps = near.flatMap((each) => {
    const span = spans[each];
    return span === undefined ? [] : [distanceToSpan(span, { x, y })];
  });
  return gaps.length === 0 ? Number.POSITIVE_INFINITY : Math.min(...gaps);
}

/**
 * A case drawn as SVG, to look at: the linework grey, the arrangement's edges and corners dark, and of each stage the opening dashed
 * and the lines full in its colour. A case is a seed and number of the random drawings ("105/122"), a fixture or a sample by
 * its name, a job file, or a drawing.
 */
import { readFileSync } from 'node:fs';
import { readJobInput } from '#cli/read-job-input.ts';
import type { Drawing } from '#drawing/drawing.ts';
import { readDrawing } from '#drawing/read/read-drawing.ts';
import type { Finding } from '#findings/finding.ts';
import { TRICKY_BLOCKS } from '#fixtures/tricky-blocks.ts';
import { TRICKY_CONTAINERS } from '#fixtures/tricky-containers.ts';
import { TRICKY_KINDS } from '#fixtures/tricky-kinds.ts';
import { TRICKY_PLATES } from '#fixtures/tricky-plates.ts';
import { TRICKY_POLYLINES } from '#fixtures/tricky-polylines.ts';
import { TRICKY_ROUNDS } from '#fixtures/tricky-rounds.ts';
import { TRICKY_SPLINES } from '#fixtures/tricky-splines.ts';
import { arrange } from '#geometry/arrangement/arrange.ts';
import type { Arrangement } from '#geometry/arrangement/arrangement.ts';
import { lineSpan } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { runJob } from '#run/run-job.ts';
import { drawPart } from '#support/random-drawings/draw-part.ts';
import { asksOf, planDrawn } from '#support/random-drawings/plan-drawn.ts';
import { type ShownLines, svgOfLines } from '#support/random-drawings/svg-of-plans.ts';

export interface ShownCase {
  readonly svg: string;
  /** A line each. */
  readonly findings: readonly string[];
}

interface Case {
  readonly drawing?: Drawing | undefined;
  readonly plan?: EtchPlan | undefined;
  readonly arrangement?: Arrangement | undefined;
  readonly findings: readonly Finding[];
}

const FIXTURES = [
  ...TRICKY_BLOCKS,
  ...TRICKY_CONTAINERS,
  ...TRICKY_KINDS,
  ...TRICKY_PLATES,
  ...TRICKY_POLYLINES,
  ...TRICKY_ROUNDS,
  ...TRICKY_SPLINES,
];

const JOIN_TOLERANCE = 0.05;

/** Undefined where nothing goes by that name. */
export async function showCase(name: string): Promise<ShownCase | undefined> {
  const found = await findCase(name);
  if (found === undefined) return undefined;
  const { drawing, plan, findings, arrangement = plan?.arrangement } = found;
  const layers = [
    ...(drawing === undefined ? [] : [drawnLines(drawing)]),
    ...edgesOf(arrangement),
    ...stagesOf(plan),
  ];
  return { svg: svgOfLines(name, layers), findings: findings.map(said) };
}

function said({ severity, code, place: { at, regions = [], path } }: Finding): string {
  const where = at === undefined ? [] : [`${at.x.toFixed(3)},${at.y.toFixed(3)}`];
  return [severity, code, ...where, ...regions, ...(path === undefined ? [] : [path])].join(' ');
}

async function findCase(name: string): Promise<Case | undefined> {
  const [, seed, index] = name.match(/^(\d+)\/(\d+)$/) ?? [];
  if (seed !== undefined && index !== undefined) {
    const part = drawPart(Number(seed), Number(index));
    const planned = await planDrawn(
      part,
      { curves: part.curves, unit: 'mm', isExploded: false },
      asksOf(part),
    );
    return { ...planned, arrangement: planned.part?.arrangement };
  }
  const fixture = FIXTURES.find((each) => each.name === name);
  if (fixture !== undefined) {
    const { bytes, unit, wideLines } = fixture;
    return drawnCase(readDrawing(bytes, { ...(unit && { unit }), ...(wideLines && { wideLines }) }));
  }
  if (/\.dxf$/i.test(name)) return drawnCase(readDrawing(readFileSync(name), {}));
  const input = readJobInput(/\.json$/i.test(name) ? name : `samples/${name}.job.json`);
  if (!('refused' in input)) return runJob(input, { withoutFiles: true });
  return /\.json$/i.test(name) ? { findings: input.refused } : undefined;
}

function drawnCase(drawing: Drawing): Case {
  const linework = drawing.curves.flatMap(({ spans }, source) => spans.map((span) => ({ span, source })));
  const { arrangement } = arrange(linework, { joinTolerance: JOIN_TOLERANCE });
  return { drawing, arrangement, findings: drawing.findings };
}

function drawnLines({ curves }: Drawing): ShownLines {
  return { color: '#c8c8c8', width: 4, spans: curves.flatMap(({ spans }) => spans) };
}

/** Corners are lines without length, which round ends make dots. */
function edgesOf(arrangement: Arrangement | undefined): ShownLines[] {
  if (arrangement === undefined) return [];
  const { edges, vertices } = arrangement;
  return [
    { color: '#404040', width: 1, spans: edges.map(({ span }) => span) },
    { color: '#404040', width: 4, spans: vertices.map((vertex) => lineSpan(vertex, vertex)) },
  ];
}

function stagesOf(plan: EtchPlan | undefined): ShownLines[] {
  return (plan?.stages ?? []).flatMap(({ color, opening, lines }) => [
    { color, width: 1, dashes: '6 4', spans: opening.flat() },
    { color, width: 2.5, spans: lines.flatMap(({ spans }) => spans) },
  ]);
}

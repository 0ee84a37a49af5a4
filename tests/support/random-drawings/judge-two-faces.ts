/**
 * One random part of two faces, planned as drawn and in every variant: how the plans differ. Beside the variants of any part, the far face is
 * drawn as seen from it, or in a drawing of its own, and the part is turned over, near for far.
 */
import type { Span } from '#geometry/span.ts';
import { type Movement, moveSpan } from '#support/geometry/move-spans.ts';
import type { TrialFailure } from '#support/seeds/trials.ts';
import { comparePlanned } from './compare-planned.ts';
import { rollDice } from './dice.ts';
import { BACK, type DrawnCurve, POCKETS, SHEET } from './drawn-part.ts';
import { movedCurves, type PartVariant, variantsOf } from './part-variants.ts';
import { type Drawn, type DrawnAsk, planDrawn } from './plan-drawn.ts';
import { linesOf, svgOfLines } from './svg-of-plans.ts';
import { drawTwoFaces } from './two-faced-part.ts';

/** Keeps the variants' own numbers apart from those of the part. */
const OTHER_SEED = 49_979_687;

export async function judgeTwoFaces(seed: number, index: number): Promise<TrialFailure[]> {
  const { part, asks } = drawTwoFaces(seed, index);
  const isAsked = (side: 'near' | 'far') => asks.some(({ face }) => face === side);
  if (!isAsked('near') || !isAsked('far')) return [];
  const first = await planDrawn(part, { curves: part.curves, unit: 'mm', isExploded: false }, asks);
  const failures: TrialFailure[] = [];
  for (const variant of [
    ...variantsOf(part.curves, rollDice(seed + OTHER_SEED, index)),
    ...farVariantsOf(part.curves),
  ]) {
    const placed = asks.map(
      ({ at, ...ask }): DrawnAsk => ({ ...askOn(ask, variant), at: variant.placed(at) }),
    );
    const other = await planDrawn(part, variant, placed);
    const differences = comparePlanned(first, other, variant);
    if (differences.length === 0) continue;
    const title = `${part.kind}, ${part.edgeDatum}, ${part.masking}, ${variant.name}`;
    failures.push({
      what: `${title}: ${differences.join('; ')}`,
      picture: () =>
        svgOfLines(
          title,
          [first.plan, first.plan?.far].flatMap((face, side) => [
            { color: '#999', width: 1, spans: face?.regions.flatMap(({ loops }) => loops.flat()) ?? [] },
            { color: side === 0 ? '#d22' : '#2a2', width: 3, spans: linesOf(face) },
            {
              color: side === 0 ? '#22d' : '#a2a',
              width: 1,
              spans: linesOf(side === 0 ? other.plan : other.plan?.far).map(variant.placedBack),
            },
          ]),
        ),
    });
  }
  return failures;
}

type FarVariant = PartVariant & Drawn;

function askOn(ask: Omit<DrawnAsk, 'at'>, { isTurnedOver }: PartVariant): Omit<DrawnAsk, 'at'> {
  if (isTurnedOver !== true) return ask;
  return { ...ask, face: ask.face === 'far' ? 'near' : 'far' };
}

function farVariantsOf(curves: readonly DrawnCurve[]): FarVariant[] {
  const own = curves.filter(({ layer }) => layer === BACK);
  const others = curves.filter(({ layer }) => layer !== BACK);
  // About the line x = 31: mirrored about the x axis and turned by half a turn.
  const over: Movement = { mirrored: true, turn: Math.PI, factor: 1, shift: { x: 62, y: 0 } };
  const away: Movement = { mirrored: true, turn: 0.7, factor: 1, shift: { x: -310, y: 95 } };
  const near = [
    [3, 4],
    [66, 29],
  ] as const;
  const far = near.map(([x, y]) => {
    const { start } = moveSpan({ kind: 'line', start: { x, y }, end: { x, y } }, away);
    return [start.x, start.y];
  });
  const bothFaces = others.filter(({ layer }) => layer !== POCKETS && layer !== SHEET);
  return [
    inPlace('far face as seen from it', {
      curves: [...others, ...movedCurves(own, over)],
      far: { view: 'far', mirror: { from: [31, -5], to: [31, 40] } },
    }),
    inPlace('far face in a drawing of its own', {
      curves: others,
      own: movedCurves([...own, ...bothFaces], away),
      far: { drawing: 'back.dxf', view: 'far', points: { near, far } },
    }),
    inPlace('turned over', {
      curves: curves.map((curve) => ({ ...curve, layer: OTHER_SIDE[curve.layer] ?? curve.layer })),
      isTurnedOver: true,
      keepsIds: false,
    }),
  ];
}

const OTHER_SIDE: Readonly<Record<string, string>> = { [BACK]: POCKETS, [POCKETS]: BACK };

function inPlace(
  name: string,
  drawn: Pick<Drawn, 'curves' | 'own' | 'far'> & Partial<PartVariant>,
): FarVariant {
  const still = { placed: (at: { x: number; y: number }) => at, placedBack: (span: Span) => span };
  return { name, unit: 'mm', isExploded: false, keepsIds: true, ...still, ...drawn };
}

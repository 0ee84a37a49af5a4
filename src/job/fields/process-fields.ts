/** The bath and what is known of it, the drawn line, the way of masking. */
import * as z from 'zod/mini';
import { SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import type { Bath } from '#bath/known-figures.ts';
import { resolveFactor, resolveFactorSpread } from '#job/resolve/resolve-factor.ts';
import { resolveRate, resolveSpread } from '#job/resolve/resolve-rate.ts';
import { fromMemory } from '#job/sources.ts';
import { type EtchFiguresAsked, etchFigures } from './etch-figure-fields.ts';
import { always, type FollowSetting, needed, open, usually, type ValuesOf } from './field.ts';
import { atMostOneOf, group, groupIfGiven, oneOf, optionalGroup } from './group.ts';
import { byHand, choice, length, notNegative, number, positive, rate, share } from './kinds.ts';

const LOAD = { least: 1, most: 1000, isWhole: true };
/** mm/min */
const HOIST = { least: 0.01, most: 1e5, digits: 5 };
const USUAL_RATE_SPREAD = fromMemory(0.05);

const width = length({ shown: { least: 0.01, most: 20 } });

const members = {
  ...etchFigures,
  rateSpread: always(share(), {
    label: 'Rate may be off by',
    help: 'share by which the rate may be off, ±',
    quantity: 'rate spread',
    usual: `${USUAL_RATE_SPREAD.value}, ${USUAL_RATE_SPREAD.source}, or what coupons and temperature leave open where that is more`,
  }),
  factorSpread: always(number('undercut / depth', { schema: notNegative, least: 0, most: 2 }), {
    label: 'Factor may be off by',
    help: 'how far the etch factor may be off, ± (undercut / depth); 0.4 moves the line of a 2 mm pocket by 0.8 mm',
    quantity: 'etch factor spread',
    usual:
      'what coupons leave open; what the figures of the bath say of it, a range on its wider side; else a tenth of the factor, from memory',
  }),
  // Before masking, all that is not covered: docs/method.md, M8.7.
  sizing: groupIfGiven(
    {
      amount: open(length({ shown: { least: 0, most: 50 } }), {
        label: 'Sized by',
        help: 'before it is masked the sheet is etched by so much on each bare face; its edges and holes are bare too; 0: the sheet stays as it comes',
        quantity: 'sizing, off each bare face',
      }),
      to: open(length({ least: SMALLEST_POSITIVE, shown: { least: 0.1, most: 100 } }), {
        label: 'Sized to',
        help: 'or to this mean thickness',
        quantity: 'sizing, mean thickness after it',
      }),
      faces: usually(choice({ both: 'both faces', one: 'one face, the other covered' }), {
        label: 'Bare for sizing',
        help: '`"both"`: a bare sheet hangs with both faces bare; `"one"`: the far face is covered',
        usual: { value: 'both' },
      }),
    },
    { ways: [oneOf('amount', 'to')] },
  ),
  // What lies between the line that was planned and the cut in the maskant (docs/method.md, M6.5).
  scribing: optionalGroup(
    {
      cut: usually(length({ shown: { least: 0, most: 10 } }), {
        label: 'Cut off its line by',
        help: 'how far a cut in the maskant may lie off the line that it follows, ±',
        quantity: 'scribing, ±',
        usual: fromMemory(0.125),
      }),
      template: groupIfGiven({
        slot: needed(width, {
          label: 'Slot of the template',
          help: 'width of the slots that are scribed through; with `blade` the play of the knife counts',
        }),
        blade: needed(width, {
          label: 'Blade in the slot',
          help: 'width of the blade that runs in them',
        }),
      }),
      laying: open(length({ shown: { least: 0, most: 10 } }), {
        label: 'Laid on, off by',
        help: 'how far template, film or machine may lie off the part, ±',
        usual: '0',
      }),
      stretch: open(share(), {
        label: 'Stretch of the template',
        help: 'share by which it may be longer or shorter than drawn, ±, about the middle of the part',
        usual: '0',
      }),
    },
    { order: { filled: ['cut'] } },
  ),
  tank: groupIfGiven({
    litres: needed(number('L', { schema: positive, least: SMALLEST_POSITIVE, most: 1e6 }), {
      label: 'Litres of bath',
      help: "the bath's volume, litres",
    }),
    dissolved: needed(number('g/L', { schema: notNegative, least: 0, most: 1000 }), {
      label: 'Dissolved metal now',
      help: 'dissolved metal in it now, g/L',
    }),
    dissolvedLimit: needed(number('g/L', { schema: positive, least: SMALLEST_POSITIVE, most: 1000 }), {
      label: 'Dissolved metal, limit',
      help: 'dissolved metal that it may hold, g/L',
    }),
  }),
  load: open(
    byHand(
      number('', { ...LOAD, schema: z.number().check(z.gte(LOAD.least), z.lte(LOAD.most), z.multipleOf(1)) }),
    ),
    {
      label: 'Parts hung at once',
      help: 'how many parts hang in the bath at once: gas, heat and dissolved metal are of all of them',
      usual: '1',
    },
  ),
  // Lifting, draining, the first rinse.
  timing: usually(number('min', { schema: notNegative, least: 0, most: 60 }), {
    label: 'Immersion may be off by',
    help: 'minutes by which each immersion may be off, ±',
    quantity: 'timing of an immersion, ±',
    usual: fromMemory(0.25),
  }),
  hoist: groupIfGiven({
    slowest: needed(rate(HOIST), {
      label: 'Slowest hoist',
      help: 'slowest speed, length per minute, at which the part can be drawn out of the bath; tapers are then also compared without steps',
    }),
    fastest: needed(rate(HOIST), { label: 'Fastest hoist', help: 'fastest such speed' }),
  }),
  // What is drawn is the edge on the shallower floor unless the drawing says otherwise (docs/method.md, M3.3).
  edgeDatum: usually(
    choice({
      'shallow-edge': 'edge on the shallower floor',
      'mid-wall': 'middle of the wall',
      'deep-foot': 'foot of the wall, deeper floor',
    }),
    {
      label: 'A drawn line is',
      help: 'what a drawn line is: `"shallow-edge"`, the edge on the shallower floor; `"mid-wall"`; `"deep-foot"`, the foot of the wall on the deeper floor',
      usual: { value: 'shallow-edge' },
    },
  ),
  masking: usually(
    choice({
      'peel-next': 'one coat, peeled deepest first',
      're-mask': 'one coat per stage, shallowest first',
    }),
    {
      label: 'Masking',
      help: '`"peel-next"`: one coat, all lines scribed first, peeled piece by piece from the deepest; `"re-mask"`: a new coat and one window for each stage, from the shallowest (docs/method.md, M3.5)',
      usual: { value: 'peel-next' },
    },
  ),
};

export type ProcessValues = ValuesOf<typeof members>;

export const process = group(members, {
  ways: [atMostOneOf('rate', 'coupon'), atMostOneOf('etchFactor', 'depthPerUndercut', 'coupon.opening')],
  order: {
    filled: [
      'rateSpread',
      'timing',
      'edgeDatum',
      'masking',
      'etchFactor',
      'rate',
      'factorSpread',
      'scribing',
    ],
  },
  follow: {
    etchFactor(asked, setting) {
      const general = resolveFactor(asked, knownOf(asked, setting)).table?.[0]?.[1];
      return general === undefined ? undefined : { value: general };
    },
    // At another temperature the rate follows from the bath's own: filled in, it would be turned twice.
    rate: (asked, setting) =>
      asked.bathC === undefined ? resolveRate(asked, knownOf(asked, setting)).rate : undefined,
    rateSpread: (asked, setting) =>
      resolveSpread(resolveRate(asked, knownOf(asked, setting)).rate, USUAL_RATE_SPREAD),
    factorSpread: (asked, setting) => resolveFactorSpread(asked, knownOf(asked, setting)),
  },
});

function knownOf(asked: Pick<EtchFiguresAsked, 'bath'>, { figures, units }: FollowSetting) {
  return { bath: bathOf(asked, { figures }), unit: units.job };
}

/** Undefined where none is named, or none of that name is known. */
export function bathOf(
  { bath }: Pick<EtchFiguresAsked, 'bath'>,
  { figures }: Pick<FollowSetting, 'figures'>,
): Bath | undefined {
  return figures.baths.find(({ id }) => id === bath);
}

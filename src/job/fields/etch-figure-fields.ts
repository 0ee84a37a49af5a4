/** What is known of the etch: the bath, its rate and its etch factor, as given or measured on coupons. */
import * as z from 'zod/mini';
import { FACTOR_UNITS, SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import { type AskedOf, open, withParts } from './field.ts';
import {
  byHand,
  name,
  notNegative,
  positive,
  rate,
  raw,
  rows,
  shownLength,
  shownNumber,
  temperature,
} from './kinds.ts';

/** One for every depth, or rows [depth, factor]. */
const factor = z.union([positive, rows(z.tuple([notNegative, positive]))]);

function factorIn(unit: string) {
  return byHand(raw(factor), shownNumber(unit, { least: SMALLEST_POSITIVE, most: 100 }));
}

/** mm; what a micrometer can resolve: a coupon must have lost, or its opening gained, as much. */
export const LEAST_CHANGE = 0.001;
const READ = shownLength({ least: LEAST_CHANGE, most: 1000 });
/** ± */
const GAUGE = shownLength({ least: 0.001, most: 1 });
const [UNDERCUT_OVER_DEPTH, DEPTH_OVER_UNDERCUT] = FACTOR_UNITS;

/** Of the same alloy, temper and thickness, etched just before the part. */
const coupon = z.strictObject({
  before: positive,
  after: positive,
  minutes: positive,
  faces: z.union([z.literal(1), z.literal(2)]),
  /** How far a reading may be off, ±. */
  gauge: z.optional(positive),
  /** In its maskant: width before, width at the metal's surface after, depth etched there. */
  opening: z.optional(
    z.strictObject({ before: positive, after: positive, depth: positive, gauge: z.optional(positive) }),
  ),
});

const bathUsual = "the bath's, with a warning; needed where the bath has none";

export const etchFigures = {
  bath: open(name(), { label: 'Bath', help: 'bath by id, listed below' }),
  etchFactor: withParts(
    open(factorIn(UNDERCUT_OVER_DEPTH), {
      label: 'Etch factor',
      help: 'undercut / depth, a number or a table `[[depth, factor], …]`, linear in between, constant beyond both ends',
      usual: bathUsual,
    }),
    { byDepth: { label: 'Factor by depth', control: { as: 'own' } } },
  ),
  depthPerUndercut: open(factorIn(DEPTH_OVER_UNDERCUT), {
    label: 'Depth over undercut',
    help: 'the inverse etch factor, depth / undercut, as photochemical machining quotes it; in place of `etchFactor`, in the same forms (a table is inverted row by row)',
  }),
  rate: open(rate({ least: 1e-4, most: 100, digits: 4 }), {
    label: 'Etch rate',
    help: 'depth per minute',
    usual: `${bathUsual} and there is no coupon`,
  }),
  rateAtC: open(temperature(), {
    label: 'Rate measured at',
    help: '°C at which the rate was measured: see [below](#coupons-and-temperature)',
    usual: "the bath's own where it is known",
  }),
  bathC: open(temperature(), {
    label: 'Bath run at',
    help: '°C at which the bath is run: see [below](#coupons-and-temperature)',
    usual: 'the rate as it stands',
  }),
  coupon: withParts(
    open(raw(z.union([coupon, rows(coupon)])), {
      label: 'Coupons',
      help: 'a coupon or a list of them, in place of `rate`: see [below](#coupons-and-temperature)',
    }),
    {
      before: { label: 'Before', control: READ },
      after: { label: 'After', control: READ },
      minutes: { label: 'In the bath', control: shownNumber('min', { least: 0.01, most: 1e5 }) },
      faces: { label: 'Bare', control: { as: 'choice', words: { 1: 'on one face', 2: 'on both faces' } } },
      gauge: { label: 'Gauge may be off by', control: GAUGE },
      openingBefore: { label: 'Width before', control: READ },
      openingAfter: { label: 'Width after', control: READ },
      openingDepth: { label: 'Depth in it', control: READ },
      openingGauge: { label: 'Widths may be off by', control: GAUGE },
    },
  ),
};

export type EtchFiguresAsked = AskedOf<typeof etchFigures>;

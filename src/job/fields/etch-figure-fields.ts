/** What is known of the etch: the bath, its rate and its etch factor, as given or measured on coupons. */
import * as z from 'zod/mini';
import { type AskedOf, open } from './field.ts';
import { name, notNegative, positive, rate, raw, rows, temperature } from './kinds.ts';

/** One for every depth, or rows [depth, factor]. */
const factor = raw(z.union([positive, rows(z.tuple([notNegative, positive]))]));

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
  etchFactor: open(factor, {
    label: 'Etch factor',
    help: 'undercut / depth, a number or a table `[[depth, factor], …]`, linear in between, constant beyond both ends',
    usual: bathUsual,
  }),
  depthPerUndercut: open(factor, {
    label: 'Depth over undercut',
    help: 'the inverse etch factor, depth / undercut, as photochemical machining quotes it; in place of `etchFactor`, in the same forms (a table is inverted row by row)',
  }),
  rate: open(rate(), {
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
  coupon: open(raw(z.union([coupon, rows(coupon)])), {
    label: 'Coupons',
    help: 'a coupon or a list of them, in place of `rate`: see [below](#coupons-and-temperature)',
  }),
};

export type EtchFiguresAsked = AskedOf<typeof etchFigures>;

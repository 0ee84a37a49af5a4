/** The coupons of a job in millimetres, readings' doubt filled in. */
import {
  COARSEST_COUPON,
  COARSEST_OPENING,
  type Coupon,
  THICKNESS_GAUGE,
  WIDTH_GAUGE,
} from '#bath/coupon.ts';
import type { Provenance } from '#bath/provenance.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import type { EtchFiguresAsked } from './fields/etch-figure-fields.ts';
import { jobMillimetres, provenanceOf } from './job-figures.ts';

export function couponsOf(given: EtchFiguresAsked['coupon'], unit: LengthUnit): Coupon[] {
  const length = (value: number) => jobMillimetres(value, unit);
  const doubt = (value: number | undefined, otherwise: number) =>
    value === undefined ? otherwise : value * millimetresIn(unit);
  return [given ?? []].flat().map(({ before, after, minutes, faces, gauge, opening }) => ({
    before: length(before),
    after: length(after),
    minutes,
    faces,
    gauge: doubt(gauge, THICKNESS_GAUGE.value),
    ...(opening === undefined
      ? {}
      : {
          opening: {
            before: length(opening.before),
            after: length(opening.after),
            depth: length(opening.depth),
            gauge: doubt(opening.gauge, WIDTH_GAUGE.value),
          },
        }),
  }));
}

/** What was measured, for the plan's provenance. */
export function couponWords(coupons: readonly Coupon[]): string {
  const [only] = coupons;
  if (coupons.length > 1 || only === undefined) return `mean of ${coupons.length} coupons`;
  return `coupon, ${only.faces === 1 ? 'one face' : 'both faces'} bare for ${only.minutes} min`;
}

/** The figures that coupons are judged with where the job does not say. */
export function couponProvenance(given: EtchFiguresAsked['coupon']): Provenance[] {
  const coupons = [given ?? []].flat();
  const openings = coupons.flatMap(({ opening }) => opening ?? []);
  const isOpen = (each: { readonly gauge?: number | undefined }) => each.gauge === undefined;
  return [
    ...(coupons.length === 0 ? [] : [provenanceOf('widest doubt of a coupon’s rate', '±', COARSEST_COUPON)]),
    ...(openings.length === 0
      ? []
      : [provenanceOf('widest doubt of a coupon’s etch factor', '±', COARSEST_OPENING)]),
    ...(coupons.some(isOpen) ? [provenanceOf('coupon thickness reading, ±', 'mm', THICKNESS_GAUGE)] : []),
    ...(openings.some(isOpen) ? [provenanceOf('coupon width reading, ±', 'mm', WIDTH_GAUGE)] : []),
  ];
}

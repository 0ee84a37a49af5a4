/** Findings about the bath and the figures of the process: etch factor, rate, coupons, temperature, load. Lengths in mm. */
import { lengthWriter } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

type ProcessFigure = 'etch factor' | 'etch rate';

const mm = lengthWriter(figureOf);

export const bathWords = {
  /** g/L and g. */
  'bath-overloaded': warn<Figures<'before' | 'after' | 'limit' | 'room' | 'grams'>>({
    title: 'Bath would hold too much metal',
    say: ({ before, after, limit, room, grams }) => ({
      reason: [
        `The part adds ${figureOf(grams)} g of metal to the bath:`,
        `from ${figureOf(before)} to ${figureOf(after)} g/L, over its limit of ${figureOf(limit)} g/L.`,
      ],
      remedy: `There is room for ${figureOf(room)} g: renew or regenerate the bath before the run, and measure the rate again.`,
      value: after,
      limit,
    }),
  }),
  /** K, and shares of the rate. */
  'bath-warms': note<Figures<'parts' | 'warmer' | 'faster' | 'spread'>>({
    title: 'The run warms its bath',
    say: ({ parts, warmer, faster, spread }) => ({
      reason: `${parts === 1 ? 'The part gives' : `${parts} parts give`} off heat that warms the bath by up to ${warmer.toFixed(1)} K, and so etches up to ${percent(faster)} faster; the rate is planned to ± ${percent(spread)}.`,
      remedy: 'Hold the temperature of the bath, hang fewer parts at once, or gauge more often.',
      value: faster,
      limit: spread,
    }),
  }),
  'bath-sheet-missing': note<{ bath: string; lacks: 'reaction' | 'density' }>({
    title: 'No bath sheet',
    say: ({ bath, lacks }, show) => ({
      reason:
        lacks === 'reaction'
          ? [
              `Gas given off, chemicals used and ventilation are not calculated for ${bath}:`,
              `only aluminium in caustic soda is. Gas may be given off all the same.`,
            ]
          : [
              `Gas given off, caustic used and ventilation are not calculated for ${bath}:`,
              `the density of the sheet is not known.`,
            ],
      remedy:
        lacks === 'reaction'
          ? 'Have extraction, chemicals and waste calculated by the site’s own process specification.'
          : `Give ${show.field('stock.alloy')} or ${show.field('stock.density')}.`,
    }),
  }),
  'bath-wrong-for-alloy': warn<{ bath: string; alloy: string; etches: string; metal: string }>({
    title: 'Bath is for another metal',
    say: ({ bath, alloy, etches, metal }) => ({
      reason: `The figures of ${bath} are for ${etches}; ${alloy} is ${metal}.`,
      remedy: `Choose a bath for ${metal}, as your process specification names it.`,
    }),
  }),
  'process-figure-missing': stop<{ figure: ProcessFigure; bath: string | undefined }>({
    title: 'Process figure missing',
    say: ({ figure, bath }, show) => ({
      reason:
        bath === undefined
          ? `The ${figure} is not given.`
          : `The ${figure} is not given, and no figure is known for ${bath}.`,
      remedy:
        figure === 'etch rate'
          ? `Etch a coupon and give ${show.field('process.coupon')}, or give ${show.field('process.rate')}.`
          : `Measure undercut over depth on a coupon and give ${show.field('process.etchFactor')}.`,
    }),
  }),
  'process-figure-not-measured': warn<{ figure: ProcessFigure; value: number; unit: string; bath: string }>({
    title: 'Process figure not measured',
    say: ({ figure, value, unit, bath }, show) => ({
      reason: `The ${figure} is ${figure === 'etch rate' ? show.rate(value, figureOf) : `${figureOf(value)} ${unit}`}, a general figure for ${bath}; yours is not known until it is measured.`,
      remedy:
        figure === 'etch rate'
          ? `Etch a coupon of the same alloy, temper and thickness just before the run and give ${show.field('process.coupon')}.`
          : `Measure undercut over depth on a coupon and give ${show.field('process.etchFactor')}; every scribe line depends on it.`,
    }),
  }),
  'coupon-not-etched': stop<{ before: number; after: number }>({
    title: 'Coupon lost no metal',
    say: ({ before, after }, show) => ({
      reason: `The coupon is ${mm(before, show)} before and ${mm(after, show)} after.`,
      remedy: 'Give the thickness before and after the etch; after must be the smaller.',
    }),
  }),
  'coupon-not-undercut': stop<{ before: number; after: number }>({
    title: 'Coupon shows no undercut',
    say: ({ before, after }, show) => ({
      reason: `The opening is ${mm(before, show)} wide in the maskant and ${mm(after, show)} at the metal’s surface.`,
      remedy: 'Give the width before and after the etch; after must be the larger.',
    }),
  }),
  /** Shares of the rate, 95 %. */
  'coupon-too-coarse': warn<Figures<'share' | 'limit' | 'coupons'>>({
    title: 'Rate not known closely enough',
    say: ({ share, limit, coupons }) => ({
      reason: `${coupons === 1 ? 'The coupon gives' : `The ${coupons} coupons give`} the rate only to ± ${percent(share)} (95 %).`,
      remedy:
        coupons === 1
          ? `Etch the coupon ${figureOf(Math.ceil((share / limit) * 10) / 10)} times as long, or gauge it more finely, to reach ± ${percent(limit)}.`
          : 'Etch more coupons, or find out why they differ.',
      value: share,
      limit,
    }),
  }),
  /** Shares of the etch factor, 95 %. */
  'opening-too-coarse': warn<{ share: number; limit: number }>({
    title: 'Etch factor not known closely enough',
    say: ({ share, limit }) => ({
      reason: `The coupon’s opening gives the etch factor only to ± ${percent(share)} (95 %).`,
      remedy: `Etch the opening deeper, or gauge its widths more finely, to reach ± ${percent(limit)}; every scribe line depends on it.`,
      value: share,
      limit,
    }),
  }),
  /** mm/min */
  'etch-rate-doubtful': warn<Figures<'rate' | 'least' | 'most'>>({
    title: 'Etch rate doubtful',
    say: ({ rate, least, most }) => ({
      reason: `A rate of ${figureOf(rate)} mm/min is far outside the usual range, ${figureOf(least)} to ${figureOf(most)} mm/min.`,
      remedy:
        'Check the figure and its unit, or the minutes and thicknesses of the coupon that it comes from.',
      value: rate,
      limit: rate < least ? least : most,
    }),
  }),
  /** Undercut over depth. */
  'etch-factor-impossible': stop<Figures<'factor' | 'least' | 'most'>>({
    title: 'Etch factor impossible',
    say: ({ factor, least, most }) => ({
      reason: `An etch factor of ${figureOf(factor)} (undercut / depth) is not possible; the accepted range is ${figureOf(least)} to ${figureOf(most)}.`,
      remedy: 'Check the figure, its convention and the coupon that it comes from.',
      value: factor,
      limit: factor < least ? least : most,
    }),
  }),
  'etch-factor-doubtful': warn<Figures<'factor' | 'least' | 'most'>>({
    title: 'Etch factor doubtful',
    say: ({ factor, least, most }, show) => ({
      reason: `An etch factor of ${figureOf(factor)} (undercut / depth) is outside the usual range, ${figureOf(least)} to ${figureOf(most)}.`,
      remedy: `If depth / undercut was meant, give ${show.field('process.depthPerUndercut')}: ${figureOf(factor)}; the etch factor is then ${figureOf(1 / factor)}. Otherwise measure it on a coupon again.`,
      value: factor,
      limit: factor < least ? least : most,
    }),
  }),
  'activation-energy-missing': stop<{ fromC: number; toC: number; bath: string | undefined }>({
    title: 'Rate unknown at this temperature',
    say: ({ fromC, toC, bath }) => ({
      reason: `The rate is known at ${figureOf(fromC)} °C and the bath is run at ${figureOf(toC)} °C; no activation energy is known for ${bath ?? 'an unnamed bath'}.`,
      remedy: `Etch a coupon at ${figureOf(toC)} °C, or give the bath an activationEnergy under figures.`,
    }),
  }),
  'temperature-step-too-far': stop<Figures<'fromC' | 'toC' | 'limit'>>({
    title: 'Temperature too far from the coupon’s',
    say: ({ fromC, toC, limit }) => ({
      reason: `From ${figureOf(fromC)} to ${figureOf(toC)} °C is ${figureOf(Math.abs(toC - fromC))} K; a rate is converted over ${figureOf(limit)} K at most.`,
      remedy: `Etch a coupon at ${figureOf(toC)} °C.`,
      value: Math.abs(toC - fromC),
      limit,
    }),
  }),
  'rate-turned-by-temperature': warn<
    Figures<'fromC' | 'toC' | 'energy' | 'from' | 'to' | 'rate' | 'plusMinus'>
  >({
    title: 'Rate calculated for another temperature',
    say: ({ fromC, toC, energy, from, to, rate, plusMinus }, show) => ({
      reason: [
        `The rate at ${figureOf(toC)} °C is calculated from that at ${figureOf(fromC)} °C with ${figureOf(energy)} kJ/mol (published values: ${figureOf(from)} to ${figureOf(to)}):`,
        `${show.rate([rate, plusMinus], figureOf, '±')}.`,
      ],
      remedy: `Etch a coupon at ${figureOf(toC)} °C before the run.`,
    }),
  }),
};

function percent(share: number): string {
  return `${(share * 100).toFixed(1)} %`;
}

/** Up to four decimals, none for nothing: finer than any gauge that measures a sheet. */
function figureOf(value: number): string {
  return String(Number(Math.abs(value) < 1e-3 ? value.toPrecision(2) : value.toFixed(4)));
}

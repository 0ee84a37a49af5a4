/** Findings about the tolerance budget: floors that the clock alone does not hold, or that not even gauging holds. Lengths in mm, minutes. */
import { ROUNDING } from '#geometry/tolerances.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';
import { mm, type Shown } from './shown-figures.ts';
import { note, type Saying, warn } from './words.ts';

type Change = 'gauge-run' | 'measure-sheet' | 'halve-spread' | 'halve-timing' | 'finer-levels';

/** The floor that is worst off, of so many that are. */
interface FloorOver {
  readonly level: number;
  readonly isThickness: boolean;
  readonly side: 'tooDeep' | 'tooShallow';
  readonly shift: number;
  readonly worst: number;
  readonly likely: number;
  readonly allowed: number;
  readonly parts: {
    readonly sheet: number;
    readonly rate: number;
    readonly timing: number;
    readonly gauge: number;
  };
  readonly rateSpread: number;
  readonly timing: number;
  readonly remedy: {
    /** In the order in which they help. */
    readonly changes: readonly Change[];
    readonly worst: number;
    readonly likely: number;
    readonly allowed: number;
  };
  readonly floors: number;
  /** Floors of one level and tolerance, in all. */
  readonly of: number;
}

export const budgetWords = {
  'tolerance-not-held': warn<FloorOver>({
    title: 'Tolerance not held, even with gauging',
    say: (facts, show) => byClock(facts, show),
  }),
  'tolerance-needs-gauging': note<FloorOver>({
    title: 'Tolerance held only with gauging during the run',
    say: (facts, show) => byClock(facts, show),
  }),
  'tolerance-barely-held': note<FloorOver>({
    title: 'Tolerance barely held by the clock',
    say: (facts, show) => ({
      reason: [
        `Level ${mm(facts.level, show)} holds its ${mm(facts.allowed, show)} by root-sum-square (${mm(facts.likely, show)}), but at worst, with all errors the same way, it ${mayBe(facts)} by ${mm(facts.worst, show)}:`,
        `${partsOf(facts, show)}.${others(facts)}`,
      ],
      remedy: remedyOf(facts, 'worst', show),
      value: facts.worst,
      limit: facts.allowed,
    }),
  }),
};

function byClock(facts: FloorOver, show: Shown): Saying {
  return {
    reason: [
      `Run by the clock, level ${mm(facts.level, show)} ${mayBe(facts)} by ${mm(facts.likely, show)} (root-sum-square; ${mm(facts.worst, show)} at worst) where ${mm(facts.allowed, show)} is allowed:`,
      `${partsOf(facts, show)}.${others(facts)}`,
    ],
    remedy: remedyOf(facts, 'likely', show),
    value: facts.likely,
    limit: facts.allowed,
  };
}

function mayBe({ side, isThickness }: FloorOver): string {
  if (isThickness)
    return side === 'tooDeep' ? 'may leave the metal too thin' : 'may leave the metal too thick';
  return side === 'tooDeep' ? 'may come out too deep' : 'may come out too shallow';
}

function partsOf({ shift, parts, rateSpread, timing }: FloorOver, show: Shown): string {
  const causes = [
    `rate ± ${mm(parts.rate, show)} (${percent(rateSpread)})`,
    `timing ± ${mm(parts.timing, show)} (${timing} min per immersion)`,
  ];
  if (parts.sheet > 0) causes.unshift(`sheet ± ${mm(parts.sheet, show)}`);
  if (Math.abs(shift) >= PRINTED_AS_NOTHING)
    causes.unshift(`the level chosen ${shift > 0 ? '' : '−'}${mm(Math.abs(shift), show)}`);
  return causes.join(', ');
}

function others({ floors, of }: FloorOver): string {
  return floors === 1 ? '' : ` ${floors} of ${of} floors are affected; this is the worst.`;
}

function remedyOf(facts: FloorOver, what: 'likely' | 'worst', show: Shown): string {
  const { changes, allowed } = facts.remedy;
  if (changes.length === 0) return 'Increase the tolerance, or reduce the depth.';
  const steps = changes.map((change) => CHANGES[change](facts, show));
  const left = Math.max(0, facts.remedy[what]);
  const outcome =
    left <= allowed + ROUNDING
      ? `the tolerance is then held, with ${mm(left, show)} of ${mm(allowed, show)} used`
      : `that still leaves ${mm(left, show)} against ${mm(allowed, show)}: increase the tolerance by ${mm(left - allowed, show)}`;
  return `What helps most is to ${steps.join(', then to ')}: ${outcome}.`;
}

const CHANGES: Readonly<
  Record<Change, (facts: Pick<FloorOver, 'rateSpread' | 'timing'>, show: Shown) => string>
> = {
  'gauge-run': () => 'gauge each stage after four fifths of its minutes and correct the rest',
  'measure-sheet': (_, show) => `measure the sheet (${show.field('stock.measured')})`,
  'halve-spread': ({ rateSpread }) =>
    `halve the rate spread to ${percent(rateSpread / 2)} with fresh coupons`,
  'halve-timing': ({ timing }) => `time each immersion to ± ${timing / 2} min`,
  'finer-levels': () => 'use twice as many levels',
};

function percent(share: number): string {
  return `${Number((share * 100).toFixed(2))} %`;
}

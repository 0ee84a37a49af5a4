/** Findings about drawn edges: how far they may come out off their lines, and what helps. Lengths in mm. */
import { ROUNDING } from '#geometry/tolerances.ts';
import { PRINTED_AS_NOTHING } from '#units/depth-tolerances.ts';
import {
  AMPLIFIED,
  changesWords,
  edgeWords,
  LINE_CAUSE_WORDS,
  type LineCause,
  type LineChange,
  type StepEdge,
} from './edge-words.ts';
import { figureTo, mm, type Shown } from './shown-figures.ts';
import { note, type Saying, warn } from './words.ts';

const figure = figureTo(3);

/** The edge that is worst off, of so many that are. */
interface EdgeOff extends StepEdge {
  readonly side: 'outward' | 'inward';
  readonly likely: number;
  readonly worst: number;
  readonly allowed: number | undefined;
  /** ±, each alone. */
  readonly parts: Readonly<Partial<Record<LineCause, number>>>;
  readonly factorSpread: number;
  readonly amplification: number;
  readonly remedy: {
    readonly changes: readonly LineChange[];
    readonly likely: number;
    readonly worst: number;
  };
  readonly edges: number;
  /** Edges of one step and tolerance, in all. */
  readonly of: number;
}

interface FactorDoubtMatters {
  /** The factor of the plan, at its least depth, and by how much it is off here. */
  readonly factor: number;
  readonly by: number;
  /** Width of land; depth in a neck; share of floor; shallowest place of a region that has no floor. mm, or a share. */
  readonly of: 'land' | 'neck' | 'share' | 'floor';
  readonly value: number;
  readonly limit: number;
  readonly places: number;
}

export const lineWords = {
  'line-not-held': warn<EdgeOff>({
    title: 'Drawn edge not held, even gauged',
    say: (facts, show) => likelyOff(facts, show),
  }),
  'line-needs-gauging': note<EdgeOff>({
    title: 'Drawn edge held only if gauged on the way',
    say: (facts, show) => likelyOff(facts, show),
  }),
  'line-barely-held': note<EdgeOff>({
    title: 'Drawn edge barely held',
    say: (facts, show) => ({
      reason: [
        `${edgeWords(facts, show)} holds its ${mm(facts.allowed ?? 0, show)} by root-sum-square (${mm(facts.likely, show)}), but should everything go wrong at once it comes out ${mm(facts.worst, show)} ${way(facts)}:`,
        `${partsOf(facts, show)}.${others(facts)}`,
      ],
      remedy: remedyOf(facts, 'worst', show),
      value: facts.worst,
      ...limit(facts),
    }),
  }),
  'line-doubt': note<EdgeOff>({
    title: 'How far drawn edges may be off',
    say: (facts, show) => ({
      reason: [
        `${edgeWords(facts, show)} may come out ${mm(facts.likely, show)} off its line (root-sum-square; ${mm(facts.worst, show)} at worst):`,
        `${partsOf(facts, show)}.${facts.of === 1 ? '' : ' No drawn edge is worse off.'} The job does not say how far an edge may be off.`,
      ],
      remedy: `Say it under ${show.field('rules.lineTolerance', show.code('rules.lineTolerance'))}, or a requirement's ${show.code('edge')}. ${remedyOf(facts, 'likely', show)}`,
      value: facts.likely,
    }),
  }),
  'factor-doubt-matters': warn<FactorDoubtMatters>({
    title: 'Doubt of the etch factor reaches land or floors',
    say: (facts, show) => ({
      reason: `Cut as planned, but etched with a factor of ${figure(facts.factor + facts.by)} (${figure(facts.factor)} ${facts.by < 0 ? '−' : '+'} ${figure(Math.abs(facts.by))}), ${leftWords(facts, show)}${facts.places === 1 ? '' : `; ${facts.places} places are so`}.`,
      remedy:
        'Measure the factor on a coupon etched to that depth before the lines are cut; or leave more room there.',
      value: facts.value,
      limit: facts.limit,
    }),
  }),
  'coupon-depth-differs': note<{
    /** mm */
    readonly coupon: number;
    readonly deepest: number;
    readonly times: number;
    readonly limit: number;
  }>({
    title: 'Factor measured at another depth',
    say: (facts, show) => ({
      reason: `The etch factor was measured on an opening ${mm(facts.coupon, show)} deep and is used to ${mm(facts.deepest, show)}, ${figure(facts.times)} times that; factors change with depth, and by how much only a coupon can say.`,
      remedy: `Etch a coupon to about ${mm(facts.deepest, show)}, or give factors by depth under ${show.field('process.etchFactor', show.code('process.etchFactor'))}.`,
      value: facts.times,
      limit: facts.limit,
    }),
  }),
};

/** What is left with that factor. */
function leftWords({ of, value, limit }: FactorDoubtMatters, show: Shown): string {
  switch (of) {
    case 'land':
      return `land of ${mm(value, show)} is left where ${mm(limit, show)} is needed`;
    case 'neck':
      return `a neck comes ${mm(value, show)} deep where ${mm(limit, show)} is the least`;
    case 'share':
      return `${Math.round(value * 100)} % of a region is floor, less than ${Math.round(limit * 100)} %`;
    case 'floor':
      return `a region has no floor: its shallowest place is ${mm(value, show)} deep, past ${mm(limit, show)}`;
  }
}

function likelyOff(facts: EdgeOff, show: Shown): Saying {
  return {
    reason: [
      `${edgeWords(facts, show)} may come out ${mm(facts.likely, show)} ${way(facts)} (root-sum-square; ${mm(facts.worst, show)} at worst) where ${mm(facts.allowed ?? 0, show)} is allowed:`,
      `${partsOf(facts, show)}.${others(facts)}`,
    ],
    remedy: remedyOf(facts, 'likely', show),
    value: facts.likely,
    ...limit(facts),
  };
}

function limit({ allowed }: EdgeOff): { readonly limit?: number } {
  return allowed === undefined ? {} : { limit: allowed };
}

function way({ side }: EdgeOff): string {
  return side === 'outward' ? 'outside its line' : 'inside its line';
}

function partsOf({ parts, factorSpread, amplification }: EdgeOff, show: Shown): string {
  const causes = (Object.entries(parts) as [LineCause, number][])
    .filter(([, half]) => half >= PRINTED_AS_NOTHING)
    .sort((a, b) => b[1] - a[1])
    .map(([cause, half]) => {
      const why = cause === 'factor' ? ` (factor ± ${figure(factorSpread)})` : '';
      const how =
        cause === 'depth' && amplification >= AMPLIFIED
          ? ` (an edge here moves ${amplification.toFixed(1)} times as far as its step is off)`
          : '';
      return `${LINE_CAUSE_WORDS[cause]} ± ${mm(half, show)}${why}${how}`;
    });
  return causes.join(', ');
}

function others({ edges, of }: EdgeOff): string {
  return edges === 1 ? '' : ` ${edges} of ${of} kinds of edge are so; this one is worst off.`;
}

function remedyOf(facts: EdgeOff, what: 'likely' | 'worst', show: Shown): string {
  const { changes } = facts.remedy;
  if (changes.length === 0) return 'No single change helps enough: ask for a wider tolerance of the edge.';
  const left = facts.remedy[what];
  const isHeld = facts.allowed === undefined || left <= facts.allowed + ROUNDING;
  const rest = isHeld ? '' : ': still too much, so ask for a wider tolerance too';
  return `Most helps to ${changesWords(changes, facts, show)}; that leaves ${mm(left, show)}${rest}.`;
}

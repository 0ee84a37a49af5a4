/** What may move the edge of a step off its drawn line, one by one, each with how far it may go (M6.5). mm */
import type { EtchFactor } from '#bath/etch-factor.ts';
import type { Job } from '#job/job.ts';
import type { ActualRun } from '#plan/edge-place.ts';
import { gaugedEtch } from './tolerance-budget.ts';

export const LINE_CAUSES = [
  'factor',
  'rate',
  'depth',
  'floor',
  'scribing',
  'slot',
  'laying',
  'stretch',
] as const;

/**
 * `factor`: the etch factor. `rate`: one rate for the whole run. `depth`: the stages that made the step. `floor`: the stages after them,
 * which deepen both its floors. The others lie between the planned line and the cut in the maskant.
 */
export type LineCause = (typeof LINE_CAUSES)[number];

export type LineProcess = Pick<
  Job['process'],
  'rate' | 'rateSpread' | 'timing' | 'factorSpread' | 'scribing' | 'masking'
>;

/** One quantity that goes either way within its limits, independent of all others. */
export interface Mover {
  readonly cause: LineCause;
  /** Half-widths, ±, in the quantity's own unit: for the root-sum-square, and at worst. */
  readonly likely: number;
  readonly worst: number;
  /** The run with the quantity off by so much. */
  readonly off: (run: ActualRun, by: number) => ActualRun;
}

export interface MovedEdge {
  /** Stages, deepest level first, that made the step, and those that deepen both floors after it (on one coat only). */
  readonly made: readonly number[];
  readonly later: readonly number[];
  /** What each stage etches, deepest level first. */
  readonly etches: readonly number[];
  /** Farthest that the edge lies from the middle of the part. */
  readonly farthest: number;
}

/** Everything that may go either way, by the clock or with each stage gauged and corrected. */
export function moversOf(edge: MovedEdge, process: LineProcess, isGauged: boolean): Mover[] {
  const movers = [
    factorMover(process),
    ...(isGauged ? [] : [rateMover(process)]),
    ...edge.made.map((stage) => stageMover('depth', stage, { edge, process, isGauged })),
    ...edge.later.map((stage) => stageMover('floor', stage, { edge, process, isGauged })),
    ...cutMovers(edge, process),
  ];
  return movers.filter(({ worst }) => worst > 0);
}

function factorMover({ factorSpread }: LineProcess): Mover {
  return {
    cause: 'factor',
    likely: factorSpread,
    worst: factorSpread,
    off: (run, by) => ({ ...run, etchFactor: factorOff(run.etchFactor, by) }),
  };
}

/** No etch goes less than nowhere sideways. */
export function factorOff(factor: EtchFactor, by: number): EtchFactor {
  return factor.map(([depth, each]) => [depth, Math.max(0, each + by)]);
}

function rateMover({ rateSpread }: LineProcess): Mover {
  return {
    cause: 'rate',
    likely: rateSpread,
    worst: rateSpread,
    off: (run, by) => ({ ...run, etches: run.etches.map((etch) => etch * (1 + by)) }),
  };
}

function stageMover(
  cause: 'depth' | 'floor',
  stage: number,
  { edge, process, isGauged }: { edge: MovedEdge; process: LineProcess; isGauged: boolean },
): Mover {
  const timing = process.rate * (1 + process.rateSpread) * process.timing;
  const off = isGauged ? gaugedEtch(edge.etches[stage] ?? 0, process) : { likely: timing, worst: timing };
  return {
    cause,
    ...off,
    off: (run, by) => ({
      ...run,
      etches: run.etches.map((etch, each) => (each === stage ? Math.max(0, etch + by) : etch)),
    }),
  };
}

/** On one coat one cut makes the edge; with a coat a stage each is scribed, and its template laid on, anew. */
function cutMovers({ made, farthest }: MovedEdge, { scribing, masking }: LineProcess): Mover[] {
  const { cut, template, laying = 0, stretch = 0 } = scribing;
  const cuts = masking === 're-mask' ? made : made.slice(0, 1);
  const each = (cause: LineCause, half: number): Mover[] =>
    cuts.map((stage) => ({ cause, likely: half, worst: half, off: cutOff((at) => at === stage) }));
  const play = template === undefined ? 0 : Math.max(0, template.slot - template.blade) / 2;
  const stretched = stretch * farthest;
  return [
    ...each('scribing', cut),
    ...each('slot', play),
    ...each('laying', laying),
    { cause: 'stretch', likely: stretched, worst: stretched, off: cutOff(() => true) },
  ];
}

function cutOff(isMoved: (stage: number) => boolean): Mover['off'] {
  return (run, by) => ({ ...run, cuts: run.cuts.map((cut, stage) => (isMoved(stage) ? cut + by : cut)) });
}

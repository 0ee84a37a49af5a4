/** What may move the edge of a step off its drawn line, one by one, each with how far it may go (M6.5). mm */
import type { EtchFactor } from '#bath/etch-factor.ts';
import { LINE_CAUSE_WORDS, type LineCause } from '#findings/edge-words.ts';
import type { Job } from '#job/job.ts';
import type { ActualRun } from '#plan/edge-place.ts';
import { gaugedEtch } from './tolerance-budget.ts';

/**
 * `factor`: the etch factor. `rate`: one rate for the whole run. `depth`: the stages that made the step. `floor`: the stages after them,
 * which deepen both its floors. The others lie between the planned line and the cut in the maskant.
 */
export const LINE_CAUSES = Object.keys(LINE_CAUSE_WORDS) as readonly LineCause[];

export type LineProcess = Pick<
  Job['process'],
  'rate' | 'rateSpread' | 'timing' | 'factorSpread' | 'scribing' | 'masking'
>;

/** A run under trial, which movers write into. */
export interface TrialRun extends ActualRun {
  etchFactor: EtchFactor;
  readonly etches: number[];
  readonly cuts: number[];
}

/** One quantity that goes either way within its limits, independent of all others. */
export interface Quantity {
  /** Half-widths, ±, in the quantity's own unit: for the root-sum-square, and at worst. */
  readonly likely: number;
  readonly worst: number;
  /** Lets it be off by so much in a run. */
  readonly move: (run: TrialRun, by: number) => void;
}

/** What moves an edge. Several quantities act through their sum alone: at worst all of them lie on one side. */
export interface Mover {
  readonly cause: LineCause;
  readonly quantities: readonly Quantity[];
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
  const etchOf = (stage: number): Quantity => stageQuantity(stage, { edge, process, isGauged });
  const movers: Mover[] = [
    { cause: 'factor', quantities: [factorQuantity(process)] },
    ...(isGauged ? [] : [{ cause: 'rate', quantities: [rateQuantity(process)] } as const]),
    ...(process.masking === 're-mask'
      ? edge.made.map((stage) => ({ cause: 'depth', quantities: [etchOf(stage)] }) as const)
      : [{ cause: 'depth', quantities: edge.made.map(etchOf) } as const]),
    { cause: 'floor', quantities: edge.later.map(etchOf) },
    ...cutMovers(edge, process),
  ];
  return movers
    .map(({ cause, quantities }) => ({ cause, quantities: quantities.filter(({ worst }) => worst > 0) }))
    .filter(({ quantities }) => quantities.length > 0);
}

function factorQuantity({ factorSpread }: LineProcess): Quantity {
  return {
    likely: factorSpread,
    worst: factorSpread,
    move: (run, by) => {
      run.etchFactor = factorOff(run.etchFactor, by);
    },
  };
}

/** No etch goes less than nowhere sideways. */
export function factorOff(factor: EtchFactor, by: number): EtchFactor {
  return factor.map(([depth, each]) => [depth, Math.max(0, each + by)]);
}

function rateQuantity({ rateSpread }: LineProcess): Quantity {
  return {
    likely: rateSpread,
    worst: rateSpread,
    move: ({ etches }, by) => {
      etches.forEach((etch, stage) => {
        etches[stage] = etch * (1 + by);
      });
    },
  };
}

function stageQuantity(
  stage: number,
  { edge, process, isGauged }: { edge: MovedEdge; process: LineProcess; isGauged: boolean },
): Quantity {
  const timing = process.rate * (1 + process.rateSpread) * process.timing;
  const off = isGauged ? gaugedEtch(edge.etches[stage] ?? 0, process) : { likely: timing, worst: timing };
  return {
    ...off,
    move: ({ etches }, by) => {
      etches[stage] = Math.max(0, (etches[stage] ?? 0) + by);
    },
  };
}

/** On one coat one cut makes the edge; with a new coat for each stage each is scribed, and its template laid on, again. */
function cutMovers({ made, farthest }: MovedEdge, { scribing, masking }: LineProcess): Mover[] {
  const { cut, template, laying = 0, stretch = 0 } = scribing;
  const cutStages = masking === 're-mask' ? made : made.slice(0, 1);
  const each = (cause: LineCause, half: number): Mover[] =>
    cutStages.map((stage) => ({
      cause,
      quantities: [{ likely: half, worst: half, move: ({ cuts }, by) => moveCut(cuts, stage, by) }],
    }));
  const play = template === undefined ? 0 : Math.max(0, template.slot - template.blade) / 2;
  const stretched: Quantity = {
    likely: stretch * farthest,
    worst: stretch * farthest,
    move: ({ cuts }, by) => {
      for (const stage of cuts.keys()) moveCut(cuts, stage, by);
    },
  };
  return [
    ...each('scribing', cut),
    ...each('slot', play),
    ...each('laying', laying),
    { cause: 'stretch', quantities: [stretched] },
  ];
}

function moveCut(cuts: number[], stage: number, by: number): void {
  cuts[stage] = (cuts[stage] ?? 0) + by;
}

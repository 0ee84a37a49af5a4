/**
 * Where the run is gauged: one or two points a floor, clear of its walls, each with its number all through the traveller; and what of
 * them a stage reads, six at most.
 */
import type { InspectionPoint } from '#handoff/inspection/inspection-points.ts';
import type { EtchPlan, Stage } from '#plan/etch-plan.ts';

export interface GaugePoint extends Pick<InspectionPoint, 'region' | 'at'> {
  /** `G1`, in the order of the stages. */
  readonly name: string;
  /** Number of the stage that its floor belongs to. */
  readonly stage: number;
  /** Thickness left of the nominal sheet in the end, mm, as required. */
  readonly thickness: InspectionPoint['thickness'];
  /** That, and no depth, is what the drawing asks of it. */
  readonly isAskedAsThickness: boolean;
}

const A_FLOOR = 2;
const A_STAGE = 6;

/** `points` in the order of the regions, the roomiest of each first. Two regions of a floor, or two points of its only one. */
export function gaugePoints({ stages, regions }: EtchPlan, points: readonly InspectionPoint[]): GaugePoint[] {
  const asThickness = new Set(regions.flatMap(({ id, asked }) => (asked.asThickness === true ? [id] : [])));
  const chosen = stages.flatMap(({ number }) => {
    // Floors with a required thickness first: the run ends by them.
    const all = points.filter(({ stage }) => stage === number);
    const isAsked = ({ region }: InspectionPoint) => asThickness.has(region);
    const of = [...all.filter(isAsked), ...all.filter((each) => !isAsked(each))];
    const firsts = of.filter(({ region }, index) => of.findIndex((each) => each.region === region) === index);
    const others = of.filter((each) => !firsts.includes(each));
    return [...firsts, ...others].slice(0, A_FLOOR);
  });
  return chosen.map(({ region, at, stage, thickness }, index) => ({
    name: `G${index + 1}`,
    stage,
    region,
    at,
    thickness,
    isAskedAsThickness: asThickness.has(region),
  }));
}

/** Of the floors that a stage etches: its own, those etched longest, then the nearest before it. */
export function gaugedIn(
  { number }: Pick<Stage, 'number'>,
  { masking, stages }: EtchPlan,
  points: readonly GaugePoint[],
): GaugePoint[] {
  const open = stages
    .map((stage) => stage.number)
    .filter((each) => (masking === 're-mask' ? each >= number : each <= number));
  const [longest, ...others] = masking === 're-mask' ? open.toReversed() : open;
  const order = [...new Set([number, longest ?? number, ...others.reverse()])];
  const taken = order.flatMap((each) => points.filter(({ stage }) => stage === each)).slice(0, A_STAGE);
  return points.filter((each) => taken.includes(each));
}

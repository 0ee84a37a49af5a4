/** Findings about levels, openings and scribe lines. */
import { lengthWriter } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

const mm = lengthWriter((each) => each.toFixed(3));

export const planWords = {
  /** A region with a level but no opening: every point of it is nearer to a shallower region than the allowance. */
  'opening-missing': stop<{ depth: number; allowance: number }>({
    title: 'Pocket without an opening',
    say: ({ depth, allowance }, show) => ({
      reason: `This region is to be ${mm(depth, show)} deep, so its opening must stay ${mm(allowance, show)} inside a border with land, but no point of the region is that far from its neighbours.`,
      remedy: `Widen it to more than ${mm(2 * allowance, show)}, require less depth, or use a process with a smaller etch factor.`,
      value: 0,
      limit: 2 * allowance,
    }),
  }),
  /** Places of a border that are short lines where an exact line or arc was looked for; farthest off, mm. */
  'border-left-as-chords': note<Figures<'level' | 'places' | 'off'>>({
    title: 'Border in short lines',
    say: ({ level, places, off }, show) => ({
      reason: `The opening of level ${mm(level, show)} has ${places === 1 ? 'a short line' : `${places} short lines`} in its border where curves run so close together that no exact line or arc was found; each lies within ${mm(off, show)} of the exact border.`,
      remedy:
        'No action is needed. If the program must have exact arcs here, draw the shapes clear of each other.',
      value: off,
    }),
  }),
  /** None of the levels given lies in the region's tolerance. */
  'level-missing': stop<{
    depth: number;
    minus: number;
    plus: number;
    /** Whether the job lists its levels; else they were searched for. */
    listed: boolean;
  }>({
    title: 'No level within tolerance',
    say: ({ depth, minus, plus, listed }, show) => ({
      reason: `This region accepts depths from ${mm(depth - minus, show)} to ${mm(depth + plus, show)}, and ${listed ? 'none of the levels that the job lists lies in that range' : 'no level lies in that range: a taper would need more levels than are practical'}.`,
      remedy: listed
        ? `Add the level ${mm(depth, show)} to the list, or set levels to "as-drawn" or "fewest".`
        : 'Widen the tolerance of the tapers, or list the levels to etch.',
      value: depth,
    }),
  }),
  /** A locked level that lies in no region's tolerance, or is nobody's best. */
  'level-unused': warn<{ level: number }>({
    title: 'Level unused',
    say: ({ level }, show) => ({
      reason: [
        `No region uses the level ${mm(level, show)}:`,
        `it is within no region's tolerance, or another level fits better.`,
      ],
      remedy: 'Remove it from the job, or require this depth of a region; the plan has no stage for it.',
      value: level,
    }),
  }),
  /** A final thickness asked where a tapered sheet has less: by how much at worst, and how much of that is allowed. */
  'sheet-thinner-than-asked': stop<{ lacks: number; plus: number }>({
    title: 'Tapered sheet too thin',
    say: ({ lacks, plus }, show) => ({
      reason: `At its thin end here the sheet is ${mm(lacks, show)} thinner than the required final thickness; ${mm(plus, show)} less is allowed.`,
      remedy: `Require at least ${mm(lacks - plus, show)} less there, divide the region and leave its thin end as land, or use a thicker sheet.`,
      value: lacks,
      limit: plus,
    }),
  }),
  /** A region's depth changes in two directions, and one change ends inside the region. */
  'taper-directions-differ': stop<Record<string, never>>({
    title: 'Tapers of two directions',
    say: () => ({
      reason: [
        'Sheet and requirement taper in different directions here, and one of them ends inside the region:',
        'strips can’t follow both.',
      ],
      remedy: 'Divide the region on the drawing along the line where that taper ends.',
    }),
  }),
  'taper-without-tolerance': stop<{ low: number; high: number }>({
    title: 'Taper without tolerance',
    say: ({ low, high }, show) => ({
      reason: `Depth changes from ${mm(low, show)} to ${mm(high, show)} with no tolerance, so it can’t be made in steps.`,
      remedy: 'Give the requirement a plus or minus tolerance: it sets how wide the strips can be.',
    }),
  }),
  /** Steps can't follow a slope without any tolerance. */
  'taper-too-fine': stop<Figures<'strips' | 'limit' | 'tolerance' | 'among'>>({
    title: 'Taper in too many strips',
    say: ({ strips, limit, tolerance, among }, show) => ({
      reason: `${among === 1 ? 'This taper' : `The first ${among} tapers together`} would need about ${strips} strips at a tolerance of ${show.length(tolerance, (each) => String(Number(each.toPrecision(2))))} (plus and minus together); the limit is ${limit}.`,
      remedy: `Allow ${mm(Math.ceil((tolerance * strips * 1000) / limit) / 1000, show)} or more (plus and minus together), or make the taper by drawing the part out of the bath.`,
      value: strips,
      limit,
    }),
  }),
  /** A strip that its own walls take whole. `needed`: what they take; `rise`: change of depth for each mm. */
  'taper-too-steep': stop<Figures<'width' | 'needed' | 'level' | 'tolerance' | 'rise'>>({
    title: 'Taper too steep for steps',
    say: ({ width, needed, level, tolerance, rise }, show) => ({
      reason: [
        `A strip here is ${mm(width, show)} wide, and its walls alone take ${mm(needed, show)} of it at a level of ${mm(level, show)}:`,
        `no floor is left.`,
      ],
      remedy: `Allow more than about ${mm((tolerance * needed * needed) / (width * width), show)} for plus and minus together (now ${mm(tolerance, show)}), make the taper longer (its depth changes by ${rise.toFixed(3)} ${show.unit} per ${show.unit}), or make it by drawing the part out of the bath.`,
      value: width,
      limit: needed,
    }),
  }),
  /** A hoist is named, but this taper's depth does not grow one way along the hang. */
  'withdrawal-not-one-way': note<{ low: number; high: number }>({
    title: 'Depth does not increase in one direction',
    say: ({ low, high }, show) => ({
      reason: `Depth ranges from ${mm(low, show)} to ${mm(high, show)} here but does not increase from 0 or more in one direction, so the taper can’t be made by drawing the part out of the bath.`,
      remedy: 'Make it in steps, as planned, or divide the region where the slope reverses.',
    }),
  }),
  /** The first length that the hoist can't follow, of so many; speeds mm/min, distances from the shallow end. */
  'hoist-cannot-follow': note<
    Figures<'from' | 'to' | 'wanted' | 'slowest' | 'fastest' | 'deviation' | 'lengths'>
  >({
    title: 'Hoist can’t follow the taper',
    say: ({ from, to, wanted, slowest, fastest, deviation, lengths }, show) => ({
      reason: [
        `From ${mm(from, show)} to ${mm(to, show)} from the shallow end the waterline should pass ${Number.isFinite(wanted) ? `at ${show.rate(wanted, twoPlaces)}` : 'at once'}; the hoist runs at ${show.rate([slowest, fastest], twoPlaces)}.`,
        ...(lengths > 1 ? [`This applies to ${lengths} lengths.`] : []),
        `At the nearest speeds that it has, depth is off by ${mm(deviation, show)} at worst.`,
      ],
      remedy:
        'Accept that, use another hoist or a bath with another rate, or make the taper in steps, as planned.',
      value: deviation,
    }),
  }),
  /** Levels, from the least to the greatest, that are etched as one. */
  'levels-too-near': note<Figures<'from' | 'to' | 'level' | 'limit'>>({
    title: 'Levels etched as one',
    say: ({ from, to, level, limit }, show) => ({
      reason: [
        `The levels from ${mm(from, show)} to ${mm(to, show)} are no more than ${mm(limit, show)} apart, too close to be etched or gauged as separate floors.`,
        `They are etched as one level of ${mm(level, show)}, which is within all their tolerances.`,
      ],
      remedy: 'No action is needed. Where the drawing means one depth, require one depth.',
      value: to - from,
      limit,
    }),
  }),
  /** A contour of the front has a gap, so that figures taken from it may be wrong. */
  'contour-not-closed': warn<{ of: 'volumes' | 'floors' }>({
    title: 'Contour that does not close',
    say: ({ of }) => ({
      reason: [
        `A contour of the etched surface does not close at this place.`,
        `${of === 'volumes' ? 'Removed volume, mass and gas may be wrong' : 'Results for floors, land and maskant near it may be wrong'}; the scribe lines are not made from it.`,
      ],
      remedy:
        'Simplify the linework near the place, and report the job and its drawing: this is a fault in Isobath.',
    }),
  }),
  /** Nothing to etch. */
  'nothing-to-etch': stop<Record<string, never>>({
    title: 'Nothing to etch',
    say: () => ({
      reason: 'No requirement gives any region a depth over 0, so the whole part is land.',
      remedy: 'Give at least one layer or point a depth or a final thickness in the job’s requirements.',
    }),
  }),
};

function twoPlaces(value: number): string {
  return value.toFixed(2);
}

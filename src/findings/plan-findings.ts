/** Findings about levels, openings and scribe lines. */
import type { WordsFor } from './words.ts';

export interface PlanFacts {
  /** A region with a level but no opening: every point of it is nearer to a shallower region than the allowance. */
  readonly 'opening-missing': { readonly depth: number; readonly allowance: number };
  /** Places of a border that are short lines where an exact line or arc was looked for; farthest off, mm. */
  readonly 'border-left-as-chords': { readonly level: number; readonly places: number; readonly off: number };
  /** None of the levels given lies in the region's tolerance. */
  readonly 'level-missing': {
    readonly depth: number;
    readonly minus: number;
    readonly plus: number;
    /** Whether the job lists its levels; else they were searched for. */
    readonly listed: boolean;
  };
  /** A locked level that lies in no region's tolerance, or is nobody's best. */
  readonly 'level-unused': { readonly level: number };
  /** A final thickness asked where a tapered sheet has less: by how much at worst, and how much of that is allowed. */
  readonly 'sheet-thinner-than-asked': { readonly lacks: number; readonly plus: number };
  /** A region's depth changes in two directions, and one change ends inside the region. */
  readonly 'taper-directions-differ': Record<string, never>;
  /** Steps can't follow a slope without any tolerance. */
  readonly 'taper-too-fine': {
    readonly strips: number;
    readonly limit: number;
    readonly tolerance: number;
    readonly among: number;
  };
  readonly 'taper-without-tolerance': { readonly low: number; readonly high: number };
  /** A strip that its own walls take whole. `needed`: what they take; `rise`: change of depth for each mm. */
  readonly 'taper-too-steep': {
    readonly width: number;
    readonly needed: number;
    readonly level: number;
    readonly tolerance: number;
    readonly rise: number;
  };
  /** A hoist is named, but this taper's depth does not grow one way along the hang. */
  readonly 'withdrawal-not-one-way': { readonly low: number; readonly high: number };
  /** The first length that the hoist can't follow, of so many; speeds mm/min, distances from the shallow end. */
  readonly 'hoist-cannot-follow': {
    readonly from: number;
    readonly to: number;
    readonly wanted: number;
    readonly slowest: number;
    readonly fastest: number;
    readonly deviation: number;
    readonly lengths: number;
  };
  /** Levels, from the least to the greatest, that are etched as one. */
  readonly 'levels-too-near': {
    readonly from: number;
    readonly to: number;
    readonly level: number;
    readonly limit: number;
  };
  /** A contour of the front has a gap, so that figures taken from it may be wrong. */
  readonly 'contour-not-closed': { readonly of: 'volumes' | 'floors' };
  /** Nothing to etch. */
  readonly 'nothing-to-etch': Record<string, never>;
}

export const planWords: WordsFor<PlanFacts> = {
  'opening-missing': {
    severity: 'stop',
    title: 'Pocket without an opening',
    say: ({ depth, allowance }) => ({
      reason: `This region is to be ${mm(depth)} deep, so its opening must stay ${mm(allowance)} inside a border with land, and nothing of the region is that far from its neighbours.`,
      remedy: `Widen it to more than ${mm(2 * allowance)}, ask for less depth, or use a process with a smaller etch factor.`,
      value: 0,
      limit: 2 * allowance,
    }),
  },
  'border-left-as-chords': {
    severity: 'note',
    title: 'Border in short lines',
    say: ({ level, places, off }) => ({
      reason: `The opening of level ${mm(level)} has ${places === 1 ? 'a short line' : `${places} short lines`} in its border where curves meet so nearly that no exact line or arc was found; each lies within ${mm(off)} of the exact border.`,
      remedy:
        'Nothing has to change. Where the program should hold exact arcs here, draw the shapes clear of each other.',
      value: off,
    }),
  },
  'level-missing': {
    severity: 'stop',
    title: 'No level within tolerance',
    say: ({ depth, minus, plus, listed }) => ({
      reason: `This region accepts depths from ${mm(depth - minus)} to ${mm(depth + plus)}, and ${listed ? 'none of the levels that the job lists lies between' : 'no level lies between: some taper would take more levels than anybody could etch'}.`,
      remedy: listed
        ? `Add the level ${mm(depth)} to the list, or set levels to "as-drawn" or "fewest".`
        : 'Widen the tolerance of the tapers, or list the levels to etch.',
      value: depth,
    }),
  },
  'level-unused': {
    severity: 'warn',
    title: 'Level unused',
    say: ({ level }) => ({
      reason: `No region takes the level ${mm(level)}: it lies in nobody's tolerance, or another level suits better.`,
      remedy: 'Drop it from the job, or ask a region for this depth; the plan has no stage for it.',
      value: level,
    }),
  },
  'sheet-thinner-than-asked': {
    severity: 'stop',
    title: 'Tapered sheet is thinner',
    say: ({ lacks, plus }) => ({
      reason: `At its thin end here the sheet is ${mm(lacks)} thinner than the final thickness asked, and ${mm(plus)} less is allowed.`,
      remedy: `Ask for at least ${mm(lacks - plus)} less there, divide the region and leave its thin end as land, or take a thicker sheet.`,
      value: lacks,
      limit: plus,
    }),
  },
  'taper-directions-differ': {
    severity: 'stop',
    title: 'Tapers of two directions',
    say: () => ({
      reason:
        'Sheet and requirement taper in different directions here, and one of them ends inside the region: strips can’t follow both.',
      remedy: 'Divide the region on the drawing along the line where that taper ends.',
    }),
  },
  'taper-without-tolerance': {
    severity: 'stop',
    title: 'Taper without tolerance',
    say: ({ low, high }) => ({
      reason: `Depth goes from ${mm(low)} to ${mm(high)} with no tolerance, and steps can’t follow that.`,
      remedy: 'Give the requirement a plus or a minus: strips are as wide as it allows.',
    }),
  },
  'taper-too-fine': {
    severity: 'stop',
    title: 'Taper in too many strips',
    say: ({ strips, limit, tolerance, among }) => ({
      reason: `${among === 1 ? 'This taper' : `The first ${among} tapers together`} would take about ${strips} strips at a tolerance of ${Number(tolerance.toPrecision(2))} mm (plus and minus together); up to ${limit} are planned.`,
      remedy: `Allow ${mm(Math.ceil((tolerance * strips * 1000) / limit) / 1000)} or more of plus and minus together, or make the taper by drawing the part out of the bath.`,
      value: strips,
      limit,
    }),
  },
  'taper-too-steep': {
    severity: 'stop',
    title: 'Taper too steep for steps',
    say: ({ width, needed, level, tolerance, rise }) => ({
      reason: `A strip here is ${mm(width)} wide, and its walls alone take ${mm(needed)} of it at a level of ${mm(level)}: no floor is left.`,
      remedy: `Allow more than about ${mm((tolerance * needed * needed) / (width * width))} of plus and minus together (now ${mm(tolerance)}), make the taper longer (its depth changes by ${rise.toFixed(3)} mm a mm), or make it by drawing the part out of the bath.`,
      value: width,
      limit: needed,
    }),
  },
  'withdrawal-not-one-way': {
    severity: 'note',
    title: 'Depth does not grow one way',
    say: ({ low, high }) => ({
      reason: `Depth goes between ${mm(low)} and ${mm(high)} here, but not one way from nothing up, so the part can’t be drawn out of the bath for it.`,
      remedy: 'Make it in steps, as planned, or divide the region where depth turns.',
    }),
  },
  'hoist-cannot-follow': {
    severity: 'note',
    title: 'Hoist can’t follow the taper',
    say: ({ from, to, wanted, slowest, fastest, deviation, lengths }) => ({
      reason: `From ${mm(from)} to ${mm(to)} off the shallow end the waterline should pass ${Number.isFinite(wanted) ? `at ${wanted.toFixed(2)} mm/min` : 'at once'}; the hoist does ${slowest.toFixed(2)} to ${fastest.toFixed(2)} mm/min${lengths > 1 ? `. ${lengths} lengths are so` : ''}. Drawn out as near as it can, depth comes ${mm(deviation)} off at worst.`,
      remedy:
        'Accept that, use another hoist or a bath of another rate, or make the taper in steps, as planned.',
      value: deviation,
    }),
  },
  'levels-too-near': {
    severity: 'note',
    title: 'Levels etched as one',
    say: ({ from, to, level, limit }) => ({
      reason: `The levels from ${mm(from)} to ${mm(to)} are no more than ${mm(limit)} apart, nearer than floors can be etched or gauged apart. They are etched as one level of ${mm(level)}, which all their tolerances allow.`,
      remedy: 'Nothing has to change. Ask for one depth where the drawing means one.',
      value: to - from,
      limit,
    }),
  },
  'contour-not-closed': {
    severity: 'warn',
    title: 'Contour that does not close',
    say: ({ of }) => ({
      reason: `A contour of the etched surface does not close at this place. ${of === 'volumes' ? 'Removed volume, mass and gas may be wrong' : 'What is said of floors, land and maskant near it may be wrong'}; the scribe lines are not made from it.`,
      remedy:
        'Simplify the linework near the place, and report the job and its drawing: the fault is Isobath’s.',
    }),
  },
  'nothing-to-etch': {
    severity: 'stop',
    title: 'Nothing to etch',
    say: () => ({
      reason: 'No requirement asks any region for a depth over 0, so the whole part is land.',
      remedy: 'Give at least one layer or point a depth or a final thickness in the job’s requirements.',
    }),
  },
};

function mm(value: number): string {
  return `${value.toFixed(3)} mm`;
}

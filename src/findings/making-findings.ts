/** Findings about making the plan in metal: what comes out otherwise than drawn, and what hands and maskant cannot do. Lengths in mm. */
import { counted } from './counted.ts';
import { figureTo, mm } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

interface Corner {
  readonly drawn: number;
  readonly comes: number;
  /** How far metal stands into the drawn corner. */
  readonly short: number;
  readonly level: number;
  readonly stage: number;
  readonly corners: number;
}

/** Three decimals at most. */
const figure = figureTo(3);

function moreStages(others: number): string {
  if (others === 0) return '';
  return others === 1 ? ', and another stage little more' : `, and ${others} other stages little more`;
}

export const makingWords = {
  'step-too-small': note<{
    stage: number;
    level: number;
    etch: number;
    /** Level of the next stage; 0 after the last. */
    next: number;
    limit: number;
    /** Levels are as few as the tolerances allow. */
    isFewest: boolean;
    /** Further stages that are so. */
    others: number;
  }>({
    title: 'Step hardly worth a stage',
    say: ({ stage, level, etch, next, limit, isFewest, others }, show) => ({
      reason: `Stage ${stage} etches only ${mm(etch, show)}${moreStages(others)}; floors less than ${mm(limit, show)} apart are hard to tell apart.`,
      remedy:
        next === 0
          ? `Leave the regions of ${mm(level, show)} as land, if the drawing allows.`
          : isFewest
            ? `The tolerances leave no fewer levels: widen those of the floors at ${mm(level, show)} and ${mm(next, show)} where the drawing allows, or gauge between the two stages.`
            : `If their tolerances allow, etch the levels ${mm(level, show)} and ${mm(next, show)} as one: the fewest under ${show.field('levels', show.code('levels'))} does so.`,
      value: etch,
      limit,
    }),
  }),
  'cut-deeper-than-practice': note<{ depth: number; limit: number }>({
    title: 'Deeper than practice',
    say: ({ depth, limit }, show) => ({
      reason: [
        `The deepest cut is ${mm(depth, show)}; cuts of up to ${mm(limit, show)} are known from practice.`,
        `Beyond that, maskant, bath and undercut are unproven.`,
      ],
      remedy: `Etch to ${mm(limit, show)} at most and machine the rest, or prove the process on a coupon of that depth first.`,
      value: depth,
      limit,
    }),
  }),
  'web-too-thin': stop<Figures<'web' | 'limit' | 'thickness' | 'level'>>({
    title: 'Web too thin',
    say: ({ web, limit, thickness, level }, show) => ({
      reason: `Level ${mm(level, show)} leaves ${mm(web, show)} of a sheet of ${mm(thickness, show)}; the job's minimum web is ${mm(limit, show)}.`,
      remedy:
        thickness > limit
          ? `Etch to ${mm(thickness - limit, show)} at most, or use a sheet of ${mm(level + limit, show)} or more.`
          : `Use a sheet of ${mm(level + limit, show)} or more: this one is no thicker than the minimum web.`,
      value: web,
      limit,
    }),
  }),
  'web-thin-at-worst': warn<{
    worst: number;
    web: number;
    limit: number;
    sheetMinus: number;
    /** Depth that a bath at its fastest takes too much. */
    fast: number;
    level: number;
  }>({
    title: 'Web too thin at worst',
    say: ({ worst, web, limit, sheetMinus, fast, level }, show) => ({
      reason: `Level ${mm(level, show)} leaves ${mm(web, show)} as planned, but ${mm(worst, show)} where the sheet is ${mm(sheetMinus, show)} under its thickness and the bath etches ${mm(fast, show)} too deep; the job's minimum web is ${mm(limit, show)}.`,
      remedy: `Measure the sheet and the coupon before the run, or etch ${mm(limit - worst, show)} less, or use a sheet that much thicker.`,
      value: worst,
      limit,
    }),
  }),
  'region-over-etched': stop<{
    depth: number;
    limit: number;
    /** How much nearer than allowed an opening comes. */
    near: number;
  }>({
    title: 'Region etched too deep',
    say: ({ depth, limit, near }, show) => ({
      reason: [
        `The front reaches ${mm(depth, show)} here, where ${mm(limit, show)} is allowed:`,
        `an opening lies ${mm(near, show)} closer than it may.`,
      ],
      remedy: `This is a fault of the plan, not of the part: do not cut from it. Move or simplify the lines within ${mm(near, show)} of this place, and report it.`,
      value: depth,
      limit,
    }),
  }),
  'opening-runs-off-sheet': warn<{ length: number; regions: number }>({
    title: 'Opening runs off the sheet',
    say: ({ length, regions }, show) => ({
      reason: [
        `${regions === 1 ? 'A region is' : `${regions} regions are`} etched up to the edge of the sheet along ${mm(length, show)}:`,
        `the edge is bare there, so it is etched sideways as well.`,
      ],
      remedy: 'Mask the edge of the sheet and trim it after etching, or leave a border of land along it.',
      value: length,
    }),
  }),
  'lines-too-close': warn<Figures<'spacing' | 'limit' | 'places'> & { stages: readonly number[] }>({
    title: 'Scribe lines too close',
    say: ({ spacing, limit, stages, places }, show) => ({
      reason: `${linesOf(stages)} come within ${mm(spacing, show)} of each other${at(places)}; a knife needs at least ${mm(limit, show)} between lines.`,
      remedy: `Move the drawn lines ${mm(limit - spacing, show)} apart, or give both the same level so that one line is enough.`,
      value: spacing,
      limit,
    }),
  }),
  'piece-too-narrow': warn<Figures<'width' | 'limit' | 'stage' | 'places'>>({
    title: 'Piece too narrow to peel',
    say: ({ width, limit, stage, places }, show) => ({
      reason: `Maskant that stage ${stage} peels is only ${mm(width, show)} wide${at(places)}; pieces under ${mm(limit, show)} tear instead of peeling.`,
      remedy: `Widen the region by ${mm(limit - width, show)} there, or give it the level of a neighbour so that they peel as one.`,
      value: width,
      limit,
    }),
  }),
  'piece-in-many-parts': note<Figures<'parts' | 'stage' | 'regions'>>({
    title: 'Opening in several parts',
    say: ({ parts, stage, regions }) => ({
      reason: [
        `${regions === 1 ? 'The opening of a region' : `Openings of ${regions} regions`} of stage ${stage} ${regions === 1 ? 'falls' : 'fall'} into several parts, up to ${parts}:`,
        `each is cut and peeled separately, and metal stays between them.`,
      ],
      remedy:
        'Widen the necks of the region beyond twice its allowance, or make sure that the operator peels every part.',
      value: parts,
      limit: 1,
    }),
  }),
  'maskant-comes-off': stop<{
    width: number;
    undercut: number;
    /** Depth of the highest metal left. */
    ridge: number;
    least: number;
    places: number;
  }>({
    title: 'Maskant comes off',
    say: ({ width, undercut, ridge, least, places }, show) => ({
      reason: [
        `The maskant left here is ${mm(width, show)} wide${at(places)} and is undercut by ${mm(undercut, show)} in all:`,
        `it comes off, and the metal below it ends ${mm(ridge, show)} deep.`,
      ],
      remedy: `Make it ${mm(undercut + least, show)} wide or more, or reduce the depth beside it.`,
      value: width,
      limit: undercut,
    }),
  }),
  'maskant-too-narrow': warn<{
    width: number;
    /** Untouched metal below. */
    footing: number;
    limit: number;
    places: number;
  }>({
    title: 'Maskant strip too narrow to hold',
    say: ({ width, footing, limit, places }, show) => ({
      reason: `A strip of maskant ${mm(width, show)} wide has to hold as long as its coat is on${at(places)}, on ${mm(footing, show)} of untouched metal; strips under ${mm(limit, show)} lift.`,
      remedy: `Widen the land by ${mm(limit - width, show)}, or etch it together with its neighbours.`,
      value: width,
      limit,
    }),
  }),
  /** Areas in mm². */
  'maskant-island-too-small': warn<Figures<'area' | 'limit' | 'least' | 'places'>>({
    title: 'Maskant island too small to hold',
    say: ({ area, limit, least, places }, show) => ({
      reason: `An island of maskant stands on ${figure(area)} mm² of untouched metal${at(places)}; under ${figure(limit)} mm², a disc ${mm(least, show)} wide, it floats off.`,
      remedy: `Give the land there an area of ${figure(limit)} mm² or more, or etch it and fit a boss of its own.`,
      value: area,
      limit,
    }),
  }),
  'maskant-overhang-long': warn<Figures<'overhang' | 'limit' | 'stage' | 'level'>>({
    title: 'Maskant overhangs far',
    say: ({ overhang, limit, stage, level }, show) => ({
      reason: `At level ${mm(level, show)} the metal is cut back ${mm(overhang, show)} under the maskant beside stage ${stage}; an overhang over ${mm(limit, show)} flaps, traps gas and may break off.`,
      remedy: 'Trim the overhang during the run, use a stiffer maskant, or etch less deep.',
      value: overhang,
      limit,
    }),
  }),
  'land-too-narrow': warn<{
    width: number;
    limit: number;
    /** Deepest cut beside it. */
    depth: number;
    maskant: number;
    places: number;
  }>({
    title: 'Land too narrow',
    say: ({ width, limit, depth, maskant, places }, show) => ({
      reason: `Land beside a cut of ${mm(depth, show)} is ${mm(width, show)} wide at the surface${at(places)}, under a strip of maskant of ${mm(maskant, show)}; it should be ${mm(limit, show)} or wider.`,
      remedy: `Widen the land by ${mm(limit - width, show)}, or reduce the depth beside it.`,
      value: width,
      limit,
    }),
  }),
  'land-ends-in-point': warn<{ places: number; limit: number }>({
    title: 'Land ends in a point',
    say: ({ places, limit }, show) => ({
      reason: `Land narrows to nothing between etched areas that meet in a point${at(places)}: no maskant holds there, and what stands is a fin.`,
      remedy: `Where outlines cross on purpose, give the area that lies in both a depth; else keep the outlines ${mm(limit, show)} apart.`,
      value: 0,
      limit,
    }),
  }),
  'corner-sharper-than-undercut': warn<Corner>({
    title: 'Corner sharper than the undercut',
    say: ({ drawn, comes, short, level, corners }, show) => ({
      reason: [
        `${counted(corners, 'inside corner')} at level ${mm(level, show)} ${corners === 1 ? 'is' : 'are'} drawn with a radius that the etch cannot follow:`,
        `R ${mm(drawn, show)} comes out as R ${mm(comes, show)}, and metal extends ${mm(short, show)} into the corner.`,
      ],
      remedy: `Draw them with R ${mm(comes, show)} or more, etch less deep, or machine the corners.`,
      value: drawn,
      limit: comes,
    }),
  }),
  'corner-drawn-sharp': note<Corner & { levels: number }>({
    title: 'Sharp corner comes out round',
    say: ({ comes, short, level, levels, corners }, show) => ({
      reason: [
        `${counted(corners, 'inside corner')} at ${levels === 1 ? `level ${mm(level, show)}` : `${levels} levels`} ${corners === 1 ? 'is' : 'are'} drawn sharp:`,
        `up to R ${mm(comes, show)} comes out, and metal extends up to ${mm(short, show)} into the corner${levels === 1 ? '' : `, at level ${mm(level, show)}`}.`,
      ],
      remedy: `No action is needed if the drawing accepts the corners that the process gives; otherwise draw R ${mm(comes, show)}.`,
      value: 0,
      limit: comes,
    }),
  }),
  'floor-not-reached': warn<{
    width: number;
    needed: number;
    /** Depth in the middle of the narrow place, and the least that is asked. */
    depth: number;
    least: number;
    /** Of the whole region: mm², and as a share of its area. */
    floorArea: number;
    share: number;
    places: number;
  }>({
    title: 'Floor not reached',
    say: ({ width, needed, depth, least, floorArea, share, places }, show) => ({
      reason: [
        `The region narrows to ${mm(width, show)}${at(places)}, too narrow to be opened, so it ends only ${mm(depth, show)} deep there where at least ${mm(least, show)} is required.`,
        `Floor within tolerance: ${figure(floorArea)} mm², ${percent(share)} of the region.`,
      ],
      remedy: `Widen it to more than ${mm(needed, show)}, or require less depth there.`,
      value: width,
      limit: needed,
    }),
  }),
  /** Walls of deeper neighbours take the whole region. */
  'floor-lost': stop<{ shallowest: number; most: number }>({
    title: 'Region without a floor',
    say: ({ shallowest, most }, show) => ({
      reason: [
        `No point of this region ends within its tolerance:`,
        `the walls of deeper neighbours reach all through it and leave ${mm(shallowest, show)} at its shallowest, where at most ${mm(most, show)} is allowed.`,
      ],
      remedy:
        'Widen the region, bring the depths together, or draw the upper edges of the walls and set edgeDatum to "shallow-edge".',
      value: shallowest,
      limit: most,
    }),
  }),
  'floor-mostly-wall': note<Figures<'share' | 'floorArea' | 'area' | 'stage' | 'regions' | 'limit'>>({
    title: 'Region is mostly wall',
    say: ({ share, floorArea, area, stage, regions, limit }) => ({
      reason: [
        `In ${counted(regions, 'region')} of stage ${stage} less than ${percent(limit)} is floor within tolerance:`,
        `here ${figure(floorArea)} of ${figure(area)} mm², ${percent(share)}. The rest is wall and corner.`,
      ],
      remedy:
        'Check that this is intended: the lines are the upper edges of the walls unless edgeDatum says otherwise.',
      value: share,
      limit,
    }),
  }),
};

function percent(share: number): string {
  return `${Number((100 * share).toFixed(1))} %`;
}

/** How often, where it is more than once. */
function at(places: number): string {
  return places === 1 ? '' : ` (in ${places} places)`;
}

function linesOf(stages: readonly number[]): string {
  const [a, b] = stages;
  return a === b ? `Lines of stage ${a}` : `A line of stage ${a} and one of stage ${b}`;
}

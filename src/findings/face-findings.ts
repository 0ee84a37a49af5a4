/** Findings about the two faces of a sheet and the metal between them. Lengths in mm. */
import { counted } from './counted.ts';
import { mm } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

/** What is left between two floors at their nearest, the far face off by the registration. */
type Web = Figures<'web' | 'limit' | 'near' | 'far' | 'registration'>;

export const faceWords = {
  'far-view-unclear': stop<Record<never, never>>({
    title: 'Mirror of the far face not given',
    say: (_, show) => ({
      reason: 'The far face is drawn as seen from its own side, but its mirror line is not given.',
      remedy: `Give ${show.field('far.mirror')}, two points of the mirror line, or ${show.field('far.points')}, two holes or points that both faces show.`,
    }),
  }),
  'far-misfit': warn<Figures<'misfit' | 'limit'>>({
    title: 'Common points of the faces differ',
    say: ({ misfit, limit }, show) => ({
      reason: [
        `The two points of ${show.field('far.points')} lie ${mm(2 * misfit, show)} nearer or farther apart on the far drawing than on the near one:`,
        `each is off by ${mm(misfit, show)} once the faces are aligned.`,
      ],
      remedy:
        'Check that both pairs name the same two holes, and the unit and scale of both drawings; the faces are only as well aligned as these points.',
      value: misfit,
      limit,
    }),
  }),
  'split-beyond-depth': stop<Figures<'near' | 'all'>>({
    title: 'Near face takes too much',
    say: ({ near, all }, show) => ({
      reason: `The near face is to take ${mm(near, show)}, but both faces together take only ${mm(all, show)}.`,
      remedy: `Set "split" to ${mm(all, show)} at most, or to "even".`,
      value: near,
      limit: all,
    }),
  }),
  'thickness-of-one-face': stop<Figures<'thickness' | 'far'>>({
    title: 'Thickness required of one face alone',
    say: ({ thickness, far }, show) => ({
      reason: [
        `A thickness of ${mm(thickness, show)} is required of one face, but the other is etched to ${mm(far, show)} behind it:`,
        `what is left would be thinner by that much.`,
      ],
      remedy:
        'Require the thickness of both faces ("face": "both", with "split" if they do not take the same), or a depth of each.',
      value: thickness,
    }),
  }),
  'through-too-shallow': stop<Figures<'level' | 'needed'> & { faces: 1 | 2 }>({
    title: 'Cut does not go through',
    say: ({ level, needed, faces }, show) => ({
      reason: `The cut-out is etched to ${mm(level, show)} ${fromFaces(faces)}; ${mm(needed, show)} is needed to go through the sheet at its thickest.`,
      remedy: `Require more than ${mm(needed, show)} with "through", or etch it from both faces.`,
      value: level,
      limit: needed,
    }),
  }),
  'through-at-worst': warn<Figures<'level' | 'worst' | 'needed'> & { faces: 1 | 2 }>({
    title: 'Cut may not go through',
    say: ({ level, worst, needed, faces }, show) => ({
      reason: `The cut-out is etched to ${mm(level, show)} ${fromFaces(faces)}; a bath at its slowest etches ${mm(worst, show)} in those minutes, and ${mm(needed, show)} is needed at the sheet's thickest.`,
      remedy: `Require a little more than ${mm((level * needed) / worst, show)} with "through", or correct the minutes during the run.`,
      value: worst,
      limit: needed,
    }),
  }),
  'faces-web-too-thin': stop<Web>({
    title: 'Web between faces too thin',
    say: ({ web, limit, registration }, show) => ({
      reason: `Between the faces ${mm(web, show)} of metal is left at the thinnest place, with the far face off by ${mm(registration, show)} in the worst direction; the job's minimum web is ${mm(limit, show)}.`,
      remedy: `Move the floors apart, etch one of them less deep, use a thicker sheet, or register the faces more closely (${show.field('far.registration')}).`,
      value: web,
      limit,
    }),
  }),
  'faces-web-at-worst': warn<Web>({
    title: 'Web between faces thin at worst',
    say: ({ web, limit, registration }, show) => ({
      reason: `Between the faces ${mm(web, show)} of metal would be left at the thinnest place if the sheet is at its thinnest, the bath etches at its fastest and the far face is off by ${mm(registration, show)} in the worst direction; the job's minimum web is ${mm(limit, show)}.`,
      remedy: `Measure the sheet, etch fresh coupons, register the faces more closely (${show.field('far.registration')}), or etch one of the floors less deep.`,
      value: web,
      limit,
    }),
  }),
  'floors-meet': stop<Web>({
    title: 'Etches of both faces meet',
    say: ({ near, far, registration }, show) => ({
      reason: [
        `The near face is etched to ${mm(near, show)} and the far face to ${mm(far, show)} at one place, with the far face off by ${mm(registration, show)} in the worst direction:`,
        `they meet, but no hole is required there.`,
      ],
      remedy:
        'Etch one of the two less deep or move it away; if a hole is intended, require it with "through" on both faces.',
      value: 0,
    }),
  }),
  'part-falls-apart': stop<Figures<'pieces' | 'area' | 'rest'>>({
    title: 'Part falls apart in the bath',
    say: ({ pieces, area, rest }) => ({
      reason: [
        `Once everything is cut out ${pieces === 1 ? 'a piece is' : `${pieces} pieces are`} loose:`,
        `the largest of ${Math.round(area)} mm², the part that stays of ${Math.round(rest)} mm². Loose pieces fall into the bath.`,
      ],
      remedy:
        'Hold it with tabs ("tabs" of the requirement that cuts it out), or etch away the whole cut-out, so that nothing is left to fall.',
      value: pieces,
    }),
  }),
  'tab-misses-cut': stop<{ at: readonly [number, number]; limit: number }>({
    title: 'Tab not across a cut',
    say: ({ limit }, show) => ({
      reason: [
        `No strip across the cut-out can be placed here:`,
        `the place is more than ${mm(limit, show)} away from it, or the cut has no two sides there.`,
      ],
      remedy: 'Move the place in "tabs" onto the cut-out, between its two sides.',
    }),
  }),
  'tabs-placed': note<
    Figures<'tabs' | 'width' | 'length' | 'apart' | 'fewest'> & {
      /** The job says how many. */
      readonly isCounted: boolean;
    }
  >({
    title: 'Tabs placed evenly',
    say: ({ tabs, width, length, apart, fewest, isCounted }, show) => ({
      reason: [
        `${counted(tabs, 'tab')} of ${mm(width, show)} ${tabs === 1 ? 'was' : 'were'} placed along ${mm(length, show)} of border, clear of corners:`,
        isCounted
          ? 'as many as the job says.'
          : `one to every ${mm(apart, show)} begun, and no fewer than ${fewest} round a piece (from memory).`,
      ],
      remedy: `Give ${show.code('"count"')} for another number, or ${show.code('"at"')} for places of your own, in ${show.code('"tabs"')} of the requirement.`,
    }),
  }),
  'tab-too-thin': warn<Figures<'width' | 'left' | 'limit' | 'needed'>>({
    title: 'Little left of a tab',
    say: ({ width, left, limit, needed }, show) => ({
      reason: [
        `A tab ${mm(width, show)} wide is etched from both its sides:`,
        `${mm(left, show)} of it is left at the surface, where at least ${mm(limit, show)}, the thickness of the sheet, is expected.`,
      ],
      remedy: `Make it ${mm(needed, show)} wide or more.`,
      value: left,
      limit,
    }),
  }),
  'template-holes-turn': warn<Figures<'holes' | 'slack'>>({
    title: 'Tooling holes fit more than one way',
    say: ({ holes, slack }, show) => ({
      reason: [
        `The ${holes} tooling holes coincide, within ${mm(slack, show)}, when a template is turned or laid face down:`,
        `the far face's template can be laid the wrong way.`,
      ],
      remedy: `Move one of ${show.field('handoff.template.holes.at')} by two diameters or more, so that the holes fit one way only; or leave them out to have them placed so.`,
    }),
  }),
};

function fromFaces(faces: 1 | 2): string {
  return faces === 2 ? 'from each face' : 'from one face';
}

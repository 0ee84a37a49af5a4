/** Findings about an overall etch before masking. Lengths in mm, areas in mm². */
import { counted } from './counted.ts';
import { figureTo, mm } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

/** mm² */
const area = figureTo(1);
const minutes = figureTo(1);

export const sizingWords = {
  'sizing-not-thinner': stop<Figures<'to' | 'mean'>>({
    title: 'Sized to no less than the sheet has',
    say: ({ to, mean }, show) => ({
      reason: `The sheet is to be sized to ${mm(to, show)}, but it is ${mm(mean, show)} thick on average.`,
      remedy: `Size it to less than ${mm(mean, show)}, or leave ${show.field('process.sizing')} out.`,
      value: to,
      limit: mean,
    }),
  }),
  'sizing-takes-sheet': stop<Figures<'amount' | 'bare' | 'thinnest'>>({
    title: 'Sizing leaves no sheet',
    say: ({ amount, bare, thinnest }, show) => ({
      reason: `${mm(amount, show)} off ${bare === 1 ? 'one face' : 'each face'} is all of a sheet that may be as thin as ${mm(thinnest, show)}.`,
      remedy: `Size by less than ${mm(thinnest / bare, show)}.`,
      value: amount,
      limit: thinnest / bare,
    }),
  }),
  /** Outer outlines before and after. */
  'sizing-parts-sheet': stop<Figures<'edge' | 'before' | 'after'>>({
    title: 'Sizing takes the sheet apart',
    say: ({ edge, before, after }, show) => ({
      reason: [
        `Sizing moves every edge of the sheet in by ${mm(edge, show)}:`,
        after === 0 ? 'nothing of it is left.' : `${before} outlines become ${after}.`,
      ],
      remedy: `Size by less, or cut the sheet so that it is more than ${mm(2 * edge, show)} wide everywhere.`,
      value: edge,
    }),
  }),
  'sizing-meets-hole': warn<Figures<'edge' | 'holes'>>({
    title: 'Sizing opens a hole',
    say: ({ edge, holes }, show) => ({
      reason: `${holes === 1 ? 'A hole of the sheet is' : `${holes} holes of the sheet are`} less than ${mm(2 * edge, show)} from another edge, and each of both moves by ${mm(edge, show)}: they become one.`,
      remedy: `Cut ${holes === 1 ? 'the hole' : 'the holes'} after sizing, size by less, or leave more than ${mm(2 * edge, show)} between them.`,
      value: edge,
    }),
  }),
  'sizing-takes-region': stop<Figures<'edge' | 'area'>>({
    title: 'Sizing takes a region away',
    say: ({ edge, area: lost }, show) => ({
      reason: `All ${area(lost)} mm² of this region lie within ${mm(edge, show)} of the edge of the sheet, which sizing etches away.`,
      remedy: 'Size by less, leave the sheet larger than drawn, or require nothing of the region.',
      value: edge,
    }),
  }),
  'sizing-reaches-region': warn<Figures<'edge' | 'lost'>>({
    title: 'Sizing reaches a region',
    say: ({ edge, lost }, show) => ({
      reason: `This region is drawn nearer to the edge of the sheet than the ${mm(edge, show)} that sizing moves it in: ${area(lost)} mm² of it go.`,
      remedy: `Keep it more than ${mm(edge, show)} from the edge, size by less, or leave the sheet larger than drawn.`,
      value: edge,
    }),
  }),
  'sizing-first': note<Figures<'thinner' | 'edge' | 'doubt'>>({
    title: 'Planned for a sized sheet',
    say: ({ thinner, edge, doubt }, show) => ({
      reason: [
        `Sizing before masking takes ${mm(thinner, show)} off the thickness and ${mm(edge, show)} off every edge, holes included:`,
        `all else is planned for what is left, thicker or thinner by ${mm(doubt, show)} more than the sheet that comes.`,
      ],
      remedy: `Gauge after sizing: that doubt goes. If the drawn outline is the finished one, cut the sheet ${mm(edge, show)} larger all round and holes as much smaller.`,
      value: doubt,
    }),
  }),
  /** A stage saved, or pockets that have an opening: 0 pockets, and stages are fewer. Minutes with the sizing. */
  'sized-unasked': warn<
    Figures<'amount' | 'edge' | 'before' | 'after' | 'minutesBefore' | 'minutesAfter' | 'pockets'>
  >({
    title: 'Sized before masking, since that saves',
    say: ({ amount, edge, before, after, minutesBefore, minutesAfter, pockets }, show) => ({
      reason: [
        `Sized first by ${mm(amount, show)} off each face, ${
          pockets > 0
            ? `${counted(pockets, 'pocket')} without an opening ${pockets === 1 ? 'has' : 'have'} one:`
            : `the part needs ${after === 0 ? 'no stage' : counted(after, 'stage')} in place of ${before}, and ${minutes(minutesAfter)} min in the bath in place of ${minutes(minutesBefore)}:`
        }`,
        `every region is required to be thinner than the sheet. Edges of the sheet and its holes move in by ${mm(edge, show)}, and both faces must be free to lose metal.`,
      ],
      remedy: `Set ${show.field('process.sizing.amount')} to 0 to etch the sheet as it comes, or to ${mm(amount, show)} to have it decided.`,
      value: before,
      limit: after,
    }),
  }),
  'sizing-saves-stage': note<Figures<'thinner' | 'before' | 'after' | 'minutesBefore' | 'minutesAfter'>>({
    title: 'Sizing would save a stage',
    say: ({ thinner, before, after, minutesBefore, minutesAfter }, show) => ({
      reason: [
        `Sized first, with both faces bare, the sheet needs ${after === 0 ? 'no stage' : counted(after, 'stage')} in place of ${before}, and ${minutes(minutesAfter)} min in the bath in place of ${minutes(minutesBefore)}:`,
        `every region is to be thinner than it, by ${mm(thinner, show)} at least.`,
      ],
      remedy: `Set ${show.field('process.sizing.amount')} to ${mm(thinner / 2, show)} if half of the metal may go from the far face; with one face bare, to ${mm(thinner, show)}. Edges move in.`,
      value: before,
      limit: after,
    }),
  }),
  'sizing-saves-stop': note<Figures<'thinner' | 'pockets'>>({
    title: 'Sizing would let pockets be opened',
    say: ({ thinner, pockets }, show) => ({
      reason: `${pockets === 1 ? 'The pocket' : `The ${pockets} pockets`} without an opening would have one in a sheet thinner by ${mm(thinner, show)}, since ${pockets === 1 ? 'its' : 'their'} final thickness is then less deep.`,
      remedy: `Where land may get thinner by that, set ${show.field('process.sizing.amount')} to ${mm(thinner / 2, show)} with both faces bare, or order a thinner sheet.`,
      value: thinner,
    }),
  }),
};

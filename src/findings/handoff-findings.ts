/** Findings about the hand-off files that the job chooses. */
import { figureTo, lengthWriter } from './shown-figures.ts';
import { type Figures, note, warn } from './words.ts';

const figure = figureTo(2);
const mm = lengthWriter(figure);

/** ISO 216, and the North American sheet by its own name. */
const PAPER_NAMES = { a4: 'A4', a3: 'A3', letter: 'Letter' } as const;

export const handoffWords = {
  /** `isKeptBack`: a file was asked for that would be empty. */
  'nothing-to-scribe': warn<{ stages: number; isKeptBack: boolean }>({
    title: 'Nothing to scribe',
    say: ({ stages, isKeptBack }) => ({
      reason: [
        `No line is scribed in ${stages === 1 ? 'the one stage' : `any of the ${stages} stages`}:`,
        `the whole sheet is etched.${isKeptBack ? ' Machine program and template would be empty and are not written.' : ''}`,
      ],
      remedy:
        'If part of the sheet is to stay, give requirements only for the regions to etch: a region without a requirement is land.',
      value: stages,
    }),
  }),
  /** mm, of the shortest; `stage` is its own. */
  'scribe-line-stub': note<Figures<'lines' | 'shortest' | 'stage' | 'limit'>>({
    title: 'Scribe line hardly longer than the blade',
    say: ({ lines, shortest, stage, limit }, show) => ({
      reason: `${lines === 1 ? 'A scribe line is' : `${lines} scribe lines are`} shorter than ${mm(limit, show)}; the shortest, of stage ${stage}, is ${mm(shortest, show)} long.`,
      remedy:
        'Cut it as a continuation of the line that it ends on, or close the gap in the drawing that causes it.',
      value: shortest,
      limit,
    }),
  }),
  'overcut-too-long': warn<{
    of: 'scribe' | 'program';
    overcut: number;
    /** Of the shortest closed line, mm. */
    length: number;
    stage: number;
  }>({
    title: 'Overcut longer than a line',
    say: ({ of, overcut, length, stage }, show) => ({
      reason: [
        `An overcut of ${mm(overcut, show)} goes more than once round the shortest closed line, ${mm(length, show)} long, of stage ${stage}.`,
        `${of === 'scribe' ? 'No scribe drawing' : 'No machine program'} is written.`,
      ],
      remedy: `Set handoff.${of}.overcut to a few millimetres, ${mm(length, show)} at most.`,
      value: overcut,
      limit: length,
    }),
  }),
  'solid-not-drawn': warn<{ trouble: 'no outline' | 'bent back' }>({
    title: 'No solid of this part',
    say: ({ trouble }, show) => ({
      reason:
        trouble === 'no outline'
          ? 'No layer is named as the sheet’s outline, so the part has no sides; etched-part.glb and etched-part.stl are not written.'
          : 'The taper of the sheet begins or ends inside the part, which bends its back face; a bent back face is not supported, and etched-part.glb and etched-part.stl are not written.',
      remedy:
        trouble === 'no outline'
          ? `Name the outline under ${show.field('layers.outline')}.`
          : `Give ${show.field('stock.thickness')} between two points at or beyond the ends of the part, if its taper continues that far; otherwise leave "glb" and "stl" out.`,
    }),
  }),
  /** A check of the finished solid failed: a number of edges, or a share of the sheet's area or of the volume removed. */
  'solid-held-back': warn<{
    of: 'files' | 'relief';
    trouble: 'open edges' | 'folded' | 'area' | 'volume';
    value: number;
    limit: number;
  }>({
    title: 'Solid held back',
    say: ({ of, trouble, value, limit }) => ({
      reason: [
        `The finished solid was checked, and ${SOLID_TROUBLE[trouble](value)}.`,
        `${of === 'files' ? 'etched-part.glb and etched-part.stl are not written' : 'The relief is not shown'}; plan, lines, volumes and sections are made without it.`,
      ],
      remedy:
        'Simplify the linework where pockets nearly touch, and report the job and its drawing: this is a fault in Isobath.',
      value,
      limit,
    }),
  }),
  /** Numbers of lines and arcs that the front starts from. */
  'relief-too-large': note<{ borders: number; most: number }>({
    title: 'Relief too large to show',
    say: ({ borders, most }) => ({
      reason: `The part is etched from ${borders} lines and arcs; a relief is made of up to ${most}. Plan, lines, sections and files are all there.`,
      remedy: 'Look at it in plan and along the section line; or draw a stretch of it by itself.',
    }),
  }),
  'section-misses-sheet': warn<{ name: string; length: number }>({
    title: 'Section misses the sheet',
    say: ({ name, length }, show) => ({
      reason: [
        `Section ${name}, ${mm(length, show)} long, lies entirely off the sheet, so there is no metal to show.`,
        `It has no file, and the review sheets, which need it, are not written.`,
      ],
      remedy: `Give its points in drawing coordinates, in the unit of the drawing; ${show.code('isobath inspect')} lists some.`,
    }),
  }),
  'inspection-floor-missing': note<{ regions: number; margin: number }>({
    title: 'No floor to gauge',
    say: ({ regions, margin }, show) => ({
      reason: `${regions === 1 ? 'A region has' : `${regions} regions have`} no flat floor ${mm(margin, show)} clear of walls and fillets, so ${regions === 1 ? 'it has' : 'they have'} no inspection point.`,
      remedy: `Set ${show.field('handoff.inspection.margin')} smaller, or gauge there by other means.`,
      limit: margin,
    }),
  }),
  'picture-too-small': warn<{
    paper: keyof typeof PAPER_NAMES;
    /** On paper, mm. */
    width: number;
    limit: number;
    /** Millimetres of part to one of paper. */
    scale: number;
    stage: number;
    /** Paper that would do. */
    larger: string | undefined;
  }>({
    title: 'Paper too small for the picture',
    say: ({ paper, width, limit, scale, stage, larger }, show) => ({
      reason: [
        `On ${PAPER_NAMES[paper]} the part is drawn 1 : ${figure(scale)}, and a piece of stage ${stage} comes out ${mm(width, show)} wide: under ${mm(limit, show)} it is not clear what to peel.`,
        `Neither traveller nor review sheets are written.`,
      ],
      remedy:
        larger === undefined
          ? 'Work from the scribe template or scribe.dxf on a larger sheet instead, or plan the part in two jobs.'
          : `Set ${show.field('handoff.paper')} to "${larger}".`,
      value: width,
      limit,
    }),
  }),
};

const SOLID_TROUBLE = {
  'open edges': (count: number) =>
    `${count} of its edges ${count === 1 ? 'does' : 'do'} not have one face on either side`,
  folded: (share: number) => `its etched face folds over itself on ${percent(share)} of the sheet`,
  area: (share: number) => `its etched face and the sheet differ by ${percent(share)} of the area`,
  volume: (share: number) => `it and the metal removed differ by ${percent(share)} of that volume`,
} as const;

function percent(share: number): string {
  return `${figure(100 * share)} %`;
}

/** Findings about lines that came back in a drawing or a program, and the part that they would etch. Lengths in mm. */
import { edgeWords, type StepEdge } from './edge-words.ts';
import { mm } from './shown-figures.ts';
import { stop, warn } from './words.ts';

export const compareWords = {
  'program-without-lines': stop<{ readonly moves: number }>({
    title: 'Program cuts no line',
    say: ({ moves }) => ({
      reason: `No straight move or arc at feed was found with the tool at its lowest; ${moves} other moves were.`,
      remedy: 'Give the program of the scribe lines, in G0 to G3 words.',
    }),
  }),
  'program-word-unknown': warn<{ readonly word: string; readonly words: number }>({
    title: 'Program has words that are not followed',
    say: ({ word, words }, show) => ({
      reason: `${show.code(word)} ${words === 1 ? 'is' : `and ${words - 1} more are`} not followed, so the lines compared may not be those that the control cuts.`,
      remedy: 'Have offsets, cycles, frames and subprograms written out as plain moves, and compare again.',
    }),
  }),
  'returned-without-lines': stop<{ readonly curves: number }>({
    title: 'No scribe line in the file',
    say: ({ curves }) => ({
      reason: `The drawing has ${curves === 0 ? 'no curves' : `${curves} curves, none on a layer that could hold scribe lines`}.`,
      remedy:
        'Put the lines on layers SCRIBE-01, SCRIBE-02, …, or on any layer that is no outline and no note.',
    }),
  }),
  'returned-face-not-etched': stop<Readonly<Record<never, never>>>({
    title: 'The lines are for a face that is not etched',
    say: () => ({
      reason: 'They are held against the far face, and no line of this plan is cut there.',
      remedy: 'Give the lines of the near face, or the job that etches both.',
    }),
  }),
  'returned-opposite-hand': warn<{
    /** By the file itself; else they fit the plan only when mirrored. */
    readonly isNamed: boolean;
    /** x of the mirror line in the drawing. */
    readonly about: number;
  }>({
    title: 'The lines are for the opposite hand',
    say: ({ isNamed, about }, show) => ({
      reason: isNamed
        ? `The file says so; they were mirrored about x = ${mm(about, show)} to be compared.`
        : `As they came most pieces are missing; mirrored about x = ${mm(about, show)} they fit.`,
      remedy: 'Cut them on parts of the opposite hand only.',
    }),
  }),
  'returned-line-open': stop<{ readonly gap: number | undefined }>({
    title: 'A line that came back is open',
    say: ({ gap }, show) => ({
      reason:
        gap === undefined
          ? 'A line ends here on no other line, so that it borders no piece; it was left out of what would be etched.'
          : `Two ends lie ${mm(gap, show)} apart here, farther than gaps are joined.`,
      remedy: 'Close it: an open cut cannot be peeled along.',
    }),
  }),
  'returned-line-doubled': warn<Readonly<Record<never, never>>>({
    title: 'A line that came back is doubled',
    say: () => ({
      reason: [
        'Two lines run over each other here:',
        'the knife would go twice, perhaps through the maskant into the metal.',
      ],
      remedy: 'Take one of them out.',
    }),
  }),
  'returned-too-crossed': stop<{ readonly limit: number }>({
    title: 'Lines cross too often to be compared',
    say: ({ limit }) => ({
      reason: `The lines cross each other more than ${limit} times.`,
      remedy: 'Give the scribe lines alone.',
    }),
  }),
  'returned-piece-missing': stop<{ readonly stage: number; readonly isEarly: boolean }>({
    title: 'A planned piece is not cut',
    say: ({ stage, isEarly }) => ({
      reason: isEarly
        ? [
            `A piece of stage ${stage} would come off with an earlier stage:`,
            `nothing in the file divides them here.`,
          ]
        : `A piece of stage ${stage} has no closed line round it here, and would stay on.`,
      remedy: 'Put the missing line back.',
    }),
  }),
  'returned-edge-moved': warn<
    StepEdge & {
      readonly side: 'outward' | 'inward';
      readonly by: number;
      readonly limit: number;
    }
  >({
    title: 'A drawn edge would come out elsewhere',
    say: ({ side, by, limit, ...edge }, show) => ({
      reason: `${edgeWords(edge, show)} would come out ${mm(by, show)} ${side === 'outward' ? 'outside' : 'inside'} where it was planned.`,
      remedy: `Move the line ${side === 'outward' ? 'in' : 'out'} by that much; up to ${mm(limit, show)} counts as the same.`,
      value: by,
      limit,
    }),
  }),
  'returned-edge-lost': warn<StepEdge & { readonly share: number }>({
    title: 'A drawn edge would not come out',
    say: ({ share, ...edge }, show) => ({
      reason: `${edgeWords(edge, show)} would not come out within 10 mm of its line, at ${Math.max(1, Math.round(share * 100))} % of the places looked at.`,
      remedy: 'See which line is missing or open, or which piece is peeled in another stage.',
      value: share,
    }),
  }),
  'returned-floor-changed': warn<{
    readonly level: number;
    /** Shares of the region that are floor. */
    readonly planned: number;
    readonly share: number;
  }>({
    title: 'A floor would change',
    say: ({ level, planned, share }, show) => ({
      reason: `${percent(share)} of the region would be floor at ${mm(level, show)}, where ${percent(planned)} was planned.`,
      remedy: 'Compare its lines with those of the plan.',
      value: share,
      limit: planned,
    }),
  }),
};

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

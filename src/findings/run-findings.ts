/** Findings about a run: its plan, its readings, its record, and what can still be met. Lengths in mm. */
import { counted } from './counted.ts';
import { lengthWriter } from './shown-figures.ts';
import { type Figures, note, stop, warn } from './words.ts';

const mm = lengthWriter((each) => each.toFixed(3));

type Asked = 'rate' | 'repeat' | 'rose' | 'too-deep' | 'sheet';

const ASKED_FOR: Record<Asked, string> = {
  rate: '',
  repeat: ' from what was read there at the same time',
  rose: ': less metal is gone than was read there before',
  'too-deep': ': more metal is gone since the last reading there than the minutes allow',
  sheet: ' of the sheet',
};

export const runWords = {
  'plan-file-unusable': stop<{ path: string; expected: string }>({
    title: 'Not a plan',
    say: ({ path, expected }, show) => ({
      reason: `${path === '' ? 'The file' : path} is not ${expected}.`,
      remedy: `Give the plan.json that ${show.code('isobath plan')} wrote, unchanged.`,
    }),
  }),
  'readings-header-unclear': stop<{ name: string; meant: string | undefined; known: readonly string[] }>({
    title: 'Columns of the readings unclear',
    say: ({ name, meant, known }) => ({
      reason:
        name === ''
          ? 'The header lacks stage, a place (region, or x and y) or a value (depth or thickness).'
          : `The header names a column "${name}" that is unknown or appears twice.`,
      remedy: `${meant === undefined ? '' : `Did you mean "${meant}"? `}Columns: ${known.join(', ')}.`,
    }),
  }),
  'reading-unclear': stop<{ column: string; found: string; expected: string }>({
    title: 'Reading not usable',
    say: ({ column, found, expected }) => ({
      reason: `Column ${column} has ${found}; expected ${expected}.`,
      remedy: 'Correct the row; nothing was recorded.',
    }),
  }),
  'reading-off-floor': warn<{ region: string; why: 'wall' | 'land' | 'not-open' | 'behind' }>({
    title: 'Reading left out: not on a floor',
    say: ({ region, why }) => ({
      reason: {
        wall: `The point lies on a wall or a line of ${region}, where the depth is not the floor's.`,
        land: `The depth was read on ${region}, which is land.`,
        'not-open': `The depth was read on ${region} before its stage was peeled.`,
        behind: `A thickness was read in ${region} where a wall or a line of the other face lies behind it, so what that face has taken is not known.`,
      }[why],
      remedy:
        why === 'behind'
          ? 'Gauge where both faces are flat, as at the points of the inspection file, and give x and y; or give the depth of the floor from its own face.'
          : 'Gauge the floor well away from walls, at the region’s label point; correct it in a new row.',
    }),
  }),
  /** A thickness of a region whose sheet nobody knows: its depth can't be derived from it. */
  'sheet-not-gauged': stop<{ region: string }>({
    title: 'Sheet thickness not gauged',
    say: ({ region }) => ({
      reason: `A thickness was read in ${region}, but the sheet is tapered and was not gauged there before the first dip, so the depth is not known.`,
      remedy: `Add a row of stage 0 with the sheet’s thickness in ${region}, or give the depth instead of the thickness.`,
    }),
  }),
  /** mm/min that comes next by the readings: nothing, or less. */
  'no-metal-taken': stop<{ rate: number; planned: number }>({
    title: 'Bath removes no metal',
    say: ({ rate, planned }, show) => ({
      reason: [
        `By the readings the bath etches ${show.rate(rate, fivePlaces)} where ${show.rate(planned, fivePlaces)} was planned:`,
        `the minutes left cannot be calculated from that, and nothing was recorded.`,
      ],
      remedy:
        'Check for a thickness written as a depth, a wrong stage or minute, or a thicker sheet than the job says. If the readings are right, stop the run and check the bath.',
      value: rate,
      limit: planned,
    }),
  }),
  'readings-disagree': warn<{ off: number; noise: number }>({
    title: 'Reading out of line',
    say: ({ off, noise }, show) => ({
      reason: `This reading differs by ${mm(off, show)} from what all readings together give; readings scatter by ${mm(noise, show)}.`,
      remedy:
        'Gauge again before you act on the minutes; a writing error or a point off the floor is likely.',
      value: Math.abs(off),
      limit: 4 * noise,
    }),
  }),
  /** Its number in the run; mm and mm/min; why it is asked about, and the other unit where the figure is right in that. */
  'reading-in-question': warn<{
    number: number;
    why: Asked;
    read: number;
    expected: number;
    rate: { read: number; expected: number } | undefined;
    inOtherUnit: { unit: 'mm' | 'in'; value: number } | undefined;
  }>({
    title: 'Is this reading right?',
    say: ({ number, why, read, expected, rate, inOtherUnit }, show) => ({
      reason: [
        `Reading ${number} says ${mm(read, show)} where ${mm(expected, show)} was expected${ASKED_FOR[why]}.`,
        ...(rate === undefined
          ? []
          : [
              rate.read > 0
                ? `It implies a rate of ${show.rate(rate.read, fivePlaces)}; expected is ${show.rate(rate.expected, fivePlaces)}.`
                : 'It implies that no metal is gone.',
            ]),
        'It does not count until it is confirmed.',
      ],
      remedy:
        inOtherUnit === undefined
          ? `Gauge again. If it is right, add a row with confirm ${number} and the reason; if not, one with strike ${number}.`
          : `In ${inOtherUnit.unit === 'in' ? 'inches' : 'millimetres'} it would be ${mm(inOtherUnit.value, show)}: if that is meant, add it again with its unit and a row with strike ${number}; if not, confirm ${number}.`,
      value: read,
      limit: expected,
    }),
  }),
  'readings-blank': note<{ blank: number; read: number }>({
    title: 'Form not yet filled in',
    say: ({ blank, read }) => ({
      reason: `${counted(blank, 'row')} ${blank === 1 ? 'has' : 'have'} no figure yet; ${counted(read, 'row')} ${read === 1 ? 'was' : 'were'} read.`,
      remedy: 'Fill in the others as they are gauged; what is recorded stays as it is.',
    }),
  }),
  'readings-rewritten': stop<{ recorded: number; row: number }>({
    title: 'Recorded readings were changed',
    say: ({ recorded, row }) => ({
      reason: `The record has ${counted(recorded, 'row')}; row ${row} of the file differs or is missing.`,
      remedy:
        'Restore the recorded rows and add new rows below them: recorded rows are never changed. To withdraw a reading, add a row with strike and its number.',
    }),
  }),
  'run-record-unusable': stop<{ why: 'damaged' | 'other-plan' }>({
    title: 'Record of the run not usable',
    say: ({ why }) => ({
      reason:
        why === 'damaged'
          ? 'The record of the run beside the plan is damaged or was altered.'
          : 'The record beside the plan belongs to another plan.',
      remedy: 'Keep it under another name, find out what happened, then start a new record.',
    }),
  }),
  'review-plan-altered': stop<{ sha256: string }>({
    title: 'Plan in the review was altered',
    say: ({ sha256 }) => ({
      reason: `The review names the plan ${sha256.slice(0, 12)}…, but the plan that it contains is another one.`,
      remedy: 'Open the review as it was saved, or review the plan again.',
    }),
  }),
  'rate-outside-spread': warn<Figures<'rate' | 'planned' | 'spread'>>({
    title: 'Rate outside the plan’s spread',
    say: ({ rate, planned, spread }, show) => ({
      reason: `The bath etches ${show.rate(rate, fivePlaces)}; planned was ${show.rate(planned, fivePlaces)} ± ${(100 * spread).toFixed(0)} %.`,
      remedy: 'Check temperature, concentration and dissolved metal, and gauge more often.',
      value: rate,
      limit: planned,
    }),
  }),
  'depth-out-of-reach': stop<Figures<'depth' | 'low' | 'high'>>({
    title: 'Depth can no longer be met',
    say: ({ depth, low, high }, show) => ({
      reason: `It will come out ${mm(depth, show)} deep; ${mm(low, show)} to ${mm(high, show)} is required.`,
      remedy:
        'Stop and refer the part to the person responsible for it: no further minutes bring all regions within tolerance.',
      value: depth,
      limit: depth > high ? high : low,
    }),
  }),
  'depth-in-doubt': note<Figures<'depth' | 'within' | 'low' | 'high'>>({
    title: 'Depth not sure to be met',
    say: ({ depth, within, low, high }, show) => ({
      reason: `It will come out ${mm(depth, show)} deep, ± ${mm(within, show)} (95 %); ${mm(low, show)} to ${mm(high, show)} is required.`,
      remedy: 'Take the part out before the minutes are up, gauge, and correct again.',
      value: within,
      limit: Math.max(0, Math.min(high - depth, depth - low)),
    }),
  }),
};

function fivePlaces(value: number): string {
  return value.toFixed(5);
}

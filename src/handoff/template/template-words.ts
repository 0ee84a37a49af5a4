/** A template's label, line by line: whose it is, what its offsets were made for, how the knife runs, how its size is checked. */
import type { PaperFigures } from '#handoff/paper-figures.ts';
import { drawingWords, paperOwner } from '#handoff/paper-heading.ts';
import type { PaperOwner } from '#handoff/pdf/paper-book.ts';
import { shortHash } from '#handoff/short-hash.ts';
import { aspectOf, isDrawnMirrored } from '#job/aspect-of.ts';
import type { Job, JobAspect } from '#job/job.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

export interface LabelWords {
  readonly owner: PaperOwner;
  /** Hand, and face where there are two. */
  readonly side: string;
  readonly lines: readonly string[];
  readonly date: string | undefined;
  readonly figures: PaperFigures;
}

/** Letters of a line; longer ones go on below. */
export const LETTERS = 40;

export function labelWords(
  { job, plan }: { readonly job: Job; readonly plan: Pick<EtchPlan, 'stages'> },
  { heading, issue, date, template }: Pick<HandoffChoices, 'heading' | 'issue' | 'date' | 'template'>,
  figures: PaperFigures,
): LabelWords {
  const { process } = job;
  const aspect = aspectOf(job);
  const { part } = aspect;
  const factors = process.etchFactor.map(([, factor]) => factor);
  const [low, high] = [Math.min(...factors), Math.max(...factors)];
  const factor = low === high ? low.toFixed(2) : `${low.toFixed(2)} to ${high.toFixed(2)}`;
  const levels = [...plan.stages].map(({ level }) => figures.lengths(level, { isGiven: true })[0]);
  return {
    owner: paperOwner({ job, choices: { heading, issue, date } }),
    side: sideWords(aspect),
    lines: [
      ...(heading.part === undefined ? [] : [part]),
      ...(isDrawnMirrored(aspect) ? ['Mirrored about x = 0 of the drawing'] : []),
      `Drawing ${drawingWords(heading, job.drawing)}`,
      `Offsets made for factor ${factor}, levels`,
      `${levels.join(' ')} ${figures.units[0]}`,
      `Drawn line: ${DATUM[process.edgeDatum]}`,
      knifeWords(template.knife, figures),
    ].flatMap(broken),
    date,
    figures,
  };
}

function sideWords({ face, isOpposite }: JobAspect): string {
  const hand = isOpposite === true ? 'OPPOSITE HAND' : 'hand as drawn';
  return face === undefined ? hand : `${face === 'far' ? 'FAR FACE' : 'near face'}, ${hand}`;
}

const DATUM: Record<Job['process']['edgeDatum'], string> = {
  'shallow-edge': 'edge on higher floor',
  'mid-wall': 'middle of the wall',
  'deep-foot': 'foot of the wall',
};

/** The wander of a blade in a wider slot, either way. */
function knifeWords(
  { width, blade, side }: HandoffChoices['template']['knife'],
  figures: PaperFigures,
): string {
  const one = (value: number) => figures.lengths(value)[0];
  const where = { middle: 'middle of slot', peeled: 'on masked side', kept: 'on pocket side' }[side];
  const wander = Math.max(0, side === 'middle' ? (width - blade) / 2 : width - blade);
  return `Knife ${where}; slot ${one(width)}, blade ${one(blade)}: else ${side === 'middle' ? '± ' : ''}${one(wander)}`;
}

/** The lines below, which only the template itself can give. */
export function templateLines(
  { owner: { issue }, date }: LabelWords,
  { number, of, planHash, size }: { number: number; of: number; planHash: string; size: string },
): string[] {
  return [
    [`Template ${number} of ${of}`, issue === undefined ? '' : `issue ${issue}`, date]
      .filter(Boolean)
      .join(', '),
    `Plan ${shortHash(planHash)}, ${size}`,
  ].flatMap(broken);
}

/** At spaces, to lines of so many letters; a word that is longer is cut. */
export function broken(text: string): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of text
    .split(' ')
    .flatMap((each) => each.match(new RegExp(`.{1,${LETTERS}}`, 'gu')) ?? [])) {
    if (line !== '' && line.length + 1 + word.length > LETTERS) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return line === '' ? lines : [...lines, line];
}

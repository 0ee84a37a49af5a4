/** Lines that came back, as the sheet shows them: the lines themselves, and what was found of them at its place. */
import { unpackContours } from '#app/worker/pack-contours.ts';
import type { ReturnedAnswer } from '#app/worker/planned-page.ts';
import type { Finding, FindingCode } from '#findings/finding.ts';
import type { Point } from '#geometry/point.ts';
import type { Contour } from '#job/formats/plan-file.ts';
import { faceOnShow } from './shown-face.ts';
import type { Derived, Session } from './workbench-state.ts';

export interface ShownReturned {
  readonly lines: readonly Contour[];
  readonly findings: readonly Finding[];
  /** What was done to a line, in a word. */
  readonly words: readonly { readonly at: Point; readonly says: string }[];
}

/** Undefined where there are none, or they are not of the face on show. While a new plan is compared the ones before stay. */
export function shownReturned(
  derived: Pick<Derived, 'page' | 'comparison'>,
  { returned }: Pick<Session, 'returned'>,
): ShownReturned | undefined {
  const { comparison, page } = derived;
  if (comparison === undefined || comparison.file !== returned) return undefined;
  const { face, lines, findings } = comparison.answer;
  if (face !== faceOnShow({ derived: { page } })) return undefined;
  return { lines: unpackContours(lines), findings, words: wordsOf(comparison.answer) };
}

/** The others follow from these. */
const WORDS: Readonly<Partial<Record<FindingCode, string>>> = {
  'returned-edge-moved': 'moved',
  'returned-piece-missing': 'missing',
  'returned-line-doubled': 'doubled',
  'returned-line-open': 'open',
};

function wordsOf({ findings }: ReturnedAnswer): ShownReturned['words'] {
  return findings.flatMap(({ code, place: { at } }) => {
    const says = WORDS[code];
    return at === undefined || says === undefined ? [] : [{ at, says }];
  });
}

/** Places given to the hand-off, mirrored about a vertical line. */
import { mirrorPoint } from '#geometry/spans/mirror-spans.ts';
import type { HandoffChoices } from '#job/resolve/resolve-handoff.ts';

/** @param about x of the mirror line, mm */
export function mirrorChoices(choices: HandoffChoices, about: number): HandoffChoices {
  const { holes } = choices.template;
  return {
    ...choices,
    sections: choices.sections.map((cut) => ({
      ...cut,
      from: mirrorPoint(cut.from, about),
      to: mirrorPoint(cut.to, about),
    })),
    template: {
      ...choices.template,
      holes: { ...holes, at: holes.at?.map((point) => mirrorPoint(point, about)) },
    },
  };
}

/** Each section as a picture. */
import { utf8ToBytes } from '@noble/hashes/utils.js';
import { sectionSvg } from '#handoff/section-svg.ts';
import type { Writer } from '#run/handoff-files.ts';
import { twoDigits } from '#units/two-digits.ts';

export const write: Writer<'section-svg'> = ({ sections, plan, job, kit, planHash }) => {
  const { thickness } = kit().index.front;
  return sections.map((section, index) => ({
    name: `section-${twoDigits(index + 1)}.svg`,
    what: `section ${section.name} as a picture`,
    bytes: utf8ToBytes(sectionSvg({ name: job.name, planHash, section, thickness, stages: plan.stages })),
  }));
};

/** Names of the files that show sections: numbered in the job's order, whatever the sections are called. */
import { MOST_SECTIONS } from '#job/handoff-fields.ts';

const ENDINGS = ['dxf', 'svg'] as const;

/** @param index from 0 */
export function sectionName(index: number, ending: (typeof ENDINGS)[number]): string {
  return `section-${String(index + 1).padStart(2, '0')}.${ending}`;
}

/** Every name that there can be: those of an earlier plan are taken away. */
export function sectionNames(): string[] {
  return Array.from({ length: MOST_SECTIONS }, (_, index) => index).flatMap((index) =>
    ENDINGS.map((ending) => sectionName(index, ending)),
  );
}

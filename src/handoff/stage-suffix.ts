/** How names of files that are one a stage end, so that a folder lists them in the order of the run: `-01`, `-02`, …. */

/** Most stages that a folder is searched for files of an earlier plan. */
const MOST_STAGES = 99;

export function stageSuffix(stage: number): string {
  return `-${String(stage).padStart(2, '0')}`;
}

/** Of every stage that a plan can have had. */
export const STAGE_SUFFIXES: readonly string[] = Array.from({ length: MOST_STAGES }, (_, index) =>
  stageSuffix(index + 1),
);

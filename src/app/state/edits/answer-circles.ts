/** What circles inside regions are, as the engineer answers it: (job, answers) → job. */
import type { CircleAnswer } from '#app/state/opening/circles-inside.ts';
import type { JobFile } from '#job/job-file.ts';
import { setLayerRole } from './edit-job.ts';
import { addHoles, outlineLayers } from './edit-sheet.ts';
import type { RegionTarget } from './region-target.ts';

/**
 * Holes are named by their layer where it draws nothing else and the border is named by layers, else by points. A layer of circles that are
 * etched like all around them is left out; bosses stay regions of which nothing is asked, and so do etched ones of a layer with more on it.
 */
export function answerCircles(
  job: JobFile,
  answers: readonly CircleAnswer[],
  targets: ReadonlyMap<string, RegionTarget>,
): JobFile {
  return answers.reduce((before, { group: { layer, circles, isWholeLayer }, meaning }) => {
    if (meaning === 'etched' && isWholeLayer) return setLayerRole(before, layer, 'ignore');
    if (meaning !== 'holes') return before;
    if (isWholeLayer && outlineLayers(before).length > 0) return setLayerRole(before, layer, 'outline');
    return addHoles(
      before,
      circles.flatMap((id) => targets.get(id) ?? []),
    );
  }, job);
}

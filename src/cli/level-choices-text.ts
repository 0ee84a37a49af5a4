/** What one stage fewer or more would cost, as lines of text for under a stage table. */

import type { RunResult } from '#run/run-job.ts';
import { AT_TOLERANCE } from '#units/depth-tolerances.ts';

type LevelChoices = NonNullable<RunResult['planFile']>['levelChoices'];

/** At most so many regions are named; the rest are counted. */
const MOST_NAMED = 6;

/** One line a choice; none where there is no choice. */
export function levelChoicesText(choices: LevelChoices): string[] {
  return (choices ?? []).map(({ stages, worstShare, regions }) => {
    const out = regions.filter(({ share }) => share > 1 + AT_TOLERANCE);
    const used = `${stages} ${stages === 1 ? 'stage' : 'stages'}: up to ${Math.round(worstShare * 100)} % of a tolerance`;
    if (out.length === 0) return used;
    const named = out.slice(0, MOST_NAMED).map(({ id, share }) => `${id} ${Math.round(share * 100)} %`);
    const more = out.length - named.length;
    return `${used}; out of tolerance: ${named.join(', ')}${more > 0 ? ` and ${more} more` : ''}`;
  });
}

/** A plan checked as its own only group: with whatever front it is given. */
import { checkMaking, findInGroup } from '#checks/check-making.ts';
import type { Making } from '#checks/making.ts';
import { planPlace } from '#checks/making-place.ts';
import type { Finding } from '#findings/finding.ts';

export function checkWhole(making: Making): Finding[] {
  return checkMaking(making, [{ found: findInGroup(making, planPlace(making)) }]);
}

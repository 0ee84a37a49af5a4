/** What is gauged as a rule: the thickness left, but where it says nothing of the floor. */
import { isTapered } from '#app/state/sheet-thickness.ts';
import { useTank } from './tank-context.ts';

export function useUsualKind(): 'depth' | 'thickness' {
  const { job, plan } = useTank();
  const hasFarFloors = plan.regions.some(({ face, level }) => face === 'far' && level > 0);
  return hasFarFloors || isTapered(job) ? 'depth' : 'thickness';
}

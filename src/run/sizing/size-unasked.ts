/**
 * A sheet of which the job says nothing is sized first where that saves a stage or a stop, every region has a final thickness, so that no
 * metal goes that was to stay, and nothing is found wrong that was right before (M8.8). Else it is suggested only.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { framesOf } from '#run/drawing-frame.ts';
import { type Placed, placePlan, type ToPlace } from '#run/place-plan.ts';
import { toMillionth } from '#units/round-figures.ts';
import { type SizingSaves, sizingSaves } from './suggest-sizing.ts';

interface Chosen<Of extends ToPlace> {
  readonly ready: Of;
  readonly placed: Placed;
}

/**
 * @param sizedBy the same for a sheet sized by so much on each of both faces, mm; undefined where it can't be
 * Findings: `sized-unasked`, `sizing-saves-stage`, `sizing-saves-stop`.
 */
export async function placeSized<Of extends ToPlace>(
  ready: Of,
  sizedBy: (amount: number) => Of | undefined,
): Promise<Chosen<Of>> {
  const placed = await placePlan(ready);
  if (ready.filled.process.sizing !== undefined) return { ready, placed };
  const saves = sizingSaves(placed.plan, ready.near, ready.job);
  if (saves === undefined) return { ready, placed };
  const sized = saves.isAllAsked
    ? await trySized(placed, sizedBy(toMillionth(saves.thinner / 2)), saves)
    : undefined;
  const { outward } = framesOf(ready.drawing);
  return sized ?? { ready, placed: { ...placed, found: [...placed.found, ...outward([saves.suggestion])] } };
}

async function trySized<Of extends ToPlace>(
  unsized: Placed,
  ready: Of | undefined,
  { suggestion }: SizingSaves,
): Promise<Chosen<Of> | undefined> {
  if (ready === undefined) return undefined;
  const placed = await placePlan(ready);
  const { sizing } = placed;
  if (sizing === undefined || isWorse(placed.found, unsized.found)) return undefined;
  const facts = {
    amount: sizing.amount,
    edge: sizing.edge,
    before: unsized.plan.stages.length,
    after: placed.plan.stages.length,
    minutesBefore: minutesOf(unsized),
    minutesAfter: minutesOf(placed) + sizing.minutes,
    pockets: suggestion.code === 'sizing-saves-stop' ? suggestion.facts.pockets : 0,
  };
  const told = finding('sized-unasked', facts, { path: 'process.sizing.amount' });
  return { ready, placed: { ...placed, found: [...placed.found, told] } };
}

function minutesOf({ plan }: Placed): number {
  return plan.stages.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** A kind of stop or warning that was not there. */
function isWorse(found: readonly Finding[], before: readonly Finding[]): boolean {
  const known = new Set(before.map(({ code }) => code));
  return found.some(({ code, severity }) => severity !== 'note' && !known.has(code));
}

/**
 * The sections that go into the hand-off: those that the job lists, or one through the deepest region along the longer way of
 * the part. One that meets no metal is reported and left out.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { boxOfSpans } from '#geometry/box.ts';
import { SECTION_SAGITTA } from '#geometry/tolerances.ts';
import type { NamedSection } from '#handoff/named-section.ts';
import { type ChosenCut, cutName } from '#job/resolve/resolve-handoff.ts';
import { hypot } from '#maths/hypot.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import type { EtchedPart } from './etched-part.ts';
import { sectionOf } from './section-job.ts';

export function cutSections(
  chosen: readonly ChosenCut[],
  part: EtchedPart,
): { readonly sections: readonly NamedSection[]; readonly findings: readonly Finding[] } {
  const sections: NamedSection[] = [];
  const findings: Finding[] = [];
  for (const { name, from, to, path } of chosen.length > 0 ? chosen : longCut(part.plan)) {
    const { points, asked, meetsMetal } = sectionOf(part, { from, to, tolerance: SECTION_SAGITTA });
    if (meetsMetal) sections.push({ name, from, to, points, asked });
    else {
      const length = hypot(to.x - from.x, to.y - from.y);
      const place = { at: from, ...(path === undefined ? {} : { path }) };
      findings.push(finding('section-misses-sheet', { name, length }, place));
    }
  }
  return { sections, findings };
}

/** Through the label of the deepest region, of the largest of several, from side to side of the part. */
function longCut({ regions, sheet }: EtchPlan): ChosenCut[] {
  const [first] = regions;
  if (first === undefined) return [];
  const deepest = regions.reduce(
    (best, each) =>
      each.level > best.level || (each.level === best.level && each.area > best.area) ? each : best,
    first,
  );
  const borders = sheet.length > 0 ? sheet : regions.flatMap(({ loops }) => loops);
  const { minX, minY, maxX, maxY } = boxOfSpans(borders.flat());
  const { x, y } = deepest.label;
  const isWide = maxX - minX >= maxY - minY;
  return [
    {
      name: cutName(0),
      from: isWide ? { x: minX, y } : { x, y: minY },
      to: isWide ? { x: maxX, y } : { x, y: maxY },
      path: undefined,
    },
  ];
}

/**
 * Which region is asked for what: requirements by point win over those by layer, a region with none is land. A taper asks
 * nothing of a region here: `resolve-job.ts` has told that it is not planned.
 */
import { type Finding, finding, type Place } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { Job, Requirement, Taper } from './job.ts';
import type { Asked, Part, Region, RegionId } from './part.ts';
import { LEAST_CLEARANCE, type RegionAt, regionFinder } from './region-at.ts';

export interface AskedRegions {
  /** Regions that a requirement names, in the part's order; all others are land. */
  readonly asked: ReadonlyMap<RegionId, Asked>;
  readonly findings: readonly Finding[];
}

export function askRegions(part: Part, job: Job): AskedRegions {
  const regionAt = regionFinder(part);
  const claims = job.requirements.map((requirement) => claimRegions(requirement, part, regionAt));
  const findings = claims.flatMap((claim) => claim.findings);
  const byLayer = new Map<RegionId, Requirement>();
  const byPoint = new Map<RegionId, Requirement>();
  const clashes = new Map<string, Clash>();
  for (const { requirement, regions } of claims) {
    const rank = 'at' in requirement.names ? byPoint : byLayer;
    for (const { id } of regions) {
      const earlier = rank.get(id);
      if (earlier === undefined) rank.set(id, requirement);
      else if (!asksTheSame(earlier, requirement))
        addClash(clashes, { first: earlier, second: requirement, id });
    }
  }
  for (const { first, second, ids } of clashes.values()) {
    const facts = { first: first.path, second: second.path, regions: ids };
    findings.push(finding('requirements-clash', facts, { path: second.path, regions: ids }));
  }
  const asked = new Map<RegionId, Asked>();
  for (const { id } of part.regions) {
    const requirement = byPoint.get(id) ?? byLayer.get(id);
    if (requirement === undefined) continue;
    const { depth, plus, minus } = requirement;
    if (typeof depth === 'number') asked.set(id, { depth, plus, minus });
  }
  return { asked, findings };
}

/** The regions that a requirement names, or why it names none. */
interface Claim {
  readonly requirement: Requirement;
  readonly regions: readonly Region[];
  readonly findings: readonly Finding[];
}

function claimRegions(requirement: Requirement, part: Part, regionAt: RegionAt): Claim {
  const { names, path } = requirement;
  if ('layer' in names) {
    const regions = part.regions.filter(({ layers }) => layers.includes(names.layer));
    if (regions.length > 0) return { requirement, regions, findings: [] };
    const known = [...new Set(part.regions.flatMap(({ layers }) => layers))]
      .filter((layer) => layer !== '')
      .sort();
    const facts = { names, meant: nearestWord(names.layer, known), known };
    const place: Place = { path: `${path}.layer`, layer: names.layer };
    return { requirement, regions, findings: [finding('requirement-meets-no-region', facts, place)] };
  }
  const found = regionAt(names.at);
  if (found !== undefined && found !== 'on-line') return { requirement, regions: [found], findings: [] };
  const at = [names.at.x, names.at.y] as const;
  const place: Place = { path: `${path}.at`, at: names.at };
  const fault =
    found === 'on-line'
      ? finding('requirement-on-line', { at, clearance: LEAST_CLEARANCE }, place)
      : finding('requirement-meets-no-region', { names: { at }, meant: undefined, known: [] }, place);
  return { requirement, regions: [], findings: [fault] };
}

/** Two requirements of one rank, and the regions they disagree about. */
interface Clash {
  readonly first: Requirement;
  readonly second: Requirement;
  readonly ids: readonly RegionId[];
}

function addClash(
  clashes: Map<string, Clash>,
  { first, second, id }: { readonly first: Requirement; readonly second: Requirement; readonly id: RegionId },
): void {
  const key = `${first.path} ${second.path}`;
  clashes.set(key, { first, second, ids: [...(clashes.get(key)?.ids ?? []), id] });
}

function asksTheSame(a: Requirement, b: Requirement): boolean {
  return a.plus === b.plus && a.minus === b.minus && isSameDepth(a.depth, b.depth);
}

function isSameDepth(a: number | Taper, b: number | Taper): boolean {
  if (typeof a === 'number' || typeof b === 'number') return a === b;
  return (
    a.from.x === b.from.x &&
    a.from.y === b.from.y &&
    a.to.x === b.to.x &&
    a.to.y === b.to.y &&
    a.fromValue === b.fromValue &&
    a.toValue === b.toValue
  );
}

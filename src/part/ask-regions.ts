/**
 * Which region is asked for what: requirements by point win over those by layer, a region with none is land. A taper is
 * handed on as it is: its depth here is the one at the region's label.
 */
import { type Finding, finding, type Place } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import type { Point } from '#geometry/point.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Job, Requirement } from '#job/job.ts';
import type { Taper } from '#job/taper.ts';
import { taperedAt } from '#job/tapered-at.ts';
import type { Asked, Part, Region, RegionId } from './part.ts';
import { type RegionAt, regionFinder } from './region-at.ts';

export interface AskedRegions {
  /** Regions that a requirement names, in the part's order; all others are land. Of one flat requirement all have the same value. */
  readonly asked: ReadonlyMap<RegionId, Asked>;
  readonly findings: readonly Finding[];
}

export function askRegions(
  part: Part,
  job: Pick<Job, 'requirements'>,
  regionAt: RegionAt = regionFinder(part),
): AskedRegions {
  const claims = claimRegions(part, job.requirements, regionAt);
  const byPoint = settleRank(claims.byPoint);
  // What a point settles no layer can dispute.
  const byLayer = settleRank(
    claims.byLayer.map(({ requirements, regions }) => ({
      requirements,
      regions: regions.filter(({ id }) => !byPoint.ofRegion.has(id)),
    })),
  );
  const asked = new Map<RegionId, Asked>();
  const flat = new Map<Requirement, Asked>();
  for (const { id, label } of part.regions) {
    const requirement = byPoint.ofRegion.get(id) ?? byLayer.ofRegion.get(id);
    if (requirement === undefined) continue;
    const known = flat.get(requirement) ?? askedBy(requirement, label);
    asked.set(id, known);
    if (known.tapers === undefined) flat.set(requirement, known);
  }
  return { asked, findings: [...claims.findings, ...byLayer.clashes, ...byPoint.clashes] };
}

/** @param label of the region, where a taper is read */
function askedBy(requirement: Requirement, label: Point): Asked {
  const { depth, plus, minus, isToleranceUsual = false, asThickness = false } = requirement;
  const { wall, behind, tabs, edge } = requirement;
  const rest = {
    plus,
    minus,
    ...(isToleranceUsual ? { isToleranceUsual } : {}),
    ...(asThickness ? { asThickness } : {}),
    ...(wall === undefined ? {} : { wall }),
    ...(tabs === undefined ? {} : { tabs }),
    ...(behind === undefined ? {} : { behind }),
    ...(edge === undefined ? {} : { edge }),
  };
  return typeof depth === 'number'
    ? { depth, ...rest }
    : { depth: taperedAt(depth, label), ...rest, tapers: depth };
}

/** Gives each region the first requirement of one rank that names it, and reports the others that ask something else. */
function settleRank(claims: readonly Claim[]): {
  readonly ofRegion: ReadonlyMap<RegionId, Requirement>;
  readonly clashes: readonly Finding[];
} {
  const ofRegion = new Map<RegionId, Requirement>();
  const clashes: Finding[] = [];
  for (const { requirements, regions } of claims) {
    const [first, ...others] = requirements;
    if (first === undefined || regions.length === 0) continue;
    for (const other of others) if (!asksTheSame(first, other)) clashes.push(clash(first, other, regions));
    const disputed = new Map<Requirement, Region[]>();
    for (const region of regions) {
      const earlier = ofRegion.get(region.id);
      if (earlier === undefined) ofRegion.set(region.id, first);
      else if (!asksTheSame(earlier, first)) listFor(disputed, earlier).push(region);
    }
    for (const [earlier, over] of disputed) clashes.push(clash(earlier, first, over));
  }
  return { ofRegion, clashes };
}

/** Requirements that name the same regions in the same way: one, or all of one layer. */
interface Claim {
  readonly requirements: readonly Requirement[];
  readonly regions: readonly Region[];
}

interface Claims {
  readonly byLayer: readonly Claim[];
  readonly byPoint: readonly Claim[];
  /** Why a requirement names no region. */
  readonly findings: readonly Finding[];
}

function claimRegions(part: Part, requirements: readonly Requirement[], regionAt: RegionAt): Claims {
  const ofLayer = new Map<string, Region[]>();
  for (const region of part.regions) for (const layer of region.layers) listFor(ofLayer, layer).push(region);
  const known = [...ofLayer.keys()].filter((layer) => layer !== '').sort();
  const layerClaims = new Map<string, Requirement[]>();
  const byPoint: Claim[] = [];
  const findings: Finding[] = [];
  for (const requirement of requirements) {
    const { names, path } = requirement;
    if ('layer' in names) {
      if (ofLayer.has(names.layer)) listFor(layerClaims, names.layer).push(requirement);
      else findings.push(layerUnmet(path, names, known));
      continue;
    }
    const found = regionAt(names.at);
    if (found === undefined || found === 'on-line') findings.push(pointUnmet(path, names.at, found));
    else byPoint.push({ requirements: [requirement], regions: [found] });
  }
  const byLayer = [...layerClaims].map(([layer, same]) => ({
    requirements: same,
    regions: ofLayer.get(layer) ?? [],
  }));
  return { byLayer, byPoint, findings };
}

function layerUnmet(path: string, names: { readonly layer: string }, known: readonly string[]): Finding {
  const facts = { names, meant: nearestWord(names.layer, known), known };
  return finding('requirement-meets-no-region', facts, { path: `${path}.layer`, layer: names.layer });
}

function pointUnmet(path: string, point: Point, found: 'on-line' | undefined): Finding {
  const at = [point.x, point.y] as const;
  const place: Place = { path: `${path}.at`, at: point };
  return found === 'on-line'
    ? finding('requirement-on-line', { at, clearance: SCRIBE_ACCURACY }, place)
    : finding('requirement-meets-no-region', { names: { at }, meant: undefined, known: [] }, place);
}

function clash(first: Requirement, second: Requirement, over: readonly Region[]): Finding {
  const regions = over.map(({ id }) => id);
  const facts = { first: first.path, second: second.path, regions };
  return finding('requirements-clash', facts, { path: second.path, regions });
}

function listFor<Key, Item>(lists: Map<Key, Item[]>, key: Key): Item[] {
  const list = lists.get(key) ?? [];
  lists.set(key, list);
  return list;
}

function asksTheSame(a: Requirement, b: Requirement): boolean {
  return (
    a.plus === b.plus &&
    a.minus === b.minus &&
    a.wall === b.wall &&
    a.edge?.plus === b.edge?.plus &&
    a.edge?.minus === b.edge?.minus &&
    isSameDepth(a.depth, b.depth)
  );
}

function isSameDepth(a: number | readonly Taper[], b: number | readonly Taper[]): boolean {
  if (typeof a === 'number' || typeof b === 'number') return a === b;
  return a.length === b.length && a.every((taper, index) => isSameTaper(taper, b[index]));
}

function isSameTaper(a: Taper, b: Taper | undefined): boolean {
  return (
    b !== undefined &&
    a.from.x === b.from.x &&
    a.from.y === b.from.y &&
    a.to.x === b.to.x &&
    a.to.y === b.to.y &&
    a.fromValue === b.fromValue &&
    a.toValue === b.toValue
  );
}

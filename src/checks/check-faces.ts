/**
 * What the two faces of a sheet mean for each other: the far face's own checks, the metal between both, and whether what is to be
 * cut out comes through (M9.4, M9.6).
 */

import { type Finding, finding, type Place } from '#findings/finding.ts';
import { tallied } from '#findings/finding-tally.ts';
import type { ContourKit } from '#front/contours/contour-kit.ts';
import type { Reached } from '#front/reached.ts';
import { boxesMeet, boxOfSpans } from '#geometry/box.ts';
import { combineLoops } from '#geometry/grow/grow-loops.ts';
import type { Point } from '#geometry/point.ts';
import { loopsArea } from '#geometry/span.ts';
import { LEAST_OVERLAP, ROUNDING } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { sheetAt, thickestOf } from '#job/sheet-at.ts';
import type { Asked, RegionId } from '#part/part.ts';
import { thicknessOver } from '#part/thickness-over.ts';
import { throughAllowance, undercutOf, wholeUndercut } from '#plan/allowance.ts';
import type { EtchPlan, PlannedRegion } from '#plan/etch-plan.ts';
import { checkLoosePieces } from './check-loose-pieces.ts';
import { checkMaking, type GroupFound } from './check-making.ts';
import { lookAround } from './surroundings.ts';
import { type EtchedFace, thinWebs } from './web-between.ts';

interface FacesMeasured {
  readonly kit: () => ContourKit;
  /** Of the far face. */
  readonly far?: {
    readonly kit: () => ContourKit;
    readonly groups: readonly { readonly found: GroupFound }[];
  };
  readonly regions: ReadonlyMap<RegionId, Reached>;
}

type FacesJob = Pick<Job, 'stock' | 'process' | 'rules' | 'levels' | 'far'>;

/** None for a plan of one face. */
export function checkFaces(
  plan: EtchPlan,
  { kit, far: behind, regions: reached }: FacesMeasured,
  job: FacesJob,
): Finding[] {
  const { far } = plan;
  if (far === undefined || behind === undefined) return [];
  const thickness = thickestOf(job.stock.thickness);
  return [
    ...checkLoosePieces(plan, () => ({ near: kit(), far: behind.kit(), thickness })),
    // What is known of its regions by then is said of both faces at once.
    ...checkMaking({ plan: { ...far, findings: plan.findings }, reached, job }, behind.groups),
    ...tallied(websBetween(plan, far, job)),
    ...tallied(throughCuts(plan, far, job)),
    ...tallied(thicknessesOfOne(plan, far, job)),
  ];
}

/** Thinnest first, one for the same regions: as planned, and else with sheet and bath at their worst. */
function websBetween(plan: EtchPlan, far: EtchPlan, job: FacesJob): Finding[] {
  const { stock, process, rules } = job;
  const { registration } = job.far;
  const around = [plan, far].map(lookAround);
  const idsAt = (points: readonly Point[]): string[] =>
    around.flatMap(({ regionsAt }) => [
      ...new Set(points.flatMap((point) => regionsAt(point).map(({ id }) => id)).sort()),
    ]);
  const reported = new Set<string>();
  const findings: Finding[] = [];
  for (const worst of [false, true]) {
    const [one, other] = worst
      ? [cutFaster(plan, process.rateSpread), cutFaster(far, process.rateSpread)]
      : [plan, far];
    const less = worst ? stock.minus : 0;
    const webs = thinWebs({
      plan: one,
      far: other,
      registration,
      sheetAt: (at) => sheetAt(stock.thickness, at) - less,
      leastOver: (loops) => thicknessOver(stock.thickness, loops).least - less,
      under: rules.minWeb - ROUNDING,
    });
    for (const { web, at, near, far: deep, stages, places, isBehind } of webs) {
      const behind = isBehind
        ? floorsBehind(plan.stages[stages.near]?.level, far.stages[stages.far]?.level, { plan, far })
        : [];
      const regions = behind.length === 0 ? idsAt(places) : behind;
      const key = regions.join(' ');
      if (reported.has(key)) continue;
      reported.add(key);
      const facts = { web, limit: rules.minWeb, near, far: deep, registration };
      const code = worst ? 'faces-web-at-worst' : web <= ROUNDING ? 'floors-meet' : 'faces-web-too-thin';
      findings.push(finding(code, facts, { at, regions }));
    }
  }
  return findings;
}

/** Floors of two levels that lie behind each other, the near ones first: all of them are left that thin. */
function floorsBehind(
  near: number | undefined,
  deep: number | undefined,
  { plan, far }: { readonly plan: EtchPlan; readonly far: EtchPlan },
): RegionId[] {
  const of = ({ regions }: EtchPlan, level: number | undefined) =>
    regions.filter((each) => each.level === level && each.asked.wall === undefined);
  const [ones, others] = [of(plan, near), of(far, deep)];
  const areBehind = (a: PlannedRegion, b: PlannedRegion) =>
    boxesMeet(boxOfSpans(a.loops.flat()), boxOfSpans(b.loops.flat())) &&
    loopsArea(combineLoops('intersect', a.loops, b.loops)) > LEAST_OVERLAP;
  return [
    ...ones.filter((one) => others.some((other) => areBehind(one, other))),
    ...others.filter((other) => ones.some((one) => areBehind(one, other))),
  ].map(({ id }) => id);
}

/** Openings stay where they are scribed; every stage takes that share more. */
function cutFaster({ stages, ...rest }: EtchPlan, spread: number): EtchedFace {
  return {
    ...rest,
    stages: stages.map(({ level, base, opening }) => ({
      level: level * (1 + spread),
      base: base * (1 + spread),
      opening,
    })),
  };
}

function throughCuts(plan: EtchPlan, far: EtchPlan, { stock, process }: FacesJob): Finding[] {
  const thickest = thickestOf(stock.thickness);
  return [plan, far].flatMap(({ regions }) =>
    regions.flatMap(({ id, label, level, asked: { wall, tabs } }) => {
      if (wall === undefined) return [];
      const faces = wall < thickest ? 2 : 1;
      const needed = (thickest + stock.plus) / faces;
      const place = { at: label, regions: [id] };
      if (level <= needed) return [finding('through-too-shallow', { level, needed, faces }, place)];
      const worst = level * (1 - process.rateSpread);
      return [
        ...tabTrouble({ level, wall, tabs }, { process, thickest, place }),
        ...(worst > needed ? [] : [finding('through-at-worst', { level, worst, needed, faces }, place)]),
      ];
    }),
  );
}

interface TabbedCut {
  readonly level: number;
  readonly wall: number;
  readonly tabs: Asked['tabs'];
}

/** What is left of a tab at the surface: its width less a cusp on either side (M9.9). */
function tabTrouble(
  { level, wall, tabs }: TabbedCut,
  { process, thickest, place }: { process: Job['process']; thickest: number; place: Place },
): Finding[] {
  if (tabs === undefined) return [];
  const undercut = undercutOf(process, [level]);
  const cusp = wholeUndercut(undercut, level) - throughAllowance(undercut, { level, wall });
  const left = tabs.width - 2 * cusp;
  if (left >= thickest) return [];
  const facts = { width: tabs.width, left, limit: thickest, needed: thickest + 2 * cusp };
  return [finding('tab-too-thin', facts, place)];
}

/** Where a thickness is asked that counts on less being taken from the other side. */
function thicknessesOfOne(plan: EtchPlan, far: EtchPlan, { stock }: FacesJob): Finding[] {
  return [
    [plan, far],
    [far, plan],
  ].flatMap(([own, other]) =>
    (own?.regions ?? []).flatMap((region) => {
      const behind = (other?.regions ?? []).find((each) => isTooMuch(region, each));
      if (behind === undefined) return [];
      const thickness =
        sheetAt(stock.thickness, region.label) - region.asked.depth - (region.asked.behind ?? 0);
      const place = { at: region.label, regions: [region.id, behind.id] };
      return [finding('thickness-of-one-face', { thickness, far: behind.asked.depth }, place)];
    }),
  );
}

function isTooMuch({ asked, loops }: PlannedRegion, other: PlannedRegion): boolean {
  const { asThickness, behind } = asked;
  if (asThickness !== true || behind === undefined || other.level === 0) return false;
  if (other.asked.wall !== undefined || other.asked.tapers !== undefined || other.taper !== undefined)
    return false;
  const tolerance = Math.max(asked.plus + other.asked.plus, asked.minus + other.asked.minus);
  if (Math.abs(other.asked.depth - behind) <= tolerance + ROUNDING) return false;
  return loopsArea(combineLoops('intersect', loops, other.loops)) > LEAST_OVERLAP;
}

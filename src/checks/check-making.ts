/**
 * Everything about making the plan: each rule in a file of its own, in the order of the work. Rules about places look at one group of the
 * plan after another; what was found in a group stays with it. Sorting is for the caller.
 */

import { type Finding, finding } from '#findings/finding.ts';
import { tallied } from '#findings/finding-tally.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { corners } from './check-corners.ts';
import { checkCutDepth } from './check-cut-depth.ts';
import { type Doubted, factorDoubt } from './check-factor-doubt.ts';
import { floors } from './check-floor.ts';
import { landWidth } from './check-land.ts';
import { checkLandEnds } from './check-land-ends.ts';
import { lineSpacing } from './check-line-spacing.ts';
import { maskantIslands } from './check-maskant-islands.ts';
import { maskantStrips } from './check-maskant-strips.ts';
import { overEtch } from './check-over-etch.ts';
import { overhangs } from './check-overhang.ts';
import { pieceParts } from './check-piece-parts.ts';
import { pieceWidth } from './check-piece-width.ts';
import { sheetEdge } from './check-sheet-edge.ts';
import { checkStep } from './check-step.ts';
import { checkWeb } from './check-web.ts';
import type { Making, PlaceRule, PlanPlace, WholePlan } from './making.ts';
import { makingPlace, planPlace } from './making-place.ts';

type Rule = PlaceRule<unknown> | ((whole: PlanPlace) => readonly Finding[]);

const RULES: readonly Rule[] = [
  checkStep,
  checkCutDepth,
  checkWeb,
  sheetEdge,
  lineSpacing,
  pieceWidth,
  pieceParts,
  maskantStrips,
  maskantIslands,
  overhangs,
  landWidth,
  checkLandEnds,
  corners,
  floors,
  overEtch,
];

/** What the rules about places found in a group of a plan. */
export interface GroupFound {
  /** By rule, in their order; of most rules there is nothing in most groups. */
  readonly byRule: ReadonlyMap<Rule, readonly unknown[]>;
  readonly doubted: readonly Doubted[];
  /** Where a contour did not close. */
  readonly gap: Point | undefined;
}

/**
 * A plan without a stage has nothing to check.
 * @param groups of the plan, each with what was found there
 */
export function checkMaking(making: WholePlan, groups: readonly { readonly found: GroupFound }[]): Finding[] {
  const { plan, reached } = making;
  if (plan.stages.length === 0) return [];
  const place = planPlace(making);
  const found = groups.map((group) => group.found);
  const gaps = [...found.map(({ gap }) => gap), ...[...reached.values()].map(({ gap }) => gap)];
  const open = gaps.find(isGap);
  const unsure = open === undefined ? [] : [finding('contour-not-closed', { of: 'floors' }, { at: open })];
  const reported = RULES.map((rule) =>
    typeof rule === 'function'
      ? rule(place)
      : rule.report(
          found.flatMap(({ byRule }) => byRule.get(rule) ?? []),
          making,
        ),
  );
  const doubts = found.flatMap(({ doubted }) => doubted);
  // The rules share no code, so that each may be cut short by itself.
  return [...unsure, ...reported.flatMap(tallied), ...factorDoubt.report(doubts, making, reported.flat())];
}

const NOTHING: GroupFound = { byRule: new Map(), doubted: [], gap: undefined };

/** What the rules about places find in a group of a plan, with its own front; nothing where it has no stage. */
export function findInGroup(group: Making, whole: PlanPlace): GroupFound {
  if (group.plan.stages.length === 0) return NOTHING;
  const { place, gap } = makingPlace(group, whole);
  const byRule = new Map<Rule, readonly unknown[]>();
  for (const rule of RULES) {
    const found = typeof rule === 'function' ? [] : rule.find(place);
    if (found.length > 0) byRule.set(rule, found);
  }
  const doubted = factorDoubt.find(place);
  if (byRule.size === 0 && doubted.length === 0 && gap === undefined) return NOTHING;
  return { gap, byRule, doubted };
}

/** Plain data, for another thread. */
export interface PackedFound extends Omit<GroupFound, 'byRule'> {
  /** By place of the rule in their order. */
  readonly byRule: readonly (readonly [rule: number, found: readonly unknown[]])[];
}

export function packFound({ byRule, ...rest }: GroupFound): PackedFound {
  return { ...rest, byRule: [...byRule].map(([rule, found]) => [RULES.indexOf(rule), found]) };
}

export function unpackFound({ byRule, ...rest }: PackedFound): GroupFound {
  return { ...rest, byRule: new Map(byRule.map(([rule, found]) => [itemAt(RULES, rule), found])) };
}

function isGap(gap: Point | undefined): gap is Point {
  return gap !== undefined;
}

/**
 * An earlier plan.json to compare with. The file is Isobath's own, but it comes from a disk: what the comparison reads of it is
 * checked, and told with its path where it is not as it should be. Other keys may be those of an older or newer Isobath.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js';
import { type Finding, finding } from '#findings/finding.ts';
import { type PlanChange, planChanges } from '#handoff/plan-changes.ts';
import type { PlanFile } from '#handoff/plan-file.ts';
import { sayPlanChanges } from '#handoff/say-plan-change.ts';

export interface EarlierPlan {
  /** SHA-256 of the file. */
  readonly planHash: string;
  readonly planFile: PlanFile;
}

/** The plan compared with, and what has changed since. */
export interface PlanSince {
  readonly planHash: string;
  readonly changes: readonly PlanChange[];
  /** The same in words. */
  readonly said: readonly string[];
}

export function planSince({ planHash, planFile }: EarlierPlan, now: PlanFile): PlanSince {
  const changes = planChanges(planFile, now);
  return { planHash, changes, said: sayPlanChanges(changes) };
}

/** Findings: `plan-file-unusable`. */
export function readEarlierPlan(text: string): EarlierPlan | { readonly refused: Finding } {
  let file: unknown;
  try {
    file = JSON.parse(text);
  } catch {
    return unusable('', 'JSON');
  }
  const plan = keyed(file);
  if (plan['format'] !== 'isobath-plan') return unusable('format', '"isobath-plan"');
  if (plan['version'] !== 1) return unusable('version', '1');
  for (const [key, isGood] of Object.entries(NEEDED)) {
    if (!isGood(plan[key])) return unusable(key, 'as `isobath plan` writes it');
  }
  return { planHash: bytesToHex(sha256(utf8ToBytes(text))), planFile: file as PlanFile };
}

function unusable(path: string, expected: string): { readonly refused: Finding } {
  return { refused: finding('plan-file-unusable', { path, expected }) };
}

type Check = (value: unknown) => boolean;

const isText: Check = (value) => typeof value === 'string';
const isFigure: Check = (value) => typeof value === 'number' && Number.isFinite(value);
const isFigures = (count: number): Check => listOf(isFigure, count);
const isContour: Check = (value) =>
  typeof keyed(value)['closed'] === 'boolean' && listOf(isFigures(3))(keyed(value)['vertices']);
const isAsked: Check = (value) => has({ depth: isFigure, plus: isFigure, minus: isFigure })(value);

/** What the comparison reads, by key. */
const NEEDED: Readonly<Record<string, Check>> = {
  drawing: has({ file: isText, sha256: isText }),
  outline: (value) => value === null || isContour(value),
  cutouts: listOf(isContour),
  regions: listOf(has({ id: isText, contours: listOf(isContour), asked: isAsked, level: isFigure })),
  stages: listOf(has({ number: isFigure, level: isFigure, minutes: isFigure, lines: listOf(isContour) })),
  totals: has({ minutes: isFigure }),
  findings: listOf(
    has({ code: isText, message: isText, at: (value) => value === null || isFigures(2)(value) }),
  ),
  provenance: listOf(has({ quantity: isText, value: isFigure, unit: isText, source: isText })),
};

function has(checks: Readonly<Record<string, Check>>): Check {
  return (value) => Object.entries(checks).every(([key, isGood]) => isGood(keyed(value)[key]));
}

function listOf(isGood: Check, count?: number): Check {
  return (value) =>
    Array.isArray(value) && (count === undefined || value.length === count) && value.every(isGood);
}

function keyed(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}

/**
 * Which values of a job were filled in, and the job without them. plan.json shows its job with every default filled in and
 * names their paths under `assumed`: planned again, they are defaults still, with the sources and warnings of defaults. A
 * value that would now be filled in otherwise stays as it stands, so that the plan stays, and that is reported.
 */

import { type Finding, finding, hasStop } from '#findings/finding.ts';
import { isHeld } from '#job/fields/given-ways.ts';
import { checkChoices } from '#job/formats/check-choices.ts';
import { type JsonPath, spellPath } from '#job/formats/read-json.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

/** Finding: `assumed-value-differs`; `job-value-wrong` where what is listed can't be left out. */
export function bareJob(
  jobFile: JobFile,
  fill: (bare: JobFile) => JobFile,
): { readonly jobFile: JobFile; readonly findings: readonly Finding[] } {
  const { assumed = [], ...whole } = jobFile;
  if (assumed.length === 0) return { jobFile: whole, findings: [] };
  const bare = without(whole, new Set(assumed)) as JobFile;
  if (!JOB.schema.safeParse(bare).success || hasStop(checkChoices(bare, () => ({})))) {
    const facts = {
      found: 'the path of a value that has no default',
      expected: 'paths of values that were filled in',
    };
    return { jobFile: whole, findings: [finding('job-value-wrong', facts, { path: 'assumed' })] };
  }
  const standing = leavesOf(whole);
  const refilled = leavesOf(fill(bare));
  const differing = assumed.filter((path) => {
    const value = standing.get(path);
    return value !== undefined && value !== refilled.get(path);
  });
  const held = new Set(assumed.filter((path) => !differing.includes(path)));
  return {
    jobFile: without(whole, held) as JobFile,
    findings: differing.map((path) => {
      const facts = { value: standing.get(path) ?? '', filled: refilled.get(path) ?? 'nothing' };
      return finding('assumed-value-differs', facts, { path });
    }),
  };
}

/** Paths of the values that the filled job has and the given one has not. */
export function pathsFilled(given: JobFile, filled: JobFile): string[] {
  const before = leavesOf(given);
  return [...leavesOf(filled).keys()].filter((path) => !before.has(path));
}

/** Every value that is no object, as JSON, by its path. A list counts as one value unless it holds objects. */
function leavesOf(
  value: unknown,
  path: JsonPath = [],
  leaves = new Map<string, string>(),
): Map<string, string> {
  const entries = entriesOf(value);
  if (entries === undefined) {
    if (value !== undefined) leaves.set(spellPath(path), JSON.stringify(value));
    return leaves;
  }
  for (const [key, each] of entries) leavesOf(each, [...path, key], leaves);
  return leaves;
}

/** An object whose last value goes, goes with it. */
function without(value: unknown, paths: ReadonlySet<string>, path: JsonPath = []): unknown {
  const entries = entriesOf(value);
  if (entries === undefined) return value;
  const kept = entries
    .filter(([key]) => !paths.has(spellPath([...path, key])))
    .map(([key, each]) => [key, without(each, paths, [...path, key])] as const)
    .filter(([, each]) => each !== undefined);
  if (Array.isArray(value)) return kept.map(([, each]) => each);
  return kept.length === 0 && entries.length > 0 ? undefined : Object.fromEntries(kept);
}

function entriesOf(value: unknown): (readonly [string | number, unknown])[] | undefined {
  if (Array.isArray(value)) {
    return value.some(isHeld) ? value.map((each, index) => [index, each] as const) : undefined;
  }
  return isHeld(value) ? Object.entries(value) : undefined;
}

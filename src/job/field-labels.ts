/** Findings for people who do not write job files, on screen and on paper: a field of the job is named by the label of its control. */
import type { Finding } from '#findings/finding.ts';
import { type SaidFinding, sayFinding } from '#findings/say-finding.ts';
import { type Naming, type Shown, shownIn } from '#findings/shown-figures.ts';
import type { Members } from '#job/fields/field.ts';
import { JOB } from '#job/job-file.ts';
import type { ShownUnit } from '#units/show-length.ts';

/** By path. */
export const FIELD_LABELS: ReadonlyMap<string, string> = new Map(labelsOf(JOB.members, []));

/** Backticks are for code, which no words of a finding are in the workbench or on paper. */
const IN_LABELS: Naming = {
  field: (path) => `“${labelOf(path)}”`,
  code: (text) => `“${text}”`,
};

/** Figures and names for words of findings that stand alone. */
export function shownInLabels(unit: ShownUnit): Shown {
  return shownIn(unit, IN_LABELS);
}

export function sayInLabels(finding: Finding, unit: ShownUnit): SaidFinding {
  return sayFinding(finding, unit, IN_LABELS);
}

/** The label of a path of the job, with the place in its list: `Coupons, no. 2` of `process.coupon[1]`. What is no field stays a path. */
export function labelOf(path: string): string {
  const label = FIELD_LABELS.get(path.replace(/\[\d+\]/g, ''));
  if (label === undefined) return path;
  const number = /\[(\d+)\]/.exec(path)?.[1];
  return number === undefined ? label : `${label}, no. ${Number(number) + 1}`;
}

/** `job file, stock.thickness` as `job file`: on paper the figure beside it says which of its keys. */
export function withoutFieldPaths(source: string): string {
  return source.replace(/\bjob file, [A-Za-z]+(?:\.[A-Za-z]+|\[\d+\])*/g, 'job file');
}

function labelsOf(members: Members, path: readonly string[]): [path: string, label: string][] {
  return Object.entries(members).flatMap(([key, member]) => {
    const here = [...path, key];
    if (member.is === 'field') return [[here.join('.'), member.label] as [string, string]];
    return labelsOf(member.is === 'group' ? member.members : member.item.members, here);
  });
}

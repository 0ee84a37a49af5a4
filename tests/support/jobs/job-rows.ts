/** The fields of a job as declared, by path: what pages and schemas are made of. */
import type { AnyField, Member } from '#job/fields/field.ts';
import { JOB } from '#job/job-file.ts';

export interface FieldRow {
  /** `requirements[].plus`: of every item. */
  readonly path: string;
  readonly field: AnyField;
  /** What counts where it is left out. */
  readonly usual: string;
}

export function jobRows(): FieldRow[] {
  return rowsIn(JOB, '');
}

function rowsIn(member: Member, path: string, isTogether = false): FieldRow[] {
  if (member.is === 'field') {
    const { usualWords } = member;
    const usual = isTogether && usualWords === 'needed' ? 'needed beside the others' : usualWords;
    return [{ path, field: member, usual }];
  }
  const [group, base] = member.is === 'list' ? [member.item, `${path}[]`] : [member, path];
  return Object.entries(group.members).flatMap(([key, each]) =>
    rowsIn(each, base === '' ? key : `${base}.${key}`, !group.isAlways),
  );
}

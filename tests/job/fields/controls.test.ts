/** What a control of the workbench accepts, the job accepts: the limits shown lie within those of the file, in either unit. */
import { describe, expect, test } from 'vitest';
import type { AnyField, Members } from '#job/fields/field.ts';
import { jobLength } from '#job/job-figures.ts';
import { JOB } from '#job/job-file.ts';

const UNITS = ['mm', 'in'] as const;

function fieldsOf(members: Members, path: readonly string[] = []): [path: string, field: AnyField][] {
  return Object.entries(members).flatMap(([key, member]) => {
    const here = [...path, key];
    if (member.is === 'field') return [[here.join('.'), member] as [string, AnyField]];
    return fieldsOf(member.is === 'group' ? member.members : member.item.members, here);
  });
}

/** Values at the ends of what a control accepts, as the file would hold them. */
function endsOf({ control }: AnyField): unknown[] {
  switch (control.as) {
    case 'length':
    case 'speed':
      return UNITS.flatMap((unit) => [control.least, control.most].map((each) => jobLength(each, unit)));
    case 'number':
      return [control.least, ...(control.isClosed ? [control.most] : [control.most - 1e-9])].map(
        (each) => each / control.times,
      );
    case 'text':
      return ['P', 'P'.repeat(control.most)];
    case 'date':
      return ['2031-04-02'];
    case 'choice':
      return Object.keys(control.words).filter((word) => word !== 'list');
    case 'own':
      return [];
  }
}

const SHOWN = fieldsOf(JOB.members).filter(([, field]) => endsOf(field).length > 0);

describe('the ends of what a control accepts are valid in the file', () => {
  test.each(SHOWN)('%s', (_, field) => {
    expect(endsOf(field).filter((value) => !field.schema.safeParse(value).success)).toEqual([]);
  });
});

test('every form of control is among them', () => {
  const forms = new Set(SHOWN.map(([, { control }]) => control.as));
  expect([...forms].sort()).toEqual(['choice', 'date', 'length', 'number', 'speed', 'text']);
  expect(SHOWN.length).toBeGreaterThan(60);
});

test('a letter more than fits is no longer valid', () => {
  const { part } = JOB.members.handoff.members.heading.members;
  expect(part.control).toEqual({ as: 'text', most: 40 });
  expect(part.schema.safeParse('P'.repeat(41)).success).toBe(false);
});

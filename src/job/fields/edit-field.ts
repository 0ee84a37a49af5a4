/** A field of the job set or taken back, as a pure function: (job, place, value) → job. The value is as the file holds it. */
import { assert } from '#geometry/assert.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import type { Group, Members } from './field.ts';
import { type Held, isHeld, rivalsOf } from './given-ways.ts';

/** Keys from the job down to a field or a whole group: `['rules', 'minWeb']`. */
export type FieldPath = readonly string[];

/** Undefined takes it back: then the default counts, whatever it will be. What says the same in another way gives way to a value. */
export function setField(job: JobFile, path: FieldPath, value: unknown): JobFile {
  return setIn(JOB, job, path, value) as JobFile;
}

/** As the file holds it. */
export function fieldIn(job: JobFile, path: FieldPath): unknown {
  return path.reduce<unknown>((held, key) => (isHeld(held) ? held[key] : undefined), job);
}

function setIn(group: Group<Members>, held: Held, [key, ...rest]: FieldPath, value: unknown): Held {
  assert(key !== undefined, 'a path has a key');
  const member = group.members[key];
  const before = held[key];
  const isInside = member?.is === 'group' && rest.length > 0;
  const next = isInside ? setIn(member, isHeld(before) ? before : {}, rest, value) : value;
  const isEmpty = member?.is === 'group' && isHeld(next) && Object.keys(next).length === 0;
  const goes = isEmpty && member.schema.safeParse(undefined).success ? undefined : next;
  const rivals = goes === undefined ? [] : rivalsOf(group.ways, key);
  const entries = Object.entries({ ...held, [key]: goes });
  return Object.fromEntries(entries.filter(([each, value]) => value !== undefined && !rivals.includes(each)));
}

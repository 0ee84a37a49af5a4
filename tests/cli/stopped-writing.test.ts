/**
 * A set of files changes as one: killed, or refused by the system, at every step of the writing, the folder never holds files of
 * two sets under their own names, nor `plan.json` beside a set that is not whole; and nothing is lost.
 */
import { rmSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { namesOf, stateOf, type WritingRig, writingRig } from '#support/process/stopped-writing.ts';

const OLD = 5;
const NEW = 3;
const NEWER = 6;

let rig: WritingRig & { readonly home: string };
/** Calls that one whole change of the set takes. */
let calls = 0;
beforeAll(async () => {
  rig = await writingRig();
  const folder = rig.newFolder();
  rig.write(folder, OLD);
  calls = rig.write(folder, NEW).calls;
});
afterAll(() => rmSync(rig.home, { recursive: true }));

/** A folder with the old set in it. */
function withOldSet(): string {
  const folder = rig.newFolder();
  rig.write(folder, OLD);
  expect(stateOf(folder)).toEqual({ sets: [OLD], isWhole: true, hasPlan: true, isClean: true });
  return folder;
}

const everyCall = (): number[] => Array.from({ length: calls }, (_, call) => call);

describe('a set of files changes as one', () => {
  it('the sets of these tests differ in their files, and a change takes many steps', () => {
    expect(namesOf(OLD)).not.toEqual(namesOf(NEW));
    expect(calls).toBeGreaterThan(10);
  });

  it('out-put-back: killed at any step, no mixture; the next run puts back and replaces', () => {
    const putBack = everyCall().filter((call) => {
      const folder = withOldSet();
      expect(rig.write(folder, NEW, { kind: 'kill', call }).wasKilled).toBe(true);
      const { sets, hasPlan, isWhole } = stateOf(folder);
      expect(sets.length).toBeLessThan(2);
      expect(isWhole).toBe(hasPlan);
      const { findings, refusedBy } = rig.write(folder, NEWER);
      expect(refusedBy).toBeUndefined();
      expect(stateOf(folder)).toEqual({ sets: [NEWER], isWhole: true, hasPlan: true, isClean: true });
      return findings.includes('out-put-back');
    });
    expect(putBack.length).toBeGreaterThan(namesOf(OLD).length);
  });

  it('out-not-writable: a file that another program holds leaves the old set as it was', () => {
    for (const call of everyCall()) {
      const folder = withOldSet();
      const { refusedBy } = rig.write(folder, NEW, { kind: 'refuse', call, calls: 1, code: 'EBUSY' });
      const { sets, isWhole } = stateOf(folder);
      expect(isWhole).toBe(true);
      expect(sets).toEqual([refusedBy === undefined ? NEW : OLD]);
    }
  });

  it('out-left-aside: nor can they be put back; the next run does so', () => {
    const seen = everyCall().map((call) => {
      const folder = withOldSet();
      const { refusedBy } = rig.write(folder, NEW, { kind: 'refuse', call, calls: 1000, code: 'EIO' });
      const { sets, hasPlan, isWhole } = stateOf(folder);
      expect(sets.length).toBeLessThan(2);
      expect(isWhole).toBe(hasPlan);
      expect(rig.write(folder, NEWER).refusedBy).toBeUndefined();
      expect(stateOf(folder)).toEqual({ sets: [NEWER], isWhole: true, hasPlan: true, isClean: true });
      return refusedBy;
    });
    expect(seen).toContain('out-left-aside');
    expect(seen).toContain('out-not-writable');
  });
});

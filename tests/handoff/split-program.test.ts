/** Which programs a plan gets, and which lines stand in each. */
import { expect, test } from 'vitest';
import { programFiles } from '#handoff/split-program.ts';
import { fillPost, PLAIN_POST } from '#job/formats/post-file.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const AS_PLANNED = { start: 'as-planned', direction: 'climb', overcut: 0, order: 'as-planned' } as const;

function filesOf(masking: 'peel-next' | 're-mask', split: 'one-file' | 'by-stage') {
  const choices = { ...AS_PLANNED, split, post: fillPost({ ...PLAIN_POST, ending: 'tap' }) };
  const input = {
    name: 'Lid',
    planHash: 'c4',
    jobUnit: 'mm' as const,
    plan: { ...handMadePlan, masking },
    overrun: 0,
  };
  return programFiles(input, choices).map(({ name, text }) => [name, text.match(/Stage \d|Line \d of \d/g)]);
}

test('one program of all stages, or one a stage with its own lines', () => {
  expect(filesOf('peel-next', 'one-file')).toEqual([
    ['scribe.tap', ['Stage 1', 'Line 1 of 3', 'Stage 2', 'Line 2 of 3', 'Line 3 of 3']],
  ]);
  expect(filesOf('peel-next', 'by-stage')).toEqual([
    ['scribe-01.tap', ['Stage 1', 'Line 1 of 1']],
    ['scribe-02.tap', ['Stage 2', 'Line 1 of 2', 'Line 2 of 2']],
  ]);
});

test('with a coat a stage there is one a stage, whatever is chosen', () => {
  expect(filesOf('re-mask', 'one-file')).toEqual(filesOf('peel-next', 'by-stage'));
});

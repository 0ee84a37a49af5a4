import { expect, it } from 'vitest';
import {
  addRemark,
  EMPTY_DRAFT,
  isOfOtherPlan,
  removeRemark,
  startOver,
  toggleCheck,
} from '#app/state/review-draft.ts';

const [issueA, issueB] = ['{"issue":"A"}', '{"issue":"B"}'];

it('a stage is ticked and the tick taken back', () => {
  const ticked = toggleCheck(toggleCheck(EMPTY_DRAFT, 2, issueA), 1, issueA);
  expect(ticked.checked).toEqual([2, 1]);
  expect(toggleCheck(ticked, 2, issueA).checked).toEqual([1]);
});

it('ticks of one plan and marks on another never mix: it is begun again, with the remarks kept', () => {
  const ticked = toggleCheck(EMPTY_DRAFT, 1, issueA);
  const remarked = addRemark(ticked, { stage: 1, at: [10, 20], text: 'why so near the edge?' }, issueA);
  expect(isOfOtherPlan(remarked, issueB)).toBe(true);
  expect(toggleCheck(remarked, 2, issueB)).toBe(remarked);
  expect(addRemark(remarked, { stage: 2, text: 'more' }, issueB)).toBe(remarked);
  const again = startOver(remarked, issueB);
  expect(again).toMatchObject({ checked: [], planText: issueB });
  expect(again.remarks).toEqual(remarked.remarks);
  expect(removeRemark(again, 0).remarks).toEqual([]);
});

it('nothing is of another plan before the first mark, or while there is no plan', () => {
  expect(isOfOtherPlan(EMPTY_DRAFT, issueA)).toBe(false);
  expect(isOfOtherPlan(toggleCheck(EMPTY_DRAFT, 1, issueA), undefined)).toBe(false);
});

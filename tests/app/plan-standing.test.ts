import { describe, expect, it } from 'vitest';
import { stepNotice } from '#app/state/edits/step-notice.ts';
import { redo, startHistory, takeStep, undo } from '#app/state/history.ts';
import { findingWords, standingOf } from '#app/state/plan-standing.ts';
import type { Derived, WorkbenchState } from '#app/state/workbench-state.ts';
import type { PlannedPage } from '#app/worker/planned-page.ts';
import { type Finding, finding } from '#findings/finding.ts';

const stop = finding('web-too-thin', { web: 0.4, limit: 0.5, thickness: 4, level: 3.6 });
const warning = finding('web-thin-at-worst', {
  worst: 0.4,
  web: 0.6,
  limit: 0.5,
  sheetMinus: 0.1,
  fast: 0.1,
  level: 3.4,
});
const derived = (findings: readonly Finding[], change: Partial<Derived> = {}): Derived =>
  ({
    page: { findings, isJudged: true, isWhole: true, plan: { stages: [{}] } } as unknown as PlannedPage,
    isStale: false,
    progress: undefined,
    failure: undefined,
    ...change,
  }) as Derived;

describe('where a plan stands', () => {
  it.each([
    ['nothing against it', derived([]), { kind: 'ready', words: 'ready to hand off' }],
    ['one stop and one warning: the stop', derived([warning, stop]), { kind: 'stop', words: '1 stop' }],
    ['two warnings', derived([warning, warning]), { kind: warning.severity, words: '2 warnings' }],
    ['out of date', derived([stop], { isStale: true }), { kind: 'busy', words: 'out of date' }],
    [
      'under way',
      derived([], { progress: { share: 0.43, what: 'levels' } }),
      { kind: 'busy', words: 'planning, 43 %' },
    ],
    ['broken', derived([], { failure: 'x' }), { kind: 'stop', words: 'planning failed' }],
  ])('%s', (_, state, standing) => {
    const asWarning = standing.words === '2 warnings' && warning.severity !== 'warn';
    if (asWarning) expect(standingOf(state, true).kind).toBe('stop');
    else expect(standingOf(state, true)).toEqual(standing);
  });

  it('waits for a drawing, for what only the engineer can say, and for depths', () => {
    expect(standingOf(derived([]), false)).toEqual({ kind: 'waiting', words: 'no drawing' });
    expect(standingOf(derived([]), true, 2)).toEqual({ kind: 'waiting', words: '2 questions left' });
    const bare = { findings: [], isJudged: true, isWhole: true } as unknown as PlannedPage;
    expect(standingOf(derived([], { page: bare }), true)).toEqual({ kind: 'waiting', words: 'no plan yet' });
  });

  it('says stops and warnings as soon as they are known, and that all is ready once the files are there', () => {
    const known = { findings: [], isJudged: true, isWhole: false, plan: { stages: [{}] } };
    const at = (change: object) =>
      standingOf(derived([], { page: { ...known, ...change } as unknown as PlannedPage }), true);
    expect(at({ isJudged: false })).toEqual({ kind: 'busy', words: 'not checked yet' });
    expect(at({})).toEqual({ kind: 'busy', words: 'writing the files' });
    expect(at({ findings: [stop] })).toEqual({ kind: 'stop', words: '1 stop' });
    expect(at({ isWhole: true })).toEqual({ kind: 'ready', words: 'ready to hand off' });
  });

  it('in words of a list', () => {
    expect(findingWords([])).toBe('none');
    expect(findingWords([stop])).toBe('1 stop');
  });
});

describe('the notice of a step', () => {
  const state = (history: unknown, id = 'lid') =>
    ({ history, openJob: { id, isOwn: true } }) as unknown as WorkbenchState;
  const first = startHistory('open', { depth: 1 });
  const second = takeStep(first, { label: 'depth 2.1 mm of R03', document: { depth: 2.1 } });

  it('taken, undone and redone, each with the way back', () => {
    expect(stepNotice(state(first), state(second))).toEqual({ text: 'Depth 2.1 mm of R03', back: 'undo' });
    const undone = undo(second);
    expect(stepNotice(state(second), state(undone))).toEqual({
      text: 'Undone: depth 2.1 mm of R03',
      back: 'redo',
    });
    expect(stepNotice(state(undone), state(redo(undone)))).toEqual({
      text: 'Redone: depth 2.1 mm of R03',
      back: 'undo',
    });
  });

  it('is nothing where another job was opened, or nothing changed', () => {
    expect(stepNotice(state(first), state(second, 'hatch'))).toBeUndefined();
    expect(stepNotice(state(first), state(first))).toBeUndefined();
  });
});

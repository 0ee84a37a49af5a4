import { describe, expect, it } from 'vitest';
import { closeGroup, redo, startHistory, takeStep, undo } from '#app/state/history.ts';

const step = (document: string, group?: string) => ({
  label: `to ${document}`,
  document,
  ...(group === undefined ? {} : { group }),
});

describe('undo and redo', () => {
  it('goes back to the very first document and forward to the last', () => {
    const start = startHistory('open', 'a');
    const end = ['b', 'c', 'd'].reduce((history, each) => takeStep(history, step(each)), start);
    const back = undo(undo(undo(undo(end))));
    expect(back.present.document).toBe('a');
    expect(redo(redo(redo(redo(back)))).present).toEqual(end.present);
  });

  it('takes a drag of many moves as one step', () => {
    const dragged = ['2.1', '2.2', '2.3'].reduce(
      (history, each) => takeStep(history, step(each, 'drag')),
      startHistory('open', '2.0'),
    );
    expect(undo(dragged).present.document).toBe('2.0');
  });

  it('takes two drags of the same level as two steps', () => {
    const first = closeGroup(takeStep(startHistory('open', '2.0'), step('2.1', 'drag')));
    expect(undo(takeStep(first, step('2.2', 'drag'))).present.document).toBe('2.1');
  });

  it('does not join a new drag to one that was undone and redone', () => {
    const dragged = takeStep(startHistory('open', '2.0'), step('2.1', 'drag'));
    expect(undo(takeStep(redo(undo(dragged)), step('2.2', 'drag'))).present.document).toBe('2.1');
  });

  it('forgets what was undone once something else is done', () => {
    const other = takeStep(undo(takeStep(startHistory('open', 'a'), step('b'))), step('c'));
    expect(redo(other)).toBe(other);
    expect(undo(other).present.document).toBe('a');
  });

  it('takes no step when nothing changed', () => {
    const start = startHistory('open', 'a');
    expect(takeStep(start, step('a'))).toBe(start);
  });
});

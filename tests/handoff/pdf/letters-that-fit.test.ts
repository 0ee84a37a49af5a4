/** Headings and cells for names of any length; the pen here gives every letter half its size. */
import { expect, test } from 'vitest';
import { type FlowLook, flowText } from '#handoff/pdf/flow-text.ts';
import type { Pen } from '#handoff/pdf/pen.ts';
import { shortened } from '#handoff/pdf/shortened.ts';

/** Counts the letters that it is asked to measure. */
function countingPen(): { readonly pen: Pen; readonly measured: () => number } {
  let letters = 0;
  const textWidth: Pen['textWidth'] = (text, { size }) => {
    letters += text.length;
    return Array.from(text).length * size * 0.5;
  };
  return { pen: { textWidth } as Pen, measured: () => letters };
}

const { pen } = countingPen();

/** What stands on each line, from above. */
function linesOf(measuring: Pen, text: string, look: FlowLook): string[] {
  const lines = new Map<number, string[]>();
  const write: Pen['text'] = (word, { y }) => lines.set(y, [...(lines.get(y) ?? []), word]);
  flowText(measuring, text, look).draw({ ...measuring, text: write }, { x: 0, y: 0 });
  return [...lines.values()].map((words) => words.join(' '));
}

test('a name that has room stands as it is, one that has none keeps as many letters as fit before the dots', () => {
  expect(shortened(pen, 'Deck hatch', { width: 20, size: 4 })).toBe('Deck hatch');
  expect(shortened(pen, 'Deck hatch', { width: 19.9, size: 4 })).toBe('Deck hat…');
  expect(shortened(pen, 'Deck hatch', { width: 1, size: 4 })).toBe('D…');
  expect(shortened(pen, '𝔇𝔢𝔠𝔨 𝔥𝔞𝔱𝔠𝔥', { width: 10, size: 4 })).toBe('𝔇𝔢𝔠𝔨…');
});

test('a long word is broken to full lines, nothing lost', () => {
  const word = 'Gauge-pod-cover-of-the-third-drifter';
  const lines = linesOf(pen, `The ${word} stands`, { width: 20, size: 4 });
  expect(lines).toEqual(['The', 'Gauge-pod-', 'cover-of-t', 'he-third-d', 'rifter', 'stands']);
  // Letters of two units of text are never parted.
  expect(linesOf(pen, '𝔇𝔢𝔠𝔨𝔥', { width: 8, size: 4 })).toEqual(['𝔇𝔢𝔠𝔨', '𝔥']);
});

test('a name of a million letters costs the measuring of a few lines, as a heading and for each line of a cell', () => {
  const heading = countingPen();
  shortened(heading.pen, 'n'.repeat(1e6), { width: 120, size: 4 });
  expect(heading.measured()).toBeLessThan(5000);
  const cell = countingPen();
  const lines = linesOf(cell.pen, 'n'.repeat(1e5), { width: 58, size: 2.9 });
  expect(lines).toHaveLength(2500);
  expect(cell.measured() / lines.length).toBeLessThan(2000);
});

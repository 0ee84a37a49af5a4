/** A sheet of 3.2 mm with figures in its regions; what is left and what is deep are each other's difference to 3.2. */
import { describe, expect, it } from 'vitest';
import { figureRows, figureSummary } from '#app/state/edits/figure-choice.ts';
import { readRows } from '#app/state/edits/read-rows.ts';
import { depthNotes } from '#part/depth-notes.ts';

const texts = ['2.80', 'T=2.30', '0.3', '1.55', '1.65'];
/** Two figures stand in the fourth region. */
const regionAt = ({ x }: { x: number }) => `R0${Math.min(4, 1 + Math.floor(x / 10))}`;
const offers = depthNotes(
  texts.map((text, index) => ({ text, at: { x: 10 * index + 3, y: 4 } })),
  regionAt,
  { unit: 'mm', prefix: '' },
);
const rows = figureRows(offers, { thickness: 3.2, minWeb: 0.5 });

describe('what figures mean', () => {
  it('shows each with its other reading, and leaves regions out whose figures differ', () => {
    expect(rows.map(({ region, text, said }) => [region, text, said])).toEqual([
      ['R01', '2.80', undefined],
      ['R02', 'T=2.30', 'thickness'],
      ['R03', '0.3', undefined],
    ]);
    expect(rows.map(({ other }) => Number(other.toFixed(6)))).toEqual([0.4, 0.9, 2.9]);
  });

  it('shows what each choice comes to, and which regions would be too thin', () => {
    const open = rows.filter(({ said }) => said === undefined);
    const left = figureSummary(open, 'thickness');
    expect(left).toMatchObject({ count: 2, stopped: ['R03'] });
    expect([left.least, left.most].map((each) => Number(each.toFixed(6)))).toEqual([0.4, 2.9]);
    // 3.2 less 2.8 leaves 0.4, under 0.5.
    expect(figureSummary(open, 'depth').stopped).toEqual(['R01']);
  });
});

describe('places typed as a list', () => {
  it.each([
    [
      '12.5 40; 300 -40',
      [
        [12.5, 40],
        [300, -40],
      ],
    ],
    ['', []],
    ['12 40 3', undefined],
    ['12', undefined],
    ['12 x', undefined],
  ])('%s', (text, places) => expect(readRows(text, 2)).toEqual(places));
});

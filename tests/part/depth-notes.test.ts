import { describe, expect, it } from 'vitest';
import { depthNotes, readDepthNote, unitOfNotes, unreadNotes } from '#part/depth-notes.ts';

const plain = { unit: 'mm', prefix: '' } as const;

describe('a text that reads like a depth', () => {
  it.each([
    ['2.20', { asks: 'depth', isSaid: false, length: 2.2 }],
    ['2,2', { asks: 'depth', isSaid: false, length: 2.2 }],
    ['.087in', { asks: 'depth', isSaid: false, length: 2.2098 }],
    ['3/32"', { asks: 'depth', isSaid: false, length: 2.38125 }],
    ['2.20 ±0.1', { asks: 'depth', isSaid: false, length: 2.2, plus: 0.1, minus: 0.1 }],
    ['2.20 +0.1 -0.05', { asks: 'depth', isSaid: false, length: 2.2, plus: 0.1, minus: 0.05 }],
    ['2.20 +0.1/−0', { asks: 'depth', isSaid: false, length: 2.2, plus: 0.1, minus: 0 }],
    ['t 1.6', { asks: 'thickness', isSaid: true, length: 1.6 }],
    ['T=1,6 ± 0,08', { asks: 'thickness', isSaid: true, length: 1.6, plus: 0.08, minus: 0.08 }],
    ['t.063 in', { asks: 'thickness', isSaid: true, length: 1.6002 }],
    ['T=.063"', { asks: 'thickness', isSaid: true, length: 1.6002 }],
    ['1.6 THK', { asks: 'thickness', isSaid: true, length: 1.6 }],
    ['1.7 remaining', { asks: 'thickness', isSaid: true, length: 1.7 }],
    ['2.0 DEEP', { asks: 'depth', isSaid: true, length: 2 }],
    ['Depth = 2.1 ±0.05', { asks: 'depth', isSaid: true, length: 2.1, plus: 0.05, minus: 0.05 }],
    // 0.063 in is 1.6002 mm: the two are one length, whatever the drawing's unit.
    ['1.6 (.063)', { asks: 'depth', isSaid: false, length: 1.6 }],
    ['.063 [1.6]', { asks: 'depth', isSaid: false, length: 1.6002 }],
    ['2X 1.2', { asks: 'depth', isSaid: false, length: 1.2 }],
    ['(4X) t 1.6', { asks: 'thickness', isSaid: true, length: 1.6 }],
    ['1.6 TYP', { asks: 'depth', isSaid: false, length: 1.6 }],
    ['.063 in TYPICAL', { asks: 'depth', isSaid: false, length: 1.6002 }],
    ['1.6 THK, TYP.', { asks: 'thickness', isSaid: true, length: 1.6 }],
    ['2.0 DEEP (4) PL', { asks: 'depth', isSaid: true, length: 2 }],
    ['2.20 ±0.1 3 PLACES TYP', { asks: 'depth', isSaid: false, length: 2.2, plus: 0.1, minus: 0.1 }],
    ['T=.063 (1.60)', { asks: 'thickness', isSaid: true, length: 1.6002 }],
  ])('%s', (text, note) => {
    expect(readDepthNote(text, plain)).toEqual(note);
  });

  it.each([
    'R3',
    'Ø5',
    'R3 TYP',
    '2X R3',
    '4X Ø5',
    '4x1.2',
    '4 x 1.2',
    '3 PLACES',
    '(4) PL',
    '4 PL TYP',
    '2X',
    'TYP',
    '1.6 TYPE',
    '1.6 TYP B',
    '2X 45° ',
    '1.2 x 3 TYP',
    '1.6 ON 4 PLACES',
    'SECTION A',
    '-2.2',
    '0',
    '',
    'trim 2',
    '2.2 ±',
    '2.2 + 0.1',
    '1.2 x 3',
    '2026-05-31',
    '1.6 (2)',
    '2.0 DEEPER',
    'LEFT',
  ])('and one that does not: %s', (text) => {
    expect(readDepthNote(text, plain)).toBeUndefined();
  });

  it('is taken with the prefix of its drawing only, where there is one; a thickness wears its t', () => {
    const marked = { unit: 'mm', prefix: 'etch' } as const;
    expect(readDepthNote('ETCH 2.20', marked)).toEqual({ asks: 'depth', isSaid: true, length: 2.2 });
    expect(readDepthNote('Etch=2.20', marked)).toEqual({ asks: 'depth', isSaid: true, length: 2.2 });
    expect(readDepthNote('2.20', marked)).toBeUndefined();
    expect(readDepthNote('t 1.6', marked)).toEqual({ asks: 'thickness', isSaid: true, length: 1.6 });
  });

  it('is in the unit of the notes, 0.1 in being 2.54 mm, and never as much as the sheet', () => {
    expect(readDepthNote('.1', { ...plain, unit: 'in' })).toEqual({
      asks: 'depth',
      isSaid: false,
      length: 2.54,
    });
    expect(readDepthNote('254', { ...plain, thickness: 4 })).toBeUndefined();
    expect(readDepthNote('4', { ...plain, thickness: 4 })).toBeUndefined();
    expect(unitOfNotes('ft')).toBe('in');
    expect(unitOfNotes('m')).toBe('mm');
  });
});

describe('depth notes of a drawing', () => {
  /** Three regions side by side, each 10 wide. */
  const regionAt = ({ x }: { x: number }) => (x < 0 || x >= 30 ? undefined : `R0${1 + Math.floor(x / 10)}`);
  const note = (text: string, x: number) => ({ text, at: { x, y: 5 } });

  it('are offered by region, once each, and not where they stand beside the part or say something else', () => {
    const offers = depthNotes(
      [note('1.2', 15), note('2.2', 5), note('2.20', 6), note('R3', 7), note('3.0', -4)],
      regionAt,
      plain,
    );
    expect(offers.map(({ region, length, text }) => [region, length, text])).toEqual([
      ['R01', 2.2, '2.2'],
      ['R02', 1.2, '1.2'],
    ]);
    expect(offers.every(({ isDisputed }) => !isDisputed)).toBe(true);
  });

  it('that differ within a region are both offered, as disputed', () => {
    const offers = depthNotes([note('1.2', 15), note('t 1.2', 16)], regionAt, plain);
    expect(offers.map(({ asks, isDisputed }) => [asks, isDisputed])).toEqual([
      ['depth', true],
      ['thickness', true],
    ]);
  });
});

describe('a text with a figure that reads like no depth', () => {
  const regionAt = ({ x }: { x: number }) => (x < 0 ? undefined : `R0${Math.floor(x / 10) + 1}`);

  it('is named with its region, unless a depth was read there or it stands in none', () => {
    const notes = [
      { text: ' TAPER .063 TO .032 ', at: { x: 24, y: 3 } },
      { text: 'T=.040', at: { x: 7, y: 3 } },
      { text: 'R.25 TYP', at: { x: 3, y: 8 } },
      { text: 'SCALE 1:1', at: { x: -40, y: 8 } },
      { text: 'FLUSH', at: { x: 16, y: 8 } },
    ];
    expect(unreadNotes(notes, regionAt, { ...plain, unit: 'in' })).toEqual([
      { region: 'R03', text: 'TAPER .063 TO .032' },
    ]);
  });
});

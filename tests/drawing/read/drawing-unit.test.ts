/** The unit of a drawing: who sets it, and when it is doubted. */
import { describe, expect, test } from 'vitest';
import { doubtUnit, settleUnit } from '#drawing/read/drawing-unit.ts';
import type { DrawingHeader } from '#drawing/read/read-header.ts';
import type { LengthUnit } from '#units/length-unit.ts';

const headerOf = (insunits: string | undefined, measurement?: string) =>
  ({ insunits, measurement }) as DrawingHeader;

describe('whose it is', () => {
  test('the drawing’s own unless it is set', () => {
    expect(settleUnit(headerOf(' 1 '), undefined)).toEqual({
      unit: 'in',
      stated: 'in',
      unknown: undefined,
      millimetres: 25.4,
      isSet: false,
    });
    expect(settleUnit(headerOf('1'), 'cm')).toEqual({
      unit: 'cm',
      stated: 'in',
      unknown: undefined,
      millimetres: 10,
      isSet: true,
    });
  });

  test('none where nothing or 0 is written, and a value that names none is kept for the report', () => {
    for (const written of [undefined, '', ' ', '0']) {
      expect(settleUnit(headerOf(written), undefined)).toMatchObject({
        unit: undefined,
        unknown: undefined,
        millimetres: 1,
      });
    }
    expect(settleUnit(headerOf('99'), undefined)).toMatchObject({ unit: undefined, unknown: '99' });
    expect(settleUnit(headerOf('millimetres and so on and on'), undefined).unknown).toBe(
      'millimetres and so o',
    );
  });
});

describe('what is said about it', () => {
  const said = (
    written: string | undefined,
    [width, height]: readonly [number, number],
    { set, measurement }: { readonly set?: LengthUnit; readonly measurement?: string } = {},
  ) => {
    const header = headerOf(written, measurement);
    return doubtUnit(header, settleUnit(header, set), { width, height }).map(({ code, facts }) => ({
      code,
      facts,
    }));
  };

  test('(drawing-unit-missing) with the units in which 24 by 70 is a part', () => {
    expect(said(undefined, [24, 70])).toEqual([
      {
        code: 'drawing-unit-missing',
        facts: { sides: { width: 24, height: 70 }, likely: ['mm', 'in', 'cm'] },
      },
    ]);
    // 19 is too small in millimetres; 25 m too large in metres.
    expect(said(undefined, [19, 7])).toMatchObject([{ facts: { likely: ['in', 'cm', 'm', 'ft'] } }]);
    expect(said(undefined, [25, 7])).toMatchObject([{ facts: { likely: ['mm', 'in', 'cm', 'ft'] } }]);
    expect(said(undefined, [0.001, 0.002])).toMatchObject([{ facts: { likely: ['mm', 'in'] } }]);
    expect(doubtUnit(headerOf('0'), settleUnit(headerOf('0'), undefined), undefined)).toMatchObject([
      { facts: { sides: undefined, likely: ['mm', 'in'] } },
    ]);
  });

  test('(drawing-unit-unknown) with the value', () => {
    expect(said('77', [24, 70])).toMatchObject([{ code: 'drawing-unit-unknown', facts: { value: '77' } }]);
  });

  test('(drawing-unit-overridden) where the job sets another, and nothing where it sets the same or the first', () => {
    expect(said('1', [24, 70], { set: 'mm' })).toEqual([
      { code: 'drawing-unit-overridden', facts: { stated: 'in', used: 'mm' } },
    ]);
    expect(said('4', [24, 70], { set: 'mm' })).toEqual([]);
    expect(said('0', [24, 70], { set: 'mm' })).toEqual([]);
  });

  test('(drawing-size-unlikely) over 50 m and under 1 mm, by the longer side in the drawing’s own unit', () => {
    expect(said('1', [508, 50_800])).toEqual([
      {
        code: 'drawing-size-unlikely',
        facts: { stated: 'in', sides: { width: 20, height: 2000 }, likely: ['mm', 'cm'] },
      },
    ]);
    expect(said('4', [0.3, 0.9])).toMatchObject([{ code: 'drawing-size-unlikely' }]);
    expect(said('4', [49_900, 1])).toEqual([]);
    expect(said('4', [0.3, 1.1])).toEqual([]);
    expect(said('4', [0, 0])).toEqual([]);
  });

  test('(drawing-unit-doubtful) inches in a drawing set up metric, not the other way round', () => {
    expect(said('1', [254, 127], { measurement: ' 1' })).toEqual([
      { code: 'drawing-unit-doubtful', facts: { stated: 'in', size: 10 } },
    ]);
    expect(said('1', [254, 127], { measurement: '0' })).toEqual([]);
    expect(said('1', [254, 127])).toEqual([]);
    expect(said('4', [254, 127], { measurement: '0' })).toEqual([]);
    expect(said('4', [254, 127], { measurement: '1' })).toEqual([]);
  });
});

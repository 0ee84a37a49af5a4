/** The readings of a run as they are written down: what is read of each row, and which fault is reported of one that can't be. */
import { describe, expect, test } from 'vitest';
import { readReadings } from '#run/correct-readings.ts';

const read = (...lines: readonly string[]) => readReadings(lines.join('\n'));
/** One row under a header, or the column and figure at fault. */
function row(header: string, cells: string) {
  const { rows, findings } = read(header, cells);
  const [finding] = findings;
  if (finding === undefined) return rows[0];
  const { column, found } = finding.facts as { column?: string; found?: string };
  return [finding.code, column, found];
}
const FAULT = 'reading-unclear';

describe('what a row says', () => {
  test('every column, in any order and with blanks, the note last with its commas', () => {
    expect(
      row(
        'Thickness , STAGE,minutes,x,y,unit,who,when,gauge,note',
        ' 0.0925 ,2, 31.5,-4.25,+7e1,IN,M. K.,13:52,U-7, wet, wiped , again ',
      ),
    ).toEqual({
      line: 2,
      thickness: 0.0925,
      stage: 2,
      minutes: 31.5,
      x: -4.25,
      y: 70,
      unit: 'in',
      who: 'M. K.',
      when: '13:52',
      gauge: 'U-7',
      note: 'wet, wiped , again',
    });
  });

  test('columns of inspection points that say what should be read are passed over', () => {
    const header = 'point,kind,stage,region,nominal,plus,minus,least,most,read,depth';
    expect(row(header, 'P003,thickness,1,R02,1.6,0.1,0.05,1.55,1.7,1.63,0.81')).toEqual({
      line: 2,
      stage: 1,
      region: 'R02',
      depth: 0.81,
    });
  });

  test('of a form the rows for edges, lands and fillets say nothing of a depth', () => {
    const { rows, findings } = read(
      'kind,stage,region,depth',
      'edge,1,R01,0.3',
      'fillet,1,R01,',
      ' thickness ,1,R02,0.5',
      ',1,R03,0.7',
    );
    expect(rows.map(({ region }) => region)).toEqual(['R02', 'R03']);
    expect(findings).toEqual([]);
  });

  test('lines that are empty or begin with # count as lines of the file, and say nothing', () => {
    const { rows } = readReadings(
      '\uFEFF# run 7\r\n\r\nstage,region,depth\r\n  # wiped\r\n1,R01,0.4\r2,R01,0.9\n',
    );
    expect(rows).toEqual([
      { line: 5, stage: 1, region: 'R01', depth: 0.4 },
      { line: 6, stage: 2, region: 'R01', depth: 0.9 },
    ]);
  });

  test('a row of minutes alone says how long a stage was', () => {
    expect(row('stage,minutes,region,depth', '2,17.5')).toEqual({ line: 2, stage: 2, minutes: 17.5 });
  });

  test('a depth or thickness may carry its unit, which must be that of its column', () => {
    const header = 'stage,region,depth,unit';
    for (const [cell, depth, unit] of [
      ['0.093in', 0.093, 'in'],
      ['0.093 IN', 0.093, 'in'],
      ['0.093"', 0.093, 'in'],
      ['2.35 mm', 2.35, 'mm'],
    ] as const) {
      expect(row(header, `1,R01,${cell},`)).toMatchObject({ depth, unit });
      expect(row(header, `1,R01,${cell},${unit}`)).toMatchObject({ depth, unit });
    }
    expect(row(header, '1,R01,2.35mm,in')).toEqual([FAULT, 'unit', 'in']);
    expect(row(header, '1,R01,2.35,thou')).toEqual([FAULT, 'unit', 'thou']);
    // Minutes have none.
    expect(row('stage,minutes,region,depth', '1,12mm,R01,2.35')).toEqual([FAULT, 'minutes', '12mm']);
  });
});

describe('readings-header-unclear', () => {
  const names = (header: string) =>
    read(header, '1,R01,0.4').findings.map(({ code, facts, place }) => {
      const { name, meant } = facts as { name: string; meant: string | undefined };
      return [code, name, meant, place.line];
    });
  const CODE = 'readings-header-unclear';

  test('a column that is none, with the one that was meant; a column twice', () => {
    expect(names('stage,regoin,depth')).toEqual([[CODE, 'regoin', 'region', 1]]);
    expect(names('# by hand\nstage,region,depth,stage')).toEqual([[CODE, 'stage', 'stage', 2]]);
    expect(names('stage,region,depth,wobble')).toEqual([[CODE, 'wobble', undefined, 1]]);
  });

  test('stage, a place and a figure must be among them', () => {
    const lacks = [[CODE, '', undefined, 1]];
    for (const header of [
      'region,depth',
      'stage,depth',
      'stage,x,depth',
      'stage,y,depth',
      'stage,region',
      'stage,x,y,note',
    ])
      expect(names(header), header).toEqual(lacks);
    for (const header of ['stage,region,depth', 'stage,x,y,thickness', 'stage,region,thickness,depth'])
      expect(readReadings(header).findings, header).toEqual([]);
    expect(names('')).toEqual([
      [CODE, '1', undefined, 2],
      [CODE, 'r01', undefined, 2],
      [CODE, '0.4', undefined, 2],
    ]);
    expect(readReadings('').findings.map(({ code, place }) => [code, place.line])).toEqual([[CODE, 1]]);
  });

  test('no row is read then', () => {
    expect(read('stage,regoin,depth', '1,R01,0.4').rows).toEqual([]);
  });
});

describe('reading-unclear', () => {
  const HEADER = 'stage,minutes,region,x,y,depth,thickness';

  test('figures: no number, negative, larger than any, smaller than any but zero', () => {
    for (const [cells, column, found] of [
      ['1,,R01,,,abc,', 'depth', 'abc'],
      ['1,,R01,,,0x1,', 'depth', '0x1'],
      ['1,,R01,,,1.2.3,', 'depth', '1.2.3'],
      ['1,,R01,,,5 4,', 'depth', '5 4'],
      ['1,,R01,,,-0.2,', 'depth', '-0.2'],
      ['1,,R01,,,,1e8', 'thickness', '1e8'],
      ['1,10000001,R01,,,0.4,', 'minutes', '10000001'],
      ['1,1e-10,R01,,,0.4,', 'minutes', '1e-10'],
      ['1,-3,R01,,,0.4,', 'minutes', '-3'],
      ['1.5,,R01,,,0.4,', 'stage', '1.5'],
      ['-1,,R01,,,0.4,', 'stage', '-1'],
      ['1,,,1e40,2,0.4,', 'x', '1e40'],
      ['1,,,3,left,0.4,', 'y', 'left'],
      [',,R01,,,0.4,', 'stage', 'nothing'],
      ['1,,,,,0.4,', 'region', 'nothing'],
      ['1,,,3,,0.4,', 'region', 'nothing'],
      ['1,,,,3,0.4,', 'region', 'nothing'],
      ['1,,,,,,', 'minutes', 'nothing'],
      ['1,,R01,,,0.4,2.1', 'thickness', 'a depth as well'],
      ['1,12,R01,,,0,4,', 'row', '8 cells'],
    ] as const)
      expect(row(HEADER, cells), cells).toEqual([FAULT, column, found]);
  });

  test('figures at the limits are right: zero, ten million, a place left of the axis', () => {
    for (const [cells, figures] of [
      ['0,0,R01,,,0,', { stage: 0, minutes: 0, depth: 0 }],
      ['1,1e7,R01,,,0.4,', { minutes: 1e7 }],
      ['1,1E-9,R01,,,0.4,', { minutes: 1e-9 }],
      ['1,,,-3e3,-2.5,0.4,', { x: -3000, y: -2.5 }],
      ['1,,,1e-12,0,0.4,', { x: 1e-12, y: 0 }],
    ] as const)
      expect(row(HEADER, cells), cells).toMatchObject(figures);
  });

  test('a cell too many is a decimal comma, but behind a note', () => {
    expect(row('stage,region,depth', '1,R01,0,42')).toEqual([FAULT, 'row', '4 cells']);
    expect(row('stage,region,depth,note', '1,R01,0.42,deep, there')).toMatchObject({ note: 'deep, there' });
  });

  test('more than 5000 rows: the first 5000 are read, and how many there are is reported', () => {
    const rows = (count: number) =>
      read('stage,region,depth', ...Array.from({ length: count }, () => '1,R01,0.4'));
    expect([rows(5000).rows.length, rows(5000).findings]).toEqual([5000, []]);
    const more = rows(5001);
    expect(more.rows).toHaveLength(5000);
    expect(more.findings.map(({ facts }) => facts)).toMatchObject([{ column: 'rows', found: '5001' }]);
  });
});

describe('answers to readings', () => {
  const HEADER = 'stage,minutes,region,depth,thickness,strike,confirm,note';

  test('strike out or confirm one by its number, with the reason', () => {
    expect(row(HEADER, ',,,,,3,,gauge not set to zero')).toEqual({
      line: 2,
      stage: 0,
      strike: 3,
      note: 'gauge not set to zero',
    });
    expect(row(HEADER, '2,,,,,,4,gauged again')).toEqual({
      line: 2,
      stage: 2,
      confirm: 4,
      note: 'gauged again',
    });
  });

  test('reading-unclear: no whole number from 1, no reason, both at once, a figure beside it', () => {
    for (const [cells, column, found] of [
      [',,,,,0,,why', 'strike', '0'],
      [',,,,,1.5,,why', 'strike', '1.5'],
      [',,,,,,0,why', 'confirm', '0'],
      [',,,,,3,,', 'note', 'nothing'],
      [',,,,,,3,', 'note', 'nothing'],
      [',,,,,3,4,why', 'confirm', 'a strike as well'],
      [',12,,,,3,,why', 'strike', 'a reading as well'],
      [',,,0.4,,3,,why', 'strike', 'a reading as well'],
      [',,,,2.1,,3,why', 'confirm', 'a reading as well'],
    ] as const)
      expect(row(HEADER, cells), cells).toEqual([FAULT, column, found]);
  });
});

test('readings-blank: rows of a form with a place and no figure, however many are filled in', () => {
  const { rows, findings } = read(
    'stage,region,x,y,depth',
    '1,R01,,,',
    '1,R02,,,0.4',
    '2,,3,4,',
    '2,R02,,,0.9',
  );
  expect(rows.map(({ depth }) => depth)).toEqual([0.4, 0.9]);
  expect(findings.map(({ code, facts }) => [code, facts])).toEqual([
    ['readings-blank', { blank: 2, read: 2 }],
  ]);
});

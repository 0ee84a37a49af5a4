/** A run corrected from its files: plan.json, readings, record. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readRunPlan } from '#run/correct-plan.ts';
import { correctRun } from '#run/correct-run.ts';
import { readingsOfRecord } from '#run/readings-of-record.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';

let planText = '';
let regions: readonly { id: string; level: number; label: readonly [number, number] }[] = [];
let rate = 0;
let minutes = 0;

beforeAll(async () => {
  const { files, planFile } = await runJob({
    jobText: JSON.stringify(buoyLidJob),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
  planText = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
  regions = planFile?.regions ?? [];
  minutes = planFile?.stages[0]?.minutes ?? 0;
  rate = (planFile?.stages[0]?.etch ?? 0) / minutes;
});

function correct(readingsText: string, recordText?: string, plan = planText) {
  return correctRun({ planText: plan, readingsText, recordText });
}
function codes(readings: string, record?: string): string[] {
  return correct(readings, record).findings.map(({ code }) => code);
}
function deepest() {
  return regions.reduce((a, b) => (b.level > a.level ? b : a));
}
/** A reading on the deepest floor after four fifths of stage 1 at a rate so many times the planned one. */
function first(factor: number): string {
  const { label } = deepest();
  const depth = (0.8 * minutes * rate * factor).toFixed(4);
  return `1,${0.8 * minutes},${label[0]},${label[1]},${depth}`;
}
const HEAD = 'stage,minutes,x,y,depth';
const ANSWERED = `${HEAD},strike,confirm,note`;
const confirmed = (number: number) => `,,,,,,${number},gauged again, the same`;
const struck = (number: number) => `,,,,,${number},,gauge was not set to zero`;

describe('M7 a run from its files', () => {
  test('rate-outside-spread: a bath 12 % fast is found at a point, and later stages get 1 / 1.12 of their minutes', () => {
    const { corrected, findings } = correct(`# gauged by hand\n${HEAD}\n${first(1.12)}\n`);
    expect(findings.map(({ code }) => code)).toContain('rate-outside-spread');
    expect(corrected?.rate.value).toBeCloseTo(1.12 * rate, 5);
    const [, second] = corrected?.stages ?? [];
    expect(second?.left.value).toBeCloseTo((second?.planned ?? 0) / 1.12, 1);
  });
  test('depth-in-doubt: one reading early in the run leaves the rest open', () => {
    expect(codes(`${HEAD}\n${first(1)}`)).toContain('depth-in-doubt');
  });
  test('depth-out-of-reach: a floor etched twice as deep as asked is reported', () => {
    expect(codes(`${ANSWERED}\n${first(3.2)}\n${confirmed(1)}`)).toContain('depth-out-of-reach');
  });
  test('no-metal-taken: readings of no depth, or of a part thicker than its sheet, give no minutes and no record', () => {
    const { id } = deepest();
    for (const readings of [
      `stage,minutes,region,depth,confirm,note\n1,${minutes},${id},0\n,,,,1,twice`,
      `stage,minutes,region,thickness,confirm,note\n1,${minutes},${id},9\n,,,,1,twice`,
    ]) {
      const { findings, corrected, recordText } = correct(readings);
      expect(findings.map(({ code }) => code)).toEqual(['no-metal-taken']);
      expect([corrected, recordText]).toEqual([undefined, undefined]);
    }
  });
  test('M7.1 a floor gauged the moment it is peeled says nothing of the rate: the planned one stands', () => {
    const { id } = deepest();
    expect(correct(`stage,minutes,region,depth\n1,0,${id},0`).corrected?.next.value).toBeCloseTo(rate, 9);
  });
  test('M6.1 a measured sheet is believed at the mean of its readings, within their spread', async () => {
    const { files } = await runJob({
      jobText: JSON.stringify({
        ...buoyLidJob,
        stock: { thickness: 4, measured: [4.12, { at: [10, 10], thickness: 4.18 }] },
      }),
      drawingName: 'lid.dxf',
      drawingBytes: new TextEncoder().encode(buoyLidDrawing),
    });
    const read = readRunPlan(new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes));
    if ('refused' in read) throw new Error('the plan must read');
    expect(read.plan.sheet).toEqual({ thickness: expect.closeTo(4.15, 9), minus: 0.03, plus: 0.03 });
  });
  test('M7.1 walls lie where the etch factor of the plan’s own job puts them, be it a table', async () => {
    const etchFactor = [
      [0, 0.8],
      [2.5, 1.15],
    ];
    const { files } = await runJob({
      jobText: JSON.stringify({ ...buoyLidJob, process: { ...buoyLidJob.process, etchFactor } }),
      drawingName: 'lid.dxf',
      drawingBytes: new TextEncoder().encode(buoyLidDrawing),
    });
    const read = readRunPlan(new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes));
    if ('refused' in read) throw new Error('the plan must read');
    expect(read.near.front.etchFactor).toEqual(etchFactor);
    expect(read.plan.rate).toBe(0.0297);
  });
  test('sheet-not-gauged: on a tapered sheet a thickness gives a depth only beside one of stage 0', () => {
    const tapered = JSON.parse(planText);
    tapered.job.stock.thickness = { from: [0, 0], to: [100, 0], thicknessFrom: 5, thicknessTo: 4 };
    const { id } = deepest();
    const reported = (rows: readonly string[]) =>
      correct(['stage,minutes,region,thickness', ...rows].join('\n'), undefined, JSON.stringify(tapered));
    const after = `1,${minutes},${id},${4.6 - minutes * rate}`;
    expect(reported([after]).findings.map(({ code }) => code)).toEqual(['sheet-not-gauged']);
    expect(reported([`0,,${id},4.6`, after]).corrected?.rate.value).toBeCloseTo(rate, 4);
  });
  test('readings-disagree: a slip of the pen among repeats', () => {
    const good = first(1);
    const slip = good.replace(/[^,]*$/, (depth) => String(Number(depth) + 0.3));
    const rows = [ANSWERED, ...Array.from({ length: 40 }, () => good), slip];
    expect(codes(rows.join('\n'))).toContain('reading-in-question');
    expect(codes([...rows, confirmed(41)].join('\n'))).toContain('readings-disagree');
  });
  test('reading-off-floor: on land, before the peel, and on a wall', () => {
    const land = regions.find(({ level }) => level === 0)?.id;
    const later = regions.find(({ level }) => level > 0 && level < deepest().level)?.id;
    expect(codes(`stage,region,depth\n1,${land},0.1`)).toEqual(expect.arrayContaining(['reading-off-floor']));
    expect(codes(`stage,region,depth\n1,${later},0.1`)).toEqual(
      expect.arrayContaining(['reading-off-floor']),
    );
    expect(codes(`${HEAD}\n1,5,45.2,60,0.1`)).toEqual(expect.arrayContaining(['reading-off-floor']));
  });
  test('readings-header-unclear, reading-unclear: each fault by its line', () => {
    expect(codes('stage,deph\n')).toEqual(['readings-header-unclear']);
    expect(codes('stage,depth\n1,2')).toEqual(['readings-header-unclear']);
    const faults = correct('stage,region,depth\nx,R01,1\n1,,1\n1,R01,2,5\n').findings;
    expect(faults.map(({ code, place }) => [code, place.line])).toEqual(
      [2, 3, 4].map((line) => ['reading-unclear', line]),
    );
    expect(codes('stage,region,depth\n1,R99,1')).toEqual(['reading-unclear']);
  });
  test('reading-unclear: minutes and depths so small that their squares are zero', () => {
    for (const tiny of ['1e-300', '1e-160', '0.0000000001'])
      expect(codes(`stage,minutes,region,depth\n1,${tiny},R01,0.8`)).toEqual(['reading-unclear']);
    expect(codes('stage,minutes,region,depth\n1,1e-9,R01,0.8')).not.toContain('reading-unclear');
  });
  test('plan-file-unusable: another file, or a plan without stages', () => {
    const waxed = JSON.stringify({ ...JSON.parse(planText), masking: 'wax' });
    for (const text of ['', 'null', '{}', '{"format":"isobath-plan","version":1}', waxed]) {
      expect(correct(HEAD, undefined, text).findings.map(({ code }) => code)).toEqual(['plan-file-unusable']);
    }
  });

  test('plan-file-unusable: the place of the fault and what stands there in a plan are named', () => {
    const plan = () => JSON.parse(planText);
    const faults: [unknown, string, RegExp][] = [
      [{ ...plan(), format: 'isobath-job' }, 'format', /"isobath-plan"/],
      [{ ...plan(), stages: [] }, 'stages', /at least one/],
      [{ ...plan(), masking: 'wax' }, 'masking', /"peel-next" or "re-mask"/],
      [
        { ...plan(), regions: plan().regions.with(1, { ...plan().regions[1], level: '2' }) },
        'regions[1].level',
        /a number/,
      ],
      [{ ...plan(), job: { ...plan().job, process: {} } }, 'job', /etch factor and a rate/],
    ];
    for (const [file, path, expected] of faults) {
      const [fault] = correct(HEAD, undefined, JSON.stringify(file)).findings;
      expect(fault?.facts).toMatchObject({ path, expected: expect.stringMatching(expected) });
    }
  });

  test('a plan file that says no way of masking is one of one coat: it was written when there was no other', () => {
    const { masking, ...older } = JSON.parse(planText);
    expect(masking).toBe('peel-next');
    const readings = `${HEAD}\n${first(1.12)}\n`;
    const { corrected } = correct(readings, undefined, JSON.stringify(older));
    expect(corrected?.rate.value).toBeCloseTo(1.12 * rate, 5);
    expect(corrected).toEqual(correct(readings).corrected);
  });
});

describe('M7 a run masked again for each stage, from its files', () => {
  let plan = '';
  let stages: readonly { level: number; minutes: number }[] = [];
  let floors: readonly { id: string; level: number; label: readonly [number, number] }[] = [];
  beforeAll(async () => {
    const { files, planFile } = await runJob({
      jobText: JSON.stringify({ ...buoyLidJob, process: { ...buoyLidJob.process, masking: 're-mask' } }),
      drawingName: 'lid.dxf',
      drawingBytes: new TextEncoder().encode(buoyLidDrawing),
    });
    plan = new TextDecoder().decode(files.find(({ name }) => name === 'plan.json')?.bytes);
    stages = planFile?.stages ?? [];
    floors = (planFile?.regions ?? []).filter(({ level }) => level > 0).sort((a, b) => a.level - b.level);
  });
  const reported = (rows: readonly string[]) => correct([HEAD, ...rows].join('\n'), undefined, plan);
  const row = (stage: number, floor: number, depth: number) =>
    `${stage},${stages[stage - 1]?.minutes},${floors.at(floor)?.label.join(',')},${depth}`;

  test('every floor is gauged at its point from stage 1 on, and a floor coated over stays what it was', () => {
    const [first = 0] = stages.map(({ level }) => level);
    const { corrected, findings } = reported([row(1, 0, first), row(1, -1, first), row(2, 0, first)]);
    expect(findings.map(({ code }) => code)).not.toContain('reading-off-floor');
    expect(corrected?.stages[0]?.left.value).toBe(0);
    expect(corrected?.regions.find(({ id }) => id === floors[0]?.id)?.depth.value).toBeCloseTo(first, 4);
  });
  test('depth-out-of-reach: floors too deep in stage 1 can no longer be met once stage 2 is peeled', () => {
    const [first = 0] = stages.map(({ level }) => level);
    const { corrected, findings } = correct(
      [ANSWERED, row(1, 0, first + 0.5), '2,0,,,', confirmed(1)].join('\n'),
      undefined,
      plan,
    );
    const lost = findings.filter(({ code }) => code === 'depth-out-of-reach');
    const shallow = floors.filter(({ level }) => level === first);
    expect(lost.flatMap(({ place }) => place.regions)).toEqual(shallow.map(({ id }) => id));
    expect(corrected?.regions.map(({ verdict }) => verdict === 'out of reach')).toEqual(
      corrected?.regions.map(({ id }) => shallow.some((floor) => floor.id === id)),
    );
    // 2.4 − 1.7 mm at 1.7 / 1.2 of the planned rate.
    expect(corrected?.stages[1]?.left.value).toBeCloseTo((0.7 / rate) * (1.2 / 1.7), 3);
  });
  test('reading-off-floor: a depth before the first dip', () => {
    const { findings } = reported([`0,,${floors[0]?.label.join(',')},0.1`]);
    expect(findings.map(({ code }) => code)).toContain('reading-off-floor');
  });
});

describe('M7.4 a reading that does not fit is asked about', () => {
  const asked = (text: string) => correct(text).findings.filter(({ code }) => code === 'reading-in-question');
  const why = (text: string) => asked(text).map(({ facts }) => (facts as { why: string }).why);

  test('reading-in-question: 24 % off the planned rate counts, 26 % off does not until it is confirmed', () => {
    for (const share of [1.24, 0.76]) expect(asked(`${HEAD}\n${first(share)}`)).toEqual([]);
    for (const share of [1.26, 0.74]) {
      const rows = [ANSWERED, first(share)];
      expect(why(rows.join('\n'))).toEqual(['rate']);
      expect(correct(rows.join('\n')).corrected?.next.value).toBeCloseTo(rate, 9);
      const both = correct([...rows, confirmed(1)].join('\n'));
      expect(both.corrected?.rate.value).toBeCloseTo(share * rate, 4);
      expect(both.readings?.[0]).toMatchObject({
        state: 'counts',
        answer: { reason: 'gauged again, the same' },
      });
    }
  });

  test('reading-in-question: a figure in inches where millimetres count reports what it would be in inches', () => {
    const { id } = deepest();
    const left = 4 - 0.8 * minutes * rate;
    const inches = (left / 25.4).toFixed(4);
    const text = (figure: string) => `stage,minutes,region,thickness\n1,${0.8 * minutes},${id},${figure}`;
    const [finding] = asked(text(inches));
    expect(finding?.facts).toMatchObject({ inOtherUnit: { unit: 'in', value: expect.closeTo(left, 2) } });
    for (const written of [`${inches}in`, `${inches} in`, `${inches}"`, `${left.toFixed(3)}mm`]) {
      expect(asked(text(written))).toEqual([]);
      expect(correct(text(written)).corrected?.rate.value).toBeCloseTo(rate, 4);
    }
  });

  test('reading-in-question: less gone than before, more than the minutes allow, a sheet thicker than it may be', () => {
    const { id } = deepest();
    const gone = (share: number) => (share * minutes * rate).toFixed(3);
    const head = 'stage,minutes,region,depth,thickness\n';
    const before = `${head}1,${0.5 * minutes},${id},${gone(0.5)},\n1,${0.8 * minutes},${id},`;
    expect(why(`${before}${gone(0.78)},`)).toEqual([]);
    expect(why(`${before}${gone(0.4)},`)).toEqual(['rose']);
    expect(why(`${before}${gone(0.95)},`)).toEqual(['too-deep']);
    expect(why(`${head}0,,${id},,4.3`)).toEqual(['sheet']);
    expect(why(`${head}1,${0.8 * minutes},${id},,4.3`)).toEqual(['sheet']);
  });

  test('a reading struck out counts no more, its minutes neither, and stands in the list with its reason', () => {
    const late = first(1.2).replace(String(0.8 * minutes), String(3 * minutes));
    const { corrected, readings } = correct([ANSWERED, first(1), late, struck(2)].join('\n'));
    expect(corrected?.rate.value).toBeCloseTo(rate, 4);
    expect(corrected?.stages[0]?.had).toBe(0.8 * minutes);
    expect(readings?.map(({ state }) => state)).toEqual(['counts', 'struck']);
    expect(readings?.[1]?.answer?.reason).toBe('gauge was not set to zero');
  });

  test('who, when and which gauge stand in the list', () => {
    const { id } = deepest();
    const text = `stage,minutes,region,depth,who,when,gauge,note\n1,${0.8 * minutes},${id},${0.8 * minutes * rate},M. K.,13:52,U-7,dry`;
    expect(correct(text).readings).toEqual([
      expect.objectContaining({ number: 1, who: 'M. K.', when: '13:52', gauge: 'U-7', note: 'dry' }),
    ]);
  });

  test('reading-unclear: an answer without a reason, to no reading, to a later one, or twice at once', () => {
    for (const answer of [',,,,,1,,', confirmed(3), confirmed(2), ',,,,,1,1,why', ',,,,0.3,1,,why']) {
      expect(codes([ANSWERED, first(1), answer].join('\n'))).toEqual(['reading-unclear']);
    }
  });
});

describe('a form that is half filled in', () => {
  test('readings-blank: is read as far as it goes, and filled in anywhere later', () => {
    const { id, label } = deepest();
    const form = (first: string, second: string) =>
      `point,stage,region,x,y,nominal,plus,minus,thickness,note\n` +
      `P001,2,${id},${label.join(',')},1.6,0.1,0.1,${first},depth 2.4, +0.1\n` +
      `P002,2,${id},${label.join(',')},1.6,0.1,0.1,${second},depth 2.4, +0.1\n`;
    const { findings, recordText } = correct(form('', '1.61'));
    expect(findings.find(({ code }) => code === 'readings-blank')?.facts).toEqual({ blank: 1, read: 1 });
    const whole = correct(form('1.6', '1.61'), recordText);
    expect(whole.readings?.map(({ number, read }) => [number, read])).toEqual([
      [1, 1.61],
      [2, 1.6],
    ]);
    expect(codes(form('1.6', '1.62'), whole.recordText)).toEqual(['readings-rewritten']);
  });
});

describe('the record', () => {
  test('gives the readings back, with every answer, and goes on from there', () => {
    const text = [ANSWERED, first(1), first(1.02), struck(1), first(1.31), confirmed(4)].join('\n');
    const { recordText = '', corrected } = correct(text);
    const again = readingsOfRecord(recordText) ?? '';
    expect(correct(again, recordText)).toMatchObject({ corrected, recordText });
    const further = correct(`${again}1,${minutes},,,,,,,,,,,,\n`, recordText);
    expect(JSON.parse(further.recordText ?? '').entries).toHaveLength(2);
    expect(readingsOfRecord('{}')).toBeUndefined();
  });
  const rows = () => [HEAD, first(1), first(1.01)];
  test('grows by what is new, stays the same for the same file, and gives the same bytes', () => {
    const once = correct(rows().slice(0, 2).join('\n')).recordText;
    const twice = correct(rows().join('\n'), once).recordText ?? '';
    expect(JSON.parse(twice).entries.map((entry: { rows: unknown[] }) => entry.rows.length)).toEqual([1, 1]);
    expect(JSON.parse(twice).entries[0]).toEqual(JSON.parse(once ?? '').entries[0]);
    expect(correct(rows().join('\n'), twice).recordText).toBe(twice);
  });
  test('readings-rewritten: a recorded row may neither change nor go', () => {
    const { recordText } = correct(rows().join('\n'));
    expect(codes([HEAD, first(1), first(1.02)].join('\n'), recordText)).toEqual(['readings-rewritten']);
    expect(codes([HEAD, first(1)].join('\n'), recordText)).toEqual(['readings-rewritten']);
  });
  test('run-record-unusable: altered, cut off, or of another plan', () => {
    const recordText = correct(rows().join('\n')).recordText ?? '';
    const altered = recordText.replace(/"depth": [0-9.]+/, '"depth": 0.5');
    expect(altered).not.toBe(recordText);
    expect(codes(rows().join('\n'), altered)).toEqual(['run-record-unusable']);
    expect(codes(rows().join('\n'), recordText.slice(0, 50))).toEqual(['run-record-unusable']);
    const other = correct(rows().join('\n'), recordText, planText.replace('lid.dxf', 'led.dxf'));
    expect(other.findings.map(({ code }) => code)).toEqual(['run-record-unusable']);
  });
});

import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseString } from 'dxf';
import { describe, expect, it } from 'vitest';
import { dot } from '#geometry/point.ts';
import {
  distanceToSpan,
  lineSpan,
  loopArea,
  pointAlong,
  type Span,
  spansLength,
  tangentAlong,
} from '#geometry/span.ts';
import { pathOfContour } from '#handoff/contour.ts';
import { cutLines, travel } from '#handoff/cut-lines.ts';
import { machineProgram } from '#handoff/machine-program.ts';
import { fillPost, PLAIN_POST } from '#job/formats/post-file.ts';
import { readJob } from '#job/formats/read-job.ts';
import { interpretRs274, pointsOfMove } from '#oracle/rs274.ts';
import { runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { rectangle } from '#support/geometry/shapes.ts';
import { handMadePlan } from '#support/parts/hand-made-plan.ts';

const AS_PLANNED = { start: 'as-planned', direction: 'climb', overcut: 0, order: 'as-planned' } as const;
const planned = handMadePlan.stages.flatMap(({ lines }) => lines).flatMap(({ spans }) => spans);

function program(change: object = {}, choices: object = {}): string {
  return machineProgram({
    name: 'Gondola lid (±)',
    planHash: 'ab'.repeat(32),
    jobUnit: 'mm',
    lines: cutLines(handMadePlan.stages, { ...AS_PLANNED, ...choices }),
    post: fillPost({ ...PLAIN_POST, ...change }),
  });
}

/** What the tool draws while it is down. */
const cuts = (text: string, cutHeight = 0) =>
  interpretRs274(text).moves.filter(
    ({ rapid, from, to }) => !rapid && from.z === to.z && Math.abs(to.z - cutHeight) < 1e-9,
  );

const worstGap = (text: string): number => {
  const drawn = cuts(text).flatMap((move) => pointsOfMove(move));
  const away = drawn.map((point) => Math.min(...planned.map((span) => distanceToSpan(span, point))));
  const missed = planned.flatMap((span) =>
    [0, 0.2, 0.4, 0.6, 0.8, 1].map((share) => {
      const point = pointAlong(span, share);
      return Math.min(...cuts(text).map((move) => distanceToMove(move, point)));
    }),
  );
  return Math.max(...away, ...missed);
};

function distanceToMove(move: Parameters<typeof pointsOfMove>[0], point: { x: number; y: number }): number {
  const points = pointsOfMove(move, 400);
  return Math.min(
    ...points.slice(1).map((end, index) => {
      const start = points[index] ?? end;
      const length = (end.x - start.x) ** 2 + (end.y - start.y) ** 2;
      const along = (point.x - start.x) * (end.x - start.x) + (point.y - start.y) * (end.y - start.y);
      const share = length === 0 ? 0 : Math.min(1, Math.max(0, along / length));
      return Math.hypot(
        start.x + (end.x - start.x) * share - point.x,
        start.y + (end.y - start.y) * share - point.y,
      );
    }),
  );
}

describe('the machine program, read by an interpreter written from NISTIR 6556', () => {
  it.each([
    ['millimetres', {}],
    ['inches', { unit: 'in', feed: 40, plungeFeed: 8, safeHeight: 0.4 }],
  ])('retraces every scribe line within 0.002 mm in %s, and nothing else', (_, change) => {
    expect(worstGap(program(change))).toBeLessThan(0.002);
  });

  it('moves between lines only at the safe height', () => {
    for (const { rapid, from, to } of interpretRs274(program()).moves) {
      if (rapid && Math.hypot(to.x - from.x, to.y - from.y) > 0) expect([from.z, to.z]).toEqual([10, 10]);
    }
  });

  it('ends as the post specifies, with the tool words round each line and the plan named', () => {
    const text = program({ toolOn: ['M3'], toolOff: ['M5'], lineNumberStep: 10 });
    expect(interpretRs274(text).ended).toBe(true);
    expect(text.match(/M3/g)).toHaveLength(3);
    expect(text.match(/M5/g)).toHaveLength(3);
    expect(text).toContain(`(Plan ${'ab'.repeat(32)})`);
    expect(text).toContain('(Stage 2, 2 ticks)');
    expect(text).toMatch(/^[\r\n -~]*$/);
  });

  it('is the same text each time', () => {
    expect(program()).toBe(program());
  });
});

describe('the words of a program, by hand', () => {
  const [stage, second] = handMadePlan.stages;
  if (stage === undefined || second === undefined) throw new Error('the plan has two stages');
  const POST = fillPost({
    ...PLAIN_POST,
    decimals: 3,
    feed: 900,
    plungeFeed: 150,
    safeHeight: 8,
    cutHeight: -0.25,
    toolOn: ['M3'],
    toolOff: ['M5'],
    header: ['%41', '(B, left)', '', 'G64'],
    footer: ['M2', '%'],
    lineNumberStep: 7,
  });
  const text = (lines: Parameters<typeof machineProgram>[0]['lines'], change: object = {}): string[] =>
    machineProgram({
      name: 'Lid (left)',
      planHash: 'c4',
      jobUnit: 'mm',
      lines,
      post: { ...POST, ...change },
    }).split('\r\n');
  const moves = (blocks: readonly string[]) => blocks.filter((block) => /G[123] X/.test(block));
  const path = (...places: readonly (readonly [number, number, number])[]) =>
    pathOfContour({ closed: false, vertices: places.map(([x, y, bulge]) => [x, y, bulge]) });
  // A line, a quarter turn to the left about (30, 9), a line, and a quarter to the right about (39, 20).
  const quarter = Math.tan(Math.PI / 8);
  const bent = path([-0.0004, 5, 0], [30, 5, quarter], [34, 9, 0], [34, 20, -quarter], [39, 25, 0]);

  it('go down once, cut at one feed, come up, and number what is neither a comment nor the shop’s own', () => {
    const blocks = text([{ stage, path: bent }]);
    expect(blocks.filter((block) => !block.includes('Computed'))).toEqual([
      '%41',
      '(B, left)',
      '',
      'G64',
      '(Scribe lines: Lid  left )',
      '(Plan c4)',
      '(Lengths in millimetres, G21)',
      'N7 G17 G21 G90 G94',
      'N14 G0 Z8.000',
      '(Stage 1, 1 tick)',
      '(Line 1 of 1)',
      'N21 G0 X0.000 Y5.000',
      'M3',
      'N28 G1 Z-0.250 F150.000',
      'N35 G1 X30.000 Y5.000 F900.000',
      'N42 G3 X34.000 Y9.000 I0.000 J4.000',
      'N49 G1 X34.000 Y20.000',
      'N56 G2 X39.000 Y25.000 I5.000 J0.000',
      'M5',
      'N63 G0 Z8.000',
      'M2',
      '%',
      '',
    ]);
  });

  it('write no minus before nothing', () => {
    const down = text([{ stage, path: bent }], { cutHeight: -0.0004, lineNumberStep: 0 });
    expect(down).toContain('G1 Z0.000 F150.000');
  });

  it('state that nobody has approved them, each stage once with its ticks, and each line of how many', () => {
    const line = { stage: second, path: bent };
    const comments = text([{ stage, path: bent }, line, line]).filter((block) =>
      /^\((Stage|Line)/.test(block),
    );
    expect(comments).toEqual([
      '(Stage 1, 1 tick)',
      '(Line 1 of 3)',
      '(Stage 2, 2 ticks)',
      '(Line 2 of 3)',
      '(Line 3 of 3)',
    ]);
    expect(text([line])).toContainEqual(expect.stringContaining('not approved'));
  });

  it('have no numbers where the post wants none, and begin again at 100 000', () => {
    expect(text([{ stage, path: bent }], { lineNumberStep: 0 }).filter((block) => /^N/.test(block))).toEqual(
      [],
    );
    // Two blocks before the lines and seven a line.
    const lines = Array.from({ length: 15 }, () => ({ stage, path: bent }));
    const numbers = text(lines, { lineNumberStep: 1000 }).flatMap((block) => /^N\d+/.exec(block)?.[0] ?? []);
    expect([numbers[98], numbers[99], numbers[101]]).toEqual(['N99000', 'N0', 'N2000']);
  });

  it('keep moves of a third of a millimetre in inches too, and none of a line that is a speck', () => {
    const short = path([2.54, 0, 0], [2.54 + 0.3, 0, 0], [2.54 + 0.3, 12.7, 0]);
    // 2.84 mm are 0.11181 in, 12.7 mm half an inch.
    expect(moves(text([{ stage, path: short }], { unit: 'in', decimals: 5, lineNumberStep: 0 }))).toEqual([
      'G1 X0.11181 Y0.00000 F900.00000',
      'G1 X0.11181 Y0.50000',
    ]);
    const speck = path([3, 4, 0], [3.004, 4, 0]);
    const blocks = text([{ stage, path: speck }], { lineNumberStep: 0 });
    expect(blocks.slice(blocks.indexOf('(Line 1 of 1)'))).toEqual(['(Line 1 of 1)', 'M2', '%', '']);
  });
});

describe('the way along the lines', () => {
  const lines = (choices: object) => cutLines(handMadePlan.stages, { ...AS_PLANNED, ...choices });

  it('has the piece on the left on the climb side and on the right on the other', () => {
    for (const { path } of lines({})) if (path.closed) expect(loopArea(path.spans)).toBeGreaterThan(0);
    for (const { path } of lines({ direction: 'conventional' })) {
      if (path.closed) expect(loopArea(path.spans)).toBeLessThan(0);
    }
  });

  it('goes on past the start of a closed line by the overcut, and leaves open ones alone', () => {
    const plain = lines({});
    lines({ overcut: 3 }).forEach(({ path }, index) => {
      const before = plain[index]?.path;
      const more = spansLength(path.spans) - spansLength(before?.spans ?? []);
      expect(more).toBeCloseTo(before?.closed === true ? 3 : 0, 9);
    });
  });

  it('starts in the middle of the longest side', () => {
    const slot = lines({ start: 'mid-side' })[1]?.path.spans[0]?.start;
    expect(slot?.x).toBeCloseTo(80, 9);
  });

  it('starts at a corner where there is one, and where it was planned where there is none', () => {
    const plain = lines({});
    lines({ start: 'corner' }).forEach(({ path }, index) => {
      const before = plain[index]?.path;
      expect(spansLength(path.spans)).toBeCloseTo(spansLength(before?.spans ?? []), 9);
      const [first, last] = [path.spans[0], path.spans.at(-1)];
      if (!path.closed || first === undefined || last === undefined) return;
      const turn = dot(tangentAlong(last, 1), tangentAlong(first, 0));
      const turns = path.spans.map((span, i) =>
        dot(tangentAlong(path.spans.at(i - 1) ?? span, 1), tangentAlong(span, 0)),
      );
      // Only a line that is smooth all round may start within a curve.
      if (Math.min(...turns) < Math.cos(Math.PI / 18)) expect(turn).toBeLessThan(Math.cos(Math.PI / 18));
      else expect(first.start).toEqual(before?.spans[0]?.start);
    });
    const square = { closed: true, spans: rectangle(0, 0, 40, 20) };
    const halfWay = { closed: true, spans: [...cutFromMiddle(square.spans)] };
    const [stage] = handMadePlan.stages;
    if (stage === undefined) throw new Error('the plan has a stage');
    const [line] = cutLines([{ ...stage, lines: [halfWay] }], { ...AS_PLANNED, start: 'corner' });
    const start = line?.path.spans[0]?.start;
    expect([0, 40]).toContain(start?.x);
    expect([0, 20]).toContain(start?.y);
  });

  it('travels no further in the short order', () => {
    const from = { x: 0, y: 0 };
    expect(travel(lines({ order: 'short-travel' }), from)).toBeLessThanOrEqual(travel(lines({}), from));
  });
});

describe('a job that asks for the program', () => {
  const jobText = (program: object) =>
    JSON.stringify({ ...buoyLidJob, handoff: { files: ['program'], program } });

  it('gets one file, or one a stage, that names its plan.json by its SHA-256', {
    tags: ['long'],
  }, async () => {
    const drawingBytes = new TextEncoder().encode(buoyLidDrawing);
    const run = (program: object) =>
      runJob({ jobText: jobText(program), drawingName: 'buoy-lid.dxf', drawingBytes });
    const { files } = await run({});
    const byName = new Map(files.map(({ name, bytes }) => [name, bytes]));
    const hash = createHash('sha256')
      .update(byName.get('plan.json') ?? '')
      .digest('hex');
    const text = new TextDecoder().decode(byName.get('scribe.nc'));
    expect(text).toContain(`(Plan ${hash})`);
    expect(interpretRs274(text).ended).toBe(true);
    const split = await run({ split: 'by-stage' });
    const names = split.files.map(({ name }) => name).filter((name) => name.endsWith('.nc'));
    expect(names).toEqual(['scribe-01.nc', 'scribe-02.nc']);
  });

  it.each(['gauge-pod-cover', 'shutter-bay-grid', 'hatch-from-supplier'])(
    'stays within 0.002 mm of the planned lines of the sample %s',
    async (sample) => {
      const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
      const { plan, files } = await runJob({
        jobText: JSON.stringify({ ...job, handoff: { files: ['program'] } }),
        drawingName: job.drawing,
        drawingBytes: readFileSync(`samples/${job.drawing}`),
      });
      const text = new TextDecoder().decode(files.find(({ name }) => name === 'scribe.nc')?.bytes);
      const spans = plan?.stages.flatMap(({ lines }) => lines.flatMap((line) => line.spans)) ?? [];
      const drawn = cuts(text);
      const length = drawn.reduce((sum, move) => sum + lengthOf(pointsOfMove(move, 200)), 0);
      expect(length / spansLength(spans)).toBeCloseTo(1, 4);
      for (const move of drawn) {
        for (const point of pointsOfMove(move, 4)) {
          expect(Math.min(...spans.map((span) => distanceToSpan(span, point)))).toBeLessThan(0.002);
        }
      }
    },
  );

  it('gets a scribe drawing a stage, overcut, with the lines still on the planned ones', async () => {
    const drawingBytes = new TextEncoder().encode(buoyLidDrawing);
    const chosen = { ...buoyLidJob, handoff: { scribe: { split: 'by-stage', overcut: 2 } } };
    const { files, plan } = await runJob({
      jobText: JSON.stringify(chosen),
      drawingName: 'buoy-lid.dxf',
      drawingBytes,
    });
    expect(files.map(({ name }) => name)).toEqual(['plan.json', 'scribe-01.dxf', 'scribe-02.dxf']);
    const read = parseString(new TextDecoder().decode(files[1]?.bytes));
    const outlines = read.entities.filter(({ layer }) => layer.startsWith('SCRIBE'));
    expect(outlines).toHaveLength(plan?.stages[0]?.lines.length ?? 0);
    expect(outlines.every(({ layer, closed }) => layer === 'SCRIBE-01' && closed !== true)).toBe(true);
  });

  it('overcut-too-long: an overcut past a whole turn costs the files that it was chosen for, and no others', async () => {
    const drawingBytes = new TextEncoder().encode(buoyLidDrawing);
    const run = (handoff: object) =>
      runJob({
        jobText: JSON.stringify({ ...buoyLidJob, handoff: { files: ['program', 'scribe-r12'], ...handoff } }),
        drawingName: 'buoy-lid.dxf',
        drawingBytes,
      });
    const reported = async (handoff: object) => {
      const { findings, files } = await run(handoff);
      const paths = findings.filter(({ code }) => code === 'overcut-too-long').map(({ place }) => place.path);
      return [paths, files.map(({ name }) => name)];
    };
    const all = ['plan.json', 'scribe.dxf', 'scribe.nc', 'scribe-r12.dxf'];
    expect(await reported({ scribe: { overcut: 5 }, program: { overcut: 5 } })).toEqual([[], all]);
    expect(await reported({ program: { overcut: 1000 } })).toEqual([
      ['handoff.program.overcut'],
      ['plan.json', 'scribe.dxf', 'scribe-r12.dxf'],
    ]);
    expect(await reported({ scribe: { overcut: 1000 } })).toEqual([
      ['handoff.scribe.overcut'],
      ['plan.json', 'scribe.nc'],
    ]);
  });

  it('job-value-wrong: too few decimals of an inch to stay on the line', () => {
    const post = { ...PLAIN_POST, unit: 'in', decimals: 4 };
    const { findings } = readJob(jobText({ post }));
    expect(findings.map(({ code, place }) => [code, place.path])).toEqual([
      ['job-value-wrong', 'handoff.program.post.decimals'],
    ]);
  });
});

/** The same loop, started in the middle of its first side. */
function cutFromMiddle(spans: readonly Span[]): Span[] {
  const [first, ...rest] = spans;
  if (first === undefined) return [];
  const middle = pointAlong(first, 0.5);
  return [lineSpan(middle, first.end), ...rest, lineSpan(first.start, middle)];
}

function lengthOf(points: readonly { x: number; y: number }[]): number {
  return points.slice(1).reduce((sum, end, index) => {
    const start = points[index] ?? end;
    return sum + Math.hypot(end.x - start.x, end.y - start.y);
  }, 0);
}

describe('what the shop gives and what the unit is', () => {
  const header = ['%', 'O0042', '(LIGHT CUTTER 2)', ''];
  const own = { header, footer: ['G0 X0 Y0', 'M30', '%'], toolOn: ['M3 S4000'], toolOff: ['M5'] };

  it('copies header, tool words and footer unchanged where blocks are numbered', () => {
    const lines = program({ ...own, lineNumberStep: 10 }).split('\r\n');
    expect(lines.slice(0, 4)).toEqual(header);
    expect(lines.slice(-4)).toEqual(['G0 X0 Y0', 'M30', '%', '']);
    expect(lines.filter((line) => line.includes('M3 S4000'))).toEqual(['M3 S4000', 'M3 S4000', 'M3 S4000']);
    const numbers = lines.flatMap((line) => /^N(\d+) /.exec(line)?.[1] ?? []).map(Number);
    expect(numbers.slice(0, 3)).toEqual([10, 20, 30]);
  });

  it('states its unit before the first move, and the job’s where that is another', () => {
    const inMillimetres = (jobUnit: 'mm' | 'in') =>
      machineProgram({
        name: 'Lid',
        planHash: '0',
        jobUnit,
        lines: cutLines(handMadePlan.stages, AS_PLANNED),
        post: fillPost(PLAIN_POST),
      });
    expect(inMillimetres('in')).toMatch(
      /\(Lengths in millimetres, G21; the job is in inches\)\r\nG17 G21 G90 G94\r\nG0 /,
    );
    expect(inMillimetres('mm')).toContain('(Lengths in millimetres, G21)\r\nG17 G21');
  });
});

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

  it('gets one file, or one a stage, that names its plan.json by its SHA-256', async () => {
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

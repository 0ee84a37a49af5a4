/** What the chosen files need, and what is wrong with a choice: a plain part of two pockets, and one etched on both faces. */
import { beforeAll, describe, expect, test } from 'vitest';
import { lineSpan } from '#geometry/span.ts';
import type { JobFile } from '#job/job-file.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';
import { handoffFiles } from '#run/handoff-files.ts';
import type { HandoffInput, PreparedHandoff } from '#run/handoff-types.ts';
import { oppositeHand } from '#run/opposite-hand.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { box, buoyLidDrawing, buoyLidJob, dxf } from '#support/drawings/small-drawing.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

let lid: RunResult;
let both: RunResult;
beforeAll(async () => {
  lid = await runJob({
    jobText: JSON.stringify(buoyLidJob),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });
  both = await runLid({ requirements }, LID);
});

type Handoff = NonNullable<JobFile['handoff']>;

function inputOf(
  { plan, planFile, job, kit, farKit }: RunResult,
  handoff: Handoff,
  change = (of: EtchPlan) => of,
): HandoffInput {
  if (plan === undefined || job === undefined || kit === undefined) throw new Error('the lid can be planned');
  const choices = resolveHandoff({ ...buoyLidJob, handoff } as unknown as JobFile, 'mm');
  const far = farKit && { kit: farKit };
  const removed = planFile?.totals.removedVolume;
  return { choices, job, plan: change(plan), kit, far, removed, units: { job: 'mm', drawing: 'mm' } };
}
const prepared = (run: RunResult, handoff: Handoff, change?: (of: EtchPlan) => EtchPlan) =>
  prepareHandoff(inputOf(run, handoff, change));
const madeOf = ({ made }: PreparedHandoff) =>
  Object.entries(made).flatMap(([need, value]) => (value === undefined ? [] : [need]));
const reported = ({ findings }: PreparedHandoff) =>
  findings.map(({ code, facts, place }) => [code, facts, place]);
const withLines =
  (lines: (of: EtchPlan['stages'][number]) => EtchPlan['stages'][number]['lines']) =>
  (plan: EtchPlan): EtchPlan => ({
    ...plan,
    stages: plan.stages.map((stage) => ({ ...stage, lines: lines(stage) })),
  });

describe('what is made', () => {
  test('for each file what it needs, and nothing else', () => {
    const cases: [Handoff, string[]][] = [
      [{ files: [] }, []],
      [{ files: ['program'] }, []],
      [{ files: ['inspection'] }, ['points']],
      [{ files: ['section-svg'] }, ['sections']],
      [{ files: ['template'] }, ['templates']],
      [{ files: ['stl'] }, ['solid']],
      [{ files: [], sections: [{ from: [0, 60], to: [200, 60] }] }, ['sections']],
    ];
    for (const [handoff, needs] of cases) {
      const own = prepared(lid, handoff);
      expect(madeOf(own).sort(), JSON.stringify(handoff)).toEqual(['lines', 'pictures', ...needs].sort());
      expect(reported(own)).toEqual([]);
    }
  });

  test('nothing-to-scribe: no templates, and which files are kept back', () => {
    const none = withLines(() => []);
    const facts = { stages: 2 };
    expect(reported(prepared(lid, { files: [] }, none))).toEqual([
      ['nothing-to-scribe', { ...facts, isKeptBack: false }, {}],
    ]);
    const template = prepared(lid, { files: ['template'] }, none);
    expect(reported(template)).toEqual([['nothing-to-scribe', { ...facts, isKeptBack: true }, {}]]);
    expect(madeOf(template)).toEqual(['pictures']);
    expect(reported(prepared(lid, { files: ['program'] }, (plan) => ({ ...plan, stages: [] })))).toEqual([]);
  });

  test('one stage with lines is enough', () => {
    const second = withLines(({ number, lines }) => (number === 2 ? lines : []));
    expect(madeOf(prepared(lid, { files: ['template'] }, second))).toEqual([
      'lines',
      'pictures',
      'templates',
    ]);
  });

  test('solid-not-drawn: a part without a sheet', () => {
    const own = prepared(lid, { files: ['glb'] }, (plan) => ({ ...plan, sheet: [] }));
    expect(reported(own)).toEqual([['solid-not-drawn', { trouble: 'no outline' }, {}]]);
    expect(madeOf(own)).toEqual(['lines', 'pictures']);
  });
});

describe('what is wrong with lines', () => {
  test('scribe-line-stub: how many are shorter than 1 mm, and the shortest of them', () => {
    const stub = (x: number, length: number) => ({
      closed: false,
      spans: [lineSpan({ x, y: 110 }, { x: x + length, y: 110 })],
    });
    const short = withLines(({ number, lines }) =>
      number === 2 ? [...lines, stub(10, 0.7), stub(20, 0.375), stub(30, 1.5)] : [...lines, stub(40, 0.9)],
    );
    expect(reported(prepared(lid, { files: [] }, short))).toEqual([
      [
        'scribe-line-stub',
        { lines: 3, shortest: expect.closeTo(0.375, 9), stage: 2, limit: 1 },
        { at: { x: 20, y: 110 } },
      ],
    ]);
  });

  test('overcut-too-long: of the scribe drawing always, of the program where it is made', () => {
    // The shortest line, about ROUND, is some 150 mm long.
    const handoff = { scribe: { overcut: 900 }, program: { overcut: 800 } } as Handoff;
    const of = (own: PreparedHandoff) =>
      own.findings.flatMap((each) =>
        each.code === 'overcut-too-long' ? [[each.facts.of, each.facts.overcut]] : [],
      );
    expect(of(prepared(lid, { ...handoff, files: [] }))).toEqual([['scribe', 900]]);
    expect(of(prepared(lid, { ...handoff, files: ['program'] }))).toEqual([
      ['scribe', 900],
      ['program', 800],
    ]);
  });
});

describe('picture-too-small', () => {
  /** A slot of 6 by 300 mm in a plate of 2.4 by 1.1 m, beside a wide pocket. */
  const PLATE = dxf({
    insunits: 4,
    entities: [
      box('TRIM', [0, 0], [2400, 1100]),
      box('WIDE', [100, 100], [900, 900]),
      box('SLOT', [1500, 300], [1506, 600]),
    ],
  });
  const planned = (masking = 'peel-next') =>
    runJob(
      {
        jobText: JSON.stringify({
          ...buoyLidJob,
          process: { ...buoyLidJob.process, masking },
          requirements: [
            { layer: 'WIDE', depth: 2.4 },
            { layer: 'SLOT', depth: 1.2 },
          ],
        }),
        drawingName: 'plate.dxf',
        drawingBytes: new TextEncoder().encode(PLATE),
      },
      { withoutFiles: true },
    );

  test('the narrowest piece on paper, its stage, and the paper on which it would do', async () => {
    const plate = await planned();
    for (const file of ['traveller', 'review'] as const) {
      const all = prepared(plate, { files: [file], paper: 'a4' }).findings;
      const [found, ...others] = all.filter(({ code }) => code === 'picture-too-small');
      expect(others).toEqual([]);
      expect(found).toMatchObject({
        code: 'picture-too-small',
        facts: { stage: 2, paper: 'a4', limit: 0.5 },
      });
      if (found?.code !== 'picture-too-small') continue;
      // Peeled 3.6 mm wide and 297.6 long: twice its area over its border.
      const strip = (2 * 3.6 * 297.6) / (2 * (3.6 + 297.6));
      expect(found.facts.width * found.facts.scale).toBeCloseTo(strip, 6);
      // 2.4 m across less than 0.28 m of paper.
      expect(found.facts.scale).toBeGreaterThan(2400 / 280);
    }
    const onlyProgram = prepared(plate, { files: ['program'], paper: 'a4' });
    expect(onlyProgram.findings.map(({ code }) => code)).not.toContain('picture-too-small');
  });

  test('a lid of 200 mm has room on any', () => {
    for (const paper of ['a4', 'a3', 'letter'] as const) {
      expect(prepared(lid, { files: ['review', 'traveller'], paper }).findings).toEqual([]);
    }
  });
});

describe('both faces', () => {
  test('are laid on the same holes, which the near sheet would choose for the lines of both', () => {
    const { choices } = prepared(both, { files: ['template'] });
    expect(choices.template.holes.at?.length).toBeGreaterThan(1);
    expect(prepared(lid, { files: ['template'] }).choices.template.holes.at).toBeUndefined();
    const given = {
      files: ['template'],
      template: {
        holes: {
          at: [
            [-13, 31],
            [214, 97],
          ],
        },
      },
    } as unknown as Handoff;
    expect(prepared(both, given).choices.template.holes.at).toEqual([
      { x: -13, y: 31 },
      { x: 214, y: 97 },
    ]);
  });

  test('template-holes-turn: four holes of a rectangle go onto pins the wrong way as well', () => {
    const at = [
      [-14, -12],
      [214, -12],
      [214, 132],
      [-14, 132],
    ];
    const codes = (run: RunResult, holes: object) =>
      prepared(run, { files: ['template'], template: { holes } } as unknown as Handoff)
        .findings.filter(({ code }) => code === 'template-holes-turn')
        .map(({ facts, place }) => [facts, place]);
    expect(codes(both, { at, diameter: 6 })).toEqual([
      [{ holes: 4, slack: 6 }, { path: 'handoff.template.holes.at' }],
    ]);
    expect(codes(both, { at: [...at.slice(0, 3), [-14, 97]], diameter: 6 })).toEqual([]);
    expect(codes(lid, { at, diameter: 6 })).toEqual([]);
  });
});

describe('the files of the hand-off', () => {
  const planFor = ({ planFile, findings }: RunResult) => {
    if (planFile === undefined) throw new Error('the lid can be planned');
    return { planFile, planFindings: findings, planHash: '12'.repeat(32), since: undefined };
  };
  const named = async (run: RunResult, handoff: Handoff, change?: (of: EtchPlan) => EtchPlan) => {
    const files = await handoffFiles(prepared(run, handoff, change), { ...planFor(run), origin: undefined });
    return files.map(({ name, what }) => `${name}: ${what}`);
  };
  const SCRIBE = 'scribe.dxf: scribe lines, a layer a stage';

  test('are those that were chosen, in the order of the list, beside the scribe drawing', {
    tags: ['long'],
  }, async () => {
    expect(await named(lid, { files: [] })).toEqual([SCRIBE]);
    const names = await named(lid, {
      files: ['stl', 'glb', 'section-svg', 'section-dxf', 'bands', 'scribe-r12', 'program'],
    });
    expect(names).toEqual([
      SCRIBE,
      'scribe.nc: machine program of the scribe lines',
      'scribe-r12.dxf: scribe lines for old readers',
      'bands.dxf: where drawn edges may come out',
      'section-01.dxf: section A at its true size',
      'section-01.svg: section A as a picture',
      'etched-part.glb: the etched part to look at, a colour a stage',
      'etched-part.stl: the etched part as a solid, mm, within 0.02 mm',
    ]);
  });

  test('one that nothing can be made for is left out, and the others are there', async () => {
    expect(
      await named(
        lid,
        { files: ['program', 'scribe-r12'] },
        withLines(() => []),
      ),
    ).toHaveLength(2);
    const long = { files: ['program', 'scribe-r12'], scribe: { overcut: 900 } } as unknown as Handoff;
    expect(await named(lid, long)).toEqual(['scribe.nc: machine program of the scribe lines']);
    const longProgram = { files: ['program', 'scribe-r12'], program: { overcut: 900 } } as unknown as Handoff;
    expect(await named(lid, longProgram)).toEqual([SCRIBE, 'scribe-r12.dxf: scribe lines for old readers']);
  });

  test('of the opposite hand, alone or beside the other, by names of their own', async () => {
    const files: Handoff['files'] = ['program', 'section-svg'];
    const drawn = await named(lid, { files, hand: 'as-drawn' });
    const opposite = await named(lid, { files, hand: 'opposite' });
    expect(await named(lid, { files, hand: 'both' })).toEqual([...drawn, ...opposite]);
    expect(opposite).toHaveLength(drawn.length);
    for (const [index, name] of opposite.entries()) {
      expect(drawn).not.toContain(name);
      expect(name.endsWith(`${drawn[index]?.split(': ')[1]}, opposite hand`)).toBe(true);
    }
  });

  test('of both faces: what is cut once a face, what is of the part once', async () => {
    const names = await named(both, { files: ['program', 'section-svg', 'stl'] });
    const near = names.filter((name) => !name.endsWith(', far face'));
    expect(near.map((name) => name.split(':')[0])).toEqual([
      'scribe.dxf',
      'scribe.nc',
      'section-01.svg',
      'etched-part.stl',
    ]);
    expect(names.length - near.length).toBe(2);
    // Where no line is cut on the far face there are none of it.
    const plain = (plan: EtchPlan): EtchPlan =>
      plan.far === undefined ? plan : { ...plan, far: withLines(() => [])(plan.far) };
    expect(
      (await named(both, { files: ['program'] }, plain)).some((name) => name.endsWith(', far face')),
    ).toBe(false);
  });

  test('far from the origin coordinates are the drawing’s own, and the solid says what it is counted from', {
    tags: ['long'],
  }, async () => {
    const origin = { x: 4_512_000, y: -37_654_000 };
    const filesAt = async (at: typeof origin | undefined) => {
      const handoff: Handoff = { files: ['program', 'section-dxf', 'stl', 'inspection'] };
      return handoffFiles(prepared(lid, handoff), { ...planFor(lid), origin: at });
    };
    const [here, far] = [await filesAt(undefined), await filesAt(origin)];
    const textOf = (files: typeof here, name: string) =>
      new TextDecoder().decode(files.find((each) => each.name === name)?.bytes);
    const firstX = (files: typeof here) => Number(/^G0 X(-?[\d.]+)/m.exec(textOf(files, 'scribe.nc'))?.[1]);
    expect(firstX(far) - firstX(here)).toBeCloseTo(origin.x, 2);
    const rows = (files: typeof here) => {
      const [head = '', first = ''] = textOf(files, 'inspection-points.csv')
        .split(/\r?\n/)
        .filter((line) => line !== '' && !line.startsWith('#'));
      return Number(first.split(',')[head.split(',').indexOf('y')]);
    };
    expect(rows(far) - rows(here)).toBeCloseTo(origin.y, 2);
    expect(far.find(({ name }) => name === 'etched-part.stl')?.what).toMatch(
      /, counted from \(4512000, -37654000\)$/,
    );
  });
});

describe('M9.8 the opposite hand', () => {
  const handoff: Handoff = {
    files: ['inspection', 'template', 'stl', 'section-svg'],
    sections: [{ from: [3, 20], to: [197, 41], name: 'A' }],
  };
  /** mm³ by the triangles, positive where they are counter-clockwise from outside: the divergence theorem. */
  const volumeOf = ({ made: { solid } }: PreparedHandoff) => {
    const corner = (n: number) =>
      [0, 1, 2].map((axis) => solid?.positions[3 * (solid.indices[n] ?? 0) + axis] ?? 0);
    let six = 0;
    for (let n = 0; n < (solid?.indices.length ?? 0); n += 3) {
      const [[ax = 0, ay = 0, az = 0] = [], [bx = 0, by = 0, bz = 0] = [], [cx = 0, cy = 0, cz = 0] = []] = [
        corner(n),
        corner(n + 1),
        corner(n + 2),
      ];
      six += ax * (by * cz - bz * cy) + ay * (bz * cx - bx * cz) + az * (bx * cy - by * cx);
    }
    return six / 6;
  };

  test('has every place at −x, a solid as large, and templates laid out again', () => {
    const drawn = prepared(lid, handoff);
    const other = oppositeHand(drawn);
    expect(other.job.aspect?.isOpposite).toBe(true);
    expect(other.job.name).toMatch(/^Opposite hand .*: Buoy lid$/);
    const places = ({ made }: PreparedHandoff) => made.points?.map(({ at }) => [at.x, at.y]) ?? [];
    expect(places(other)).toEqual(places(drawn).map(([x = 0, y = 0]) => [expect.closeTo(-x, 9), y]));
    const [cut] = other.made.sections ?? [];
    expect([cut?.from, cut?.to]).toEqual([
      { x: -3, y: 20 },
      { x: -197, y: 41 },
    ]);
    expect(cut?.points.map(({ x, depth }) => [x, depth])).toEqual(
      drawn.made.sections?.[0]?.points.map(({ x, depth }) => [expect.closeTo(-x, 9), depth]),
    );
    expect(volumeOf(drawn)).toBeGreaterThan(200 * 120 * 2);
    expect(volumeOf(other) / volumeOf(drawn)).toBeCloseTo(1, 6);
    expect(other.made.templates?.templates.length).toBe(drawn.made.templates?.templates.length);
    expect(other.kit().index.front.thickness).toBe(4);
  });

  test('mirrored again is what it was', () => {
    const drawn = prepared(lid, handoff);
    const again = oppositeHand(oppositeHand(drawn));
    expect(again.job.aspect).toBeUndefined();
    expect(again.job).toEqual(drawn.job);
    expect(again.choices.sections).toEqual(drawn.choices.sections);
    expect(again.made.points).toEqual(drawn.made.points);
    expect(again.made.sections).toEqual(drawn.made.sections);
    expect(again.made.solid).toEqual(drawn.made.solid);
  });

  test('has nothing that was not made', () => {
    expect(madeOf(oppositeHand(prepared(lid, { files: [] })))).toEqual(['lines', 'pictures']);
  });
});

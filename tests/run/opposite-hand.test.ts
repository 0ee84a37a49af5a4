/** Files of the opposite hand (M9.8): the part mirrored about x = 0, ids and levels the same, words to be read. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readJob } from '#job/formats/read-job.ts';
import { HANDOFF_FILES } from '#job/handoff-list.ts';
import { resolveHandoff } from '#job/resolve/resolve-handoff.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { handoffFiles } from '#run/handoff-files.ts';
import type { PreparedHandoff } from '#run/handoff-types.ts';
import { oppositeHand } from '#run/opposite-hand.ts';
import { prepareHandoff } from '#run/prepare-handoff.ts';
import { type RunResult, runJob } from '#run/run-job.ts';
import { buoyLidDrawing, buoyLidJob } from '#support/drawings/small-drawing.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

const jobText = (hand: string | undefined) =>
  JSON.stringify({
    ...buoyLidJob,
    handoff: {
      files: HANDOFF_FILES,
      ...(hand === undefined ? {} : { hand }),
      sections: [{ from: [3, 20], to: [197, 41], name: 'A' }],
      template: {
        holes: {
          at: [
            [-12, 30],
            [212, 95],
          ],
        },
      },
    },
  });

const run = (hand?: string) =>
  runJob({
    jobText: jobText(hand),
    drawingName: 'lid.dxf',
    drawingBytes: new TextEncoder().encode(buoyLidDrawing),
  });

const textOf = ({ files }: RunResult, name: string) => {
  const file = files.find((each) => each.name === name);
  if (file === undefined) throw new Error(`there is no ${name}`);
  return new TextDecoder().decode(file.bytes);
};

/** Vertices of the polylines on the stages' layers, as a reader that knows nothing of Isobath finds them. */
function vertices(text: string): string[] {
  const found: string[] = [];
  for (const part of text.split(/\r?\n\s*0\r?\nLWPOLYLINE\r?\n/).slice(1)) {
    const [entity = ''] = part.split(/\r?\n\s*0\r?\n/);
    const lines = entity.split(/\r?\n/);
    const layer = lines[lines.findIndex((line, n) => n % 2 === 0 && line.trim() === '8') + 1];
    lines.forEach((line, n) => {
      if (n % 2 === 0 && line.trim() === '10') found.push(`${layer} ${lines[n + 1]} ${lines[n + 3]}`);
    });
  }
  return found.sort();
}

const mirrored = (vertex: string) =>
  vertex.replace(/ (-?)([\d.]+) /, (_, minus, x) => ` ${minus === '-' || Number(x) === 0 ? '' : '-'}${x} `);

let asDrawn: RunResult;
let both: RunResult;
beforeAll(async () => {
  asDrawn = await run();
  both = await run('both');
});

describe('M9.8: both hands', { tags: ['long'] }, () => {
  test('every file but the plan is there a second time', () => {
    const names = asDrawn.files.map(({ name }) => name);
    const opposite = names
      .filter((name) => name !== 'plan.json')
      .map((name) => name.replace(/(\.\w+)$/, '-opposite$1'));
    expect(both.files.map(({ name }) => name)).toEqual([...names, ...opposite]);
  });

  test('scribe lines are the mirror of those as drawn, stage for stage', () => {
    const here = vertices(textOf(both, 'scribe.dxf'));
    expect(here.length).toBeGreaterThan(12);
    expect(vertices(textOf(both, 'scribe-opposite.dxf'))).toEqual(here.map(mirrored).sort());
  });

  test('inspection points have the same ids, regions and figures, their places mirrored', () => {
    const rows = (name: string) =>
      textOf(both, name)
        .split('\n')
        .filter((row) => row.startsWith('P'))
        .map((row) => row.split(','));
    const header = textOf(both, 'inspection-points.csv')
      .split('\n')
      .find((row) => row.startsWith('point,'));
    const x = header?.split(',').indexOf('x') ?? -1;
    const there = rows('inspection-points-opposite.csv');
    expect(there.length).toBeGreaterThan(3);
    expect(there.map((row) => row.with(x, String(0 - Number(row[x]))))).toEqual(
      rows('inspection-points.csv'),
    );
  });

  test('words can be read, and the hand stands before the name', async () => {
    const bytes = both.files.find(({ name }) => name === 'traveller-opposite.pdf')?.bytes;
    if (bytes === undefined) throw new Error('there is a traveller');
    const [page] = await readPdf(bytes);
    const words = JSON.stringify(page);
    expect(words).toContain('OPPOSITE');
    expect(words).toContain('mirrored about x = 0');
    expect(textOf(both, 'scribe-opposite.dxf')).toContain('Opposite hand (mirrored about x = 0): Buoy lid');
    expect(textOf(both, 'scribe.dxf')).not.toContain('Opposite');
  });

  test('the plan is one and the same, but for what the job says', () => {
    const plain = JSON.parse(textOf(asDrawn, 'plan.json'));
    const plan = JSON.parse(textOf(both, 'plan.json'));
    expect({ ...plan, job: plain.job }).toEqual(plain);
  });
});

test('M9.8: the opposite hand alone has no file that could be taken for the other', {
  tags: ['long'],
}, async () => {
  const { files } = await run('opposite');
  const names = files.map(({ name }) => name).filter((name) => name !== 'plan.json');
  expect(names.length).toBeGreaterThan(8);
  expect(names.filter((name) => !/-opposite\.\w+$/.test(name))).toEqual([]);
});

test('M9.8: mirrored twice every file has the same bytes', { tags: ['long'] }, async () => {
  const prepared = prepare(asDrawn);
  const { planFile, findings: planFindings } = asDrawn;
  if (planFile === undefined) throw new Error('there is a plan');
  const planned = {
    planFile,
    planFindings,
    planHash: '0'.repeat(64),
    since: undefined,
    origin: undefined,
  };
  const once = await handoffFiles(prepared, planned);
  const twice = await handoffFiles(oppositeHand(oppositeHand(prepared)), planned);
  expect(once.length).toBeGreaterThan(8);
  expect(twice.map(({ name }) => name)).toEqual(once.map(({ name }) => name));
  once.forEach(({ name, bytes }, index) => {
    expect(Buffer.from(twice[index]?.bytes ?? []).equals(Buffer.from(bytes)), name).toBe(true);
  });
});

function prepare({ plan, kit }: RunResult): PreparedHandoff {
  const { jobFile } = readJob(jobText(undefined));
  const job = jobFile && resolveJob(jobFile, 'mm').job;
  if (jobFile === undefined || job === undefined || plan === undefined || kit === undefined)
    throw new Error('the lid can be planned');
  const choices = resolveHandoff(jobFile, 'mm');
  return prepareHandoff({ choices, job, plan, kit, units: { job: 'mm', drawing: 'mm' } });
}

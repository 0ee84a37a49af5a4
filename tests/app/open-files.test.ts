import { describe, expect, test } from 'vitest';
import { openFiles } from '#app/state/opening/open-files.ts';
import { PLAIN_POST } from '#job/formats/post-file.ts';
import { readSurvey } from '#job/survey-csv.ts';

const file = (name: string, content: unknown) => ({
  name,
  bytes: new TextEncoder().encode(
    typeof content === 'string' ? content : JSON.stringify(content, undefined, 2),
  ),
});

const job = file('plate.job.json', {
  format: 'isobath-job',
  version: 1,
  drawing: 'plate.dxf',
  figures: 'shop.figures.json',
  stock: { thickness: 2 },
  process: { bath: 'tank-2' },
  requirements: [],
});
const drawing = file('plate.dxf', '0\nEOF\n');
const shop = {
  format: 'isobath-figures',
  version: 1,
  baths: [{ id: 'tank-2', name: 'tank 2', etches: 'zinc' }],
};
const figures = file('shop.figures.json', shop);

describe('the drawing of the far face', () => {
  const own = file('plate.job.json', {
    format: 'isobath-job',
    version: 1,
    drawing: 'plate.dxf',
    far: { drawing: 'rear.dxf', view: 'far' },
    stock: { thickness: 2 },
    process: {},
    requirements: [],
  });
  const rear = file('rear.dxf', '0\nEOF\n');

  test('is told from that of the near face by the name in the job, in whatever order they come', () => {
    for (const files of [
      [own, drawing, rear],
      [rear, drawing, own],
    ]) {
      const { document } = openFiles(undefined, files);
      expect([document?.drawing, document?.farDrawing]).toEqual([drawing, rear]);
    }
  });

  test('is asked for, and taken when it comes by itself', () => {
    const first = openFiles(undefined, [own, drawing]);
    expect(first.notice?.text).toContain('needs the drawing of the far face, rear.dxf');
    const after = openFiles(first.document, [rear]);
    expect([after.kind, after.document?.drawing, after.document?.farDrawing]).toEqual([
      'step',
      drawing,
      rear,
    ]);
    const farFirst = openFiles(undefined, [own, rear]);
    expect([farFirst.document?.drawing, farFirst.document?.farDrawing]).toEqual([undefined, rear]);
    expect(farFirst.notice?.text).toContain('its drawing, plate.dxf');
  });
});

describe('figures of alloys and baths in the workbench', () => {
  test('a job that names a file of them asks for it', () => {
    const opened = openFiles(undefined, [job, drawing]);
    expect(opened.notice?.text).toContain('needs shop.figures.json');
    expect(openFiles(undefined, [job]).notice?.text).toContain('drawing, plate.dxf and shop.figures.json');
  });
  test('dropped after the job or with it they go into the job, so that it is whole when saved', () => {
    const first = openFiles(undefined, [job, drawing]).document;
    const after = openFiles(first, [figures]);
    expect(after.document?.job.figures).toEqual(shop);
    expect(after.document?.drawing).toBe(drawing);
    const together = openFiles(undefined, [figures, drawing, job]);
    expect(together.document).toEqual(after.document);
  });
  test('faulty ones leave the job as it was, and say what is wrong', () => {
    const first = openFiles(undefined, [job, drawing]).document;
    const opened = openFiles(first, [file('shop.figures.json', { ...shop, baths: [{ id: 'x' }] })]);
    expect(opened.document).toBeUndefined();
    expect(opened.notice?.findings.map(({ code }) => code)).toEqual(['job-key-missing', 'job-key-missing']);
    expect(openFiles(undefined, [figures]).document).toBeUndefined();
  });
});

describe('a post in the workbench', () => {
  const { figures: _, ...plain } = JSON.parse(new TextDecoder().decode(job.bytes));
  const posted = file('plate.job.json', {
    ...plain,
    handoff: { files: ['program'], program: { post: 'router.post.json' } },
  });
  const post = file('router.post.json', PLAIN_POST);

  test('goes into the job with figures or without, whatever the order', () => {
    const { document, notice } = openFiles(undefined, [post, drawing, figures, posted]);
    expect(document?.job.handoff?.program?.post).toEqual(PLAIN_POST);
    expect(document?.job.figures).toEqual(shop);
    expect(notice?.text).toBe('What stands in router.post.json and shop.figures.json now stands in the job.');
  });
  test('is asked for, and a new issue replaces the previous one', () => {
    const first = openFiles(undefined, [posted, drawing]);
    expect(first.notice?.text).toContain('It needs router.post.json: drop that here too.');
    const second = openFiles(first.document, [post]);
    const third = openFiles(second.document, [file('other.post.json', { ...PLAIN_POST, feed: 700 })]);
    expect(third.document?.job.handoff?.program?.post).toMatchObject({ feed: 700 });
  });
  test('that is broken leaves the job as it was', () => {
    const { document } = openFiles(undefined, [posted, drawing]);
    const opened = openFiles(document, [file('router.post.json', '{ "format": "isobath-post", oops')]);
    expect(opened.document).toBeUndefined();
    expect(opened.notice?.findings.map(({ code, place }) => [code, place.file])).toEqual([
      ['job-not-json', 'router.post.json'],
    ]);
  });
});

test('the job of a plan is opened without what was filled in: it follows the bath again', () => {
  const whole = JSON.parse(new TextDecoder().decode(job.bytes));
  const { figures: _, ...own } = whole;
  const filled = {
    ...own,
    process: { bath: 'caustic-aluminium', rateSpread: 0.05 },
    assumed: ['process.rateSpread'],
  };
  const opened = openFiles(undefined, [file('plate.job.json', filled), drawing]);
  expect(opened.document?.job.process).toEqual({ bath: 'caustic-aluminium' });
  expect(opened.document?.job.assumed).toBeUndefined();
  expect(opened.notice).toBeUndefined();
});

describe('the survey of the sheet in the workbench', () => {
  const { figures: _, ...plain } = JSON.parse(new TextDecoder().decode(job.bytes));
  const measured = { thickness: 4, measured: [4.02, 3.97, 4.01] };
  const first = openFiles(undefined, [
    file('plate.job.json', { ...plain, stock: measured }),
    drawing,
  ]).document;
  const gauge = 'No;X;Y;Thickness\n1;40;50;3,92\n2;250;100;4,08\n';

  test('a CSV of a gauge takes the place of readings without places, and says what it was understood as', () => {
    const opened = openFiles(first, [file('sheet-7.csv', gauge)]);
    expect(opened.document?.job.stock).toEqual({
      thickness: 4,
      survey: [
        [40, 50, 3.92],
        [250, 100, 4.08],
      ],
    });
    expect(opened).toMatchObject({ kind: 'step', label: 'add sheet-7.csv', document: { drawing } });
    expect(opened.notice?.text).toContain('survey of the sheet: 2 readings of thickness, 3.92 to 4.08 mm');
    expect(opened.notice?.text).toContain('place of 3 sheet readings');
  });
  test('columns that are not understood are found as on the command line, and the job stays as it is', () => {
    const text = 'x,y,gauge\n40,50,3.92\n';
    const opened = openFiles(first, [file('sheet-7.csv', text)]);
    expect(opened.kind).toBe('refused');
    expect(opened.notice?.findings).toEqual(readSurvey(text, 'sheet-7.csv').findings);
    expect(opened.notice?.findings).toMatchObject([
      { code: 'survey-unclear', facts: { column: 'thickness' } },
    ]);
  });
  test('readings of floors after a dip are no survey, whatever columns they share with one', () => {
    const readings = 'stage,minutes,region,x,y,thickness,note\n2,31,R03,40,50,2.61,\n';
    const opened = openFiles(first, [file('readings.csv', readings)]);
    expect(opened.kind).toBe('refused');
    expect(opened.notice?.findings).toMatchObject([
      { code: 'survey-unclear', facts: { column: 'stage', isAfterADip: true } },
    ]);
  });
});

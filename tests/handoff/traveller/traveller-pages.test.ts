/** How the traveller fills its pages, and what it calls them. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runJob } from '#run/run-job.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

async function pagesOf(sample: string, handoff: object, change: object = {}) {
  const job = JSON.parse(readFileSync(`samples/${sample}.job.json`, 'utf8'));
  const jobText = JSON.stringify({ ...job, ...change, handoff: { files: ['traveller'], ...handoff } });
  const drawingBytes = readFileSync(`samples/${job.drawing}`);
  const { files, plan } = await runJob({ jobText, drawingName: job.drawing, drawingBytes });
  const bytes = files.find(({ name }) => name === 'traveller.pdf')?.bytes ?? new Uint8Array();
  const pages = (await readPdf(bytes)).map(({ text }) => text.replaceAll(/\s+/g, ' '));
  return { pages, stages: plan?.stages.length ?? 0 };
}

test('on Letter in both units each stage has one page with all its steps; none stands alone on the next', {
  tags: ['long'],
}, async () => {
  const { pages, stages } = await pagesOf('gauge-pod-cover', { paper: 'letter', units: 'both' });
  expect(stages).toBe(3);
  for (let stage = 1; stage <= stages; stage++) {
    const its = pages.filter((text) => text.includes(`Stage ${stage} of ${stages} `));
    expect(its).toHaveLength(1);
    expect(its[0]).toMatch(/Peel\..*First dip.*Minutes left.*Second dip.*Next page only when/);
  }
  expect(pages.filter((text) => /^Traveller Step \d+\. Gauge/.test(text))).toHaveLength(stages);
});

test('names the pages where they stand: cover, steps and stages', { tags: ['long'] }, async () => {
  const { pages, stages } = await pagesOf('glider-wing-skin-tapered', { paper: 'letter', units: 'both' });
  const numberOf = (found: RegExp) => pages.findIndex((text) => found.test(text)) + 1;
  const steps = numberOf(/From the clean sheet to the bath/);
  const [first, last] = [numberOf(/Stage 1 of/), numberOf(new RegExp(`Stage ${stages} of ${stages} `))];
  expect(stages).toBeGreaterThan(6);
  // Nine stages in two units need a second page for the cover.
  expect(steps).toBe(3);
  const said = pages[steps - 1] ?? '';
  expect(said).toContain('agree with pages 1 and 2;');
  expect(said).toContain(`Boxes of pages 1 and 2 filled in, steps of page ${steps} stamped to here`);
  expect(said).toContain(`pages ${first} to ${last}`);
  // What can hurt is not left to the second page.
  expect(pages[0]).toMatch(/Caustic bath, hot/);
});

test('a program that a stage is cut by is named with its unit', { tags: ['long'] }, async () => {
  const { pages } = await pagesOf('gauge-pod-cover', { files: ['traveller', 'program'] });
  expect(pages[1]).toContain('Program of this plan, in millimetres (G21).');
});

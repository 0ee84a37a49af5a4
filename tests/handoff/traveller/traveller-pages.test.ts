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
  expect(pages.filter((text) => /^Traveller Step \d+ Part Gauge/.test(text))).toHaveLength(stages);
});

test('names the pages where they stand: cover, steps and stages', { tags: ['long'] }, async () => {
  const { pages, stages } = await pagesOf('glider-wing-skin-tapered', { paper: 'letter', units: 'both' });
  const numberOf = (found: RegExp) => pages.findIndex((text) => found.test(text)) + 1;
  const steps = numberOf(/From the clean sheet to the bath/);
  const [first, last] = [numberOf(/Stage 1 of/), numberOf(new RegExp(`Stage ${stages} of ${stages} `))];
  expect(stages).toBe(12);
  // Twelve stages in two units leave boxes of the cover to the page of the steps, which has room for all of those.
  expect(steps).toBe(2);
  expect(first).toBe(3);
  const said = pages[1];
  expect(said).toContain('agree with pages 1 and 2;');
  expect(said).toContain('Boxes of pages 1 and 2 filled in, steps of page 2 stamped to here');
  expect(said).toContain(`pages ${first} to ${last}`);
  // What can hurt is not left to the second page.
  expect(pages[0]).toMatch(/Caustic bath, hot/);
});

test('twelve stages take one page of the cover, and what went wrong stands below the steps', {
  tags: ['long'],
}, async () => {
  const { pages, stages } = await pagesOf('glider-wing-skin-tapered', { paper: 'a4' });
  expect(pages[0]).toMatch(
    /The run.*Sheet as measured.*Coupon before the run.*Bath before the run.*Caustic bath/,
  );
  expect(pages[1]).toMatch(/Whom to ask.*Receive.*Coupon during the run.*How it hangs/);
  expect(pages[2]).toContain(`Stage 1 of ${stages} `);
  // Thirty-six floors need a second page.
  expect(pages).toHaveLength(2 + stages + 2);
  expect(pages.at(-1)).toMatch(/Bought off, mask on.*Protect.*What went wrong/);
});

test('M7.4 a thin stage asks from where a gauge can tell: 0.12 mm, 0.096 gone at four fifths', {
  tags: ['long'],
}, async () => {
  const { pages } = await pagesOf('glider-wing-skin', {});
  const first = pages.find((text) => text.includes('Stage 1 of 13 ')) ?? '';
  const fourth = pages.find((text) => text.includes('Stage 4 of 13 ')) ?? '';
  // Two points: 4 · 0.01 · √2 / √2 = 0.04 either way; six: 0.0231, where a quarter, 0.024, counts. Both rounded inward.
  expect(first).toMatch(/expect 0\.10 mm\. Under 0\.06 mm or over 0\.13 mm gone/);
  expect(fourth).toMatch(/expect 0\.10 mm\. Under 0\.08 mm or over 0\.12 mm gone/);
  // One reading: 3.2 − 0.096, ± 0.04 and the sheet's 0.05.
  expect(first).toMatch(/G1 R01 3\.10 3\.02–3\.19 3\.08/);
});

test('a program that a stage is cut by is named with its unit', { tags: ['long'] }, async () => {
  const { pages } = await pagesOf('gauge-pod-cover', { files: ['traveller', 'program'] });
  expect(pages[1]).toContain('Program of this plan, in millimetres (G21).');
});

test('a part whose floors are all too narrow for a gauge has no list of thicknesses, and fits Letter', {
  tags: ['long'],
}, async () => {
  const { pages, stages } = await pagesOf('radiator-panel', { paper: 'letter' });
  expect(pages).toHaveLength(2 + stages + 1);
  expect(pages.at(-1)).toMatch(/maskant still on .* No floor has room for a gauge: .* Step Do So that/);
  expect(pages.at(-1)).not.toContain('Under “least”');
});

/** A job that is masked again for each stage: what a run writes, and what it says to whom. */
import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { maskingsText } from '#cli/maskings-text.ts';
import { stageTable } from '#cli/stage-table.ts';
import { wallStepsText } from '#cli/wall-steps-text.ts';
import { runJob } from '#run/run-job.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

async function cover(masking?: string) {
  const job = JSON.parse(readFileSync('samples/gauge-pod-cover.job.json', 'utf8'));
  const process = { ...job.process, ...(masking === undefined ? {} : { masking }) };
  const handoff = { files: ['traveller', 'program'] };
  const result = await runJob({
    jobText: JSON.stringify({ ...job, process, handoff }),
    drawingName: job.drawing,
    drawingBytes: readFileSync('samples/gauge-pod-cover.dxf'),
  });
  const bytesOf = (name: string) =>
    result.files.find((file) => file.name === name)?.bytes ?? new Uint8Array();
  return { ...result, bytesOf, textOf: (name: string) => new TextDecoder().decode(bytesOf(name)) };
}

test('M3.5 the gauge-pod cover runs from its pockets to its sump, and nothing is sealed', {
  tags: ['long'],
}, async () => {
  const { planFile, findings } = await cover('re-mask');
  expect(findings.filter(({ severity }) => severity === 'stop')).toEqual([]);
  expect(planFile?.stages.map(({ number, level, sealed }) => [number, level, sealed])).toEqual([
    [1, 1.2, []],
    [2, 2.2, []],
    [3, 3, []],
  ]);
  for (const { piece, opening, lines } of planFile?.stages ?? []) {
    expect(opening).toEqual(piece);
    expect(lines.every(({ closed }) => closed)).toBe(true);
  }
});

test('M4.7 the same job either way: as long in the bath, and the comparison the same but for which is planned', {
  tags: ['long'],
}, async () => {
  const [oneCoat, coatByCoat] = [(await cover()).planFile, (await cover('re-mask')).planFile];
  expect(coatByCoat?.totals.minutes).toBe(oneCoat?.totals.minutes);
  expect(coatByCoat?.maskings).toEqual(oneCoat?.maskings);
  expect(oneCoat?.masking).toBe('peel-next');
  if (coatByCoat === undefined) throw new Error('a plan');
  const [head, ...rows] = maskingsText(coatByCoat, 'mm');
  expect(head).toMatch(/^masking +coats +stages +minutes/);
  expect(rows.map((row) => row.slice(0, 19))).toEqual(['peel-next          ', 're-mask, as planned']);
  expect(new Set([head, ...rows].map((row) => row?.length)).size).toBe(1);
  expect(stageTable(coatByCoat, { unit: 'mm', color: false })).not.toContain('sealed');
  // The sump in a well, φ = 1: √(3² − 2.2²) beside 3 − 2.2.
  expect(wallStepsText(coatByCoat, 'mm')[1]).toMatch(
    /^3\.000 beside 2\.200 +2\.040 \/ 0\.800 +3\.000 \/ 0\.800 +2\.040 \/ 0\.800$/,
  );
});

test('no machine program cuts a line of a coat that is not on yet, whatever split was asked', {
  tags: ['long'],
}, async () => {
  const { files, textOf } = await cover('re-mask');
  const programs = files.map(({ name }) => name).filter((name) => name.endsWith('.nc'));
  expect(programs).toEqual(['scribe-01.nc', 'scribe-02.nc', 'scribe-03.nc']);
  for (const [index, name] of programs.entries()) {
    expect(textOf(name).match(/Stage \d/g)).toEqual([`Stage ${index + 1}`]);
  }
  expect(textOf('scribe.dxf')).toContain('cut only the layer of the coat that is on');
  expect(textOf('scribe.dxf')).not.toContain('seal the lines');
});

test('the traveller has each stage coated and scribed again, and reports the floors that come of it', {
  tags: ['long'],
}, async () => {
  const pages = await readPdf((await cover('re-mask')).bytesOf('traveller.pdf'));
  const texts = pages.map(({ text }) => text.replaceAll(/\s+/g, ' '));
  expect(pages).toHaveLength(6);
  expect(texts[1]).toContain('Lines of stage 1 and no other');
  expect(texts[1]).not.toContain('Line sealer');
  const [first, second] = texts.slice(2);
  expect(first).toContain(`Minutes as planned ${(1.2 / 0.0297).toFixed(1)} min`);
  expect(first).not.toContain('Old maskant off');
  expect(second).toContain('Old maskant off');
  expect(second).toMatch(/Cut the lines of this stage and no other, 2 in all/);
  expect(texts.join(' ')).not.toMatch(/sealed|sealer whole/);
  // Wells and sump stand at 1.2 mm before stage 2, 2.86 of 4.06 mm left, and at 2.2 after it.
  // A reading asks beyond a quarter of the 0.80 mm etched by then, and the 0.05 mm that the sheet may be off.
  expect(second).toMatch(/R06 2\.06 1\.81–2\.31 1\.86/);
});

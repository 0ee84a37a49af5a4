/** The workbench on paper: one window's worth, with findings in full. */

import { expect, test } from '#support/browser/workbench-page.ts';
import { readPdf } from '#support/handoff/read-pdf.ts';

test('a printed window stands on one page, findings in full', async ({ workbench }) => {
  const pdf = await workbench.pdf({ format: 'A4', landscape: true });
  const pages = await readPdf(new Uint8Array(pdf));
  expect(pages).toHaveLength(1);
  const { text } = pages[0] ?? { text: '' };
  for (const words of ['1.20 2.20 3.00', 'Section', 'What helps most is to gauge', 'not an approval'])
    expect(text).toContain(words);
});

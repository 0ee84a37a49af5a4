/** Travellers of a part that is etched on both faces: one a face, each of which says when to turn the part over. */
import { beforeAll, describe, expect, test } from 'vitest';
import { readPdf } from '#support/handoff/read-pdf.ts';
import { LID, requirements, runLid } from '#support/parts/two-faced-lid.ts';

const words = new Map<string, string>();
const pages = new Map<string, string[]>();
beforeAll(async () => {
  const { files } = await runLid({ requirements, handoff: { files: ['traveller'], paper: 'a4' } }, LID);
  for (const { name, bytes } of files) {
    if (!name.startsWith('traveller')) continue;
    const read = await readPdf(bytes);
    words.set(name, read.map((page) => JSON.stringify(page)).join(' '));
    pages.set(
      name,
      read.map(({ text }) => text.replaceAll(/\s+/g, ' ')),
    );
  }
});

describe('M9.7: a traveller a face', { tags: ['long'] }, () => {
  test('the near one sends to the far face before the part hangs, and before each dip', () => {
    const near = words.get('traveller.pdf') ?? '';
    expect(near).toContain('Near face');
    expect(near).toContain('lay, cut and count the one line of the far face');
    expect(near.match(/Turn over\./g)).toHaveLength(2);
    // The second stage peels nothing on the far face.
    expect(near).toContain('Nothing is peeled on the far face in this stage');
  });

  test('the far one is as seen from it, and states where nothing is peeled', () => {
    const far = words.get('traveller-far.pdf') ?? '';
    expect(far).toContain('seen from it');
    expect(far).toContain('count the 2 lines of the near face');
    expect(far).toContain('Nothing is peeled on this face');
  });

  test('every page says hand and face, and no name is cut off', () => {
    const [near, far] = ['traveller.pdf', 'traveller-far.pdf'].map((name) => pages.get(name) ?? []);
    for (const text of near ?? []) expect(text).toContain('Hand as drawn Face near');
    for (const text of far ?? []) expect(text).toContain('Hand as drawn Face FAR');
    for (const text of [...(near ?? []), ...(far ?? [])]) expect(text).not.toContain('…');
    expect(far?.[0]).toMatch(/Part Buoy lid Drawing and revision buoy-lid.dxf, mirrored about x = 0 /);
    expect(near?.[0]).not.toContain('mirrored');
  });

  test('a floor is gauged only where the other face is not etched: its thickness would depend on both', async () => {
    const { files } = await runLid(
      {
        requirements: [
          { layer: 'ROUND', depth: 0.7 },
          { layer: 'BACK', depth: 0.7, face: 'far' },
        ],
        handoff: { files: ['traveller'] },
      },
      LID,
    );
    const pages = await readPdf(
      files.find(({ name }) => name === 'traveller.pdf')?.bytes ?? new Uint8Array(),
    );
    // The round floor lies wholly before the far one: it is run by the clock.
    expect(JSON.stringify(pages)).toContain('One dip, by the clock');
  });
});

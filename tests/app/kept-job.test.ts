import { describe, expect, it } from 'vitest';
import { redo, startHistory, takeStep, undo } from '#app/state/history.ts';
import {
  cardOf,
  copyOf,
  type KeptJob,
  keptHistory,
  openHistory,
  renamed,
} from '#app/state/keeping/kept-job.ts';
import { EMPTY_DRAFT } from '#app/state/review-draft.ts';
import type { OpenDocument } from '#app/state/workbench-state.ts';
import type { JobFile } from '#job/job-file.ts';

const job: JobFile = {
  format: 'isobath-job',
  version: 1,
  name: 'Buoy lid',
  drawing: 'buoy-lid.dxf',
  stock: { thickness: 4 },
  process: { etchFactor: 1, rate: 0.03 },
  requirements: [],
};
const drawing = { name: 'buoy-lid.dxf', bytes: Uint8Array.of(1, 2, 3) };
const newIssue = { name: 'buoy-lid.dxf', bytes: Uint8Array.of(4, 5) };
const first: OpenDocument = { job, jobFileName: 'buoy-lid.job.json', drawing };
const shaOf = ({ bytes }: { bytes: Uint8Array }) => `sha of ${bytes.join(' ')}`;
const bytesOf = new Map([
  ['sha of 1 2 3', drawing.bytes],
  ['sha of 4 5', newIssue.bytes],
]);

const deeper = { ...first, job: { ...job, levels: 'fewest' as const } };
const history = takeStep(takeStep(startHistory('open', first), { label: 'levels', document: deeper }), {
  label: 'new issue',
  document: { ...deeper, drawing: newIssue },
});

function keptJob(): KeptJob {
  const kept = { history: keptHistory(history, shaOf), draft: EMPTY_DRAFT };
  return { id: 'lid', changed: 1, unit: 'mm', isDeleted: false, ...kept };
}

describe('a job kept and opened again', () => {
  it('has its steps back and forth, each on the drawing that it stood on', () => {
    const again = openHistory(structuredClone(keptHistory(undo(history), shaOf)), bytesOf);
    expect(again.present.document).toEqual(deeper);
    expect(undo(again).present.document).toEqual(first);
    expect(redo(again).present.document.drawing?.bytes).toEqual(newIssue.bytes);
  });

  it('has the drawing of its far face again, and names it among what it stands on', () => {
    const farDrawing = { name: 'back.dxf', bytes: newIssue.bytes };
    const both = startHistory('open', { ...first, farDrawing });
    const kept = structuredClone(keptHistory(both, shaOf));
    expect(openHistory(kept, bytesOf).present.document).toEqual({ ...first, farDrawing });
    expect(cardOf({ ...keptJob(), history: kept }).drawings).toEqual(['sha of 1 2 3', 'sha of 4 5']);
  });

  it('gives one and the same drawing to all steps that stand on it, so that it is read once', () => {
    const { past, present } = openHistory(structuredClone(keptHistory(undo(history), shaOf)), bytesOf);
    expect(present.document.drawing).toBe(past[0]?.document.drawing);
  });

  it('keeps the text that a job was read from with the very job that it gave', () => {
    const asRead = { ...first, asRead: { job, text: '{ "as": "written" }' } };
    const kept = structuredClone(keptHistory(startHistory('open', asRead), shaOf));
    const { document } = openHistory(kept, bytesOf).present;
    expect(document.asRead?.job).toBe(document.job);
  });

  it('names every drawing that a step can come back to', () => {
    expect(cardOf(keptJob()).drawings).toEqual(['sha of 1 2 3', 'sha of 4 5']);
  });

  it('keeps the last hundred steps back', () => {
    let long = startHistory('open', first);
    for (let step = 0; step < 130; step++)
      long = takeStep(long, { label: `${step}`, document: { ...first } });
    expect(keptHistory(long, shaOf).past).toHaveLength(100);
    expect(keptHistory(long, shaOf).past.at(-1)?.label).toBe('128');
  });
});

describe('a job on the list', () => {
  it('is copied without its steps, under a name that marks it as a copy', () => {
    const copy = copyOf(keptJob(), { id: 'other', changed: 2 });
    expect(copy.history.past).toEqual([]);
    expect(copy.history.present.document.job).toEqual({ ...deeper.job, name: 'Buoy lid, copy' });
  });

  it('is renamed by a step that can be undone', () => {
    const { history: steps } = renamed(keptJob(), 'Buoy lid B', 2);
    expect(steps.present.document.job.name).toBe('Buoy lid B');
    expect(undo(steps).present.document.job.name).toBe('Buoy lid');
  });
});

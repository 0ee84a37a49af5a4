import { describe, expect, it } from 'vitest';
import { documentText } from '#app/state/edits/job-text.ts';
import { openFiles } from '#app/state/opening/open-files.ts';
import type { OpenDocument } from '#app/state/workbench-state.ts';
import { finding } from '#findings/finding.ts';

const text = `{"format": "isobath-job", "version": 1, "drawing": "cad/buoy-lid.dxf",
  "stock": {"thickness": 4.0}, "process": {"etchFactor": 1, "rate": 0.03}, "requirements": []}`;
const file = (name: string, content: string) => ({ name, bytes: new TextEncoder().encode(content) });
const jobFile = file('lid.job.json', text);
const drawing = file('buoy-lid.dxf', '0\nEOF\n');
const usable = { isUsable: true, isScribed: false, findings: [] };

function opened(before: OpenDocument | undefined, files: Parameters<typeof openFiles>[1], look = usable) {
  const result = openFiles(before, files, look);
  if (result.kind === 'refused') throw new Error(result.notice.text);
  return result;
}

describe('opening files', () => {
  it('saves a job that nobody changed as it was read, byte for byte, and a changed one in its own hand', () => {
    const { document } = opened(undefined, [jobFile, drawing]);
    expect(documentText(document)).toBe(text);
    const changed = { ...document, job: { ...document.job, name: 'Lid' } };
    expect(JSON.parse(documentText(changed))).toEqual({ ...JSON.parse(text), name: 'Lid' });
    expect(documentText({ ...changed, job: document.job })).toBe(text);
  });

  it('takes a drawing from another folder for the one that the job names there', () => {
    const { document, notice } = opened(undefined, [jobFile, drawing]);
    expect(document.drawing).toBe(drawing);
    expect(notice).toBeUndefined();
  });

  it('reports a drawing of another name used for the one named', () => {
    const { notice } = opened(undefined, [jobFile, file('lid-b.dxf', '')]);
    expect(notice?.text).toContain('lid-b.dxf was taken for it');
  });

  it('makes a new issue of the drawing a step of its job, and another drawing a job of its own', () => {
    const { document } = opened(undefined, [jobFile, drawing]);
    const issue = file('buoy-lid.dxf', '0\nSECTION\n');
    expect(opened(document, [issue])).toMatchObject({
      kind: 'step',
      document: { ...document, drawing: issue },
    });
    const other = opened(document, [file('hatch.dxf', '')]);
    expect(other).toMatchObject({
      kind: 'job',
      document: { job: { drawing: 'hatch.dxf', requirements: [] } },
    });
  });

  it('refuses a drawing of which nothing can be used, with the reason', () => {
    const findings = [finding('drawing-wrong-kind', { is: 'PDF' })];
    const result = openFiles(undefined, [jobFile, drawing], { isUsable: false, isScribed: false, findings });
    expect(result).toMatchObject({ kind: 'refused', notice: { findings } });
  });

  it('refuses a job that is no UTF-8 text, and one of another format', () => {
    const odd = { name: 'odd.job.json', bytes: Uint8Array.of(0x7b, 0xff, 0x7d) };
    expect(openFiles(undefined, [odd])).toMatchObject({ kind: 'refused' });
    const stranger = openFiles(undefined, [file('a.json', '{"format": "x"}')]);
    expect(stranger.notice?.findings.map(({ code }) => code)).toEqual(['job-format-unknown']);
  });
});

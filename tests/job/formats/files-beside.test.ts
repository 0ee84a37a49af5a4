import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { POST_FORMAT } from '#job/formats/check-post.ts';
import { besideNames, fillInFiles } from '#job/formats/files-beside.ts';
import { readFormat } from '#job/formats/read-format.ts';
import { readJob } from '#job/formats/read-job.ts';
import type { JobFile } from '#job/job-file.ts';
import { buoyLidJob } from '#support/drawings/small-drawing.ts';

const text = readFileSync('samples/light-cutter.post.json', 'utf8');
const post = JSON.parse(text);

function jobWith(program: object): JobFile {
  const { jobFile } = readJob(JSON.stringify({ ...buoyLidJob, handoff: { files: ['program'], program } }));
  if (jobFile === undefined) throw new Error('the job is whole');
  return jobFile;
}

const faultsOf = (change: object | string) =>
  readFormat(
    typeof change === 'string' ? change : JSON.stringify({ ...post, ...change }, undefined, 1),
    POST_FORMAT,
    'router.post.json',
  ).findings.map(({ code, place }) => [code, place.file, place.path ?? '', place.line]);

describe('a post in a file beside the job', () => {
  it('takes the place of its name, so that the job that is planned holds it', () => {
    const job = jobWith({ post: 'light-cutter.post.json', split: 'by-stage' });
    expect(besideNames(job)).toEqual(['light-cutter.post.json']);
    const { jobFile, findings } = fillInFiles(job, new Map([['light-cutter.post.json', text]]));
    expect(findings).toEqual([]);
    expect(jobFile?.handoff?.program).toEqual({ post, split: 'by-stage' });
    expect(jobFile === undefined ? [] : besideNames(jobFile)).toEqual([]);
  });

  it('changes nothing of a job that holds its post itself', () => {
    const job = jobWith({ post });
    expect(besideNames(job)).toEqual([]);
    expect(fillInFiles(job, new Map())).toEqual({ jobFile: job, findings: [] });
  });

  it('file-missing: a post that is not there', () => {
    const { jobFile, findings } = fillInFiles(jobWith({ post: 'router.post.json' }), new Map());
    expect(jobFile).toBeUndefined();
    expect(findings.map(({ code, facts, place }) => [code, facts, place])).toEqual([
      ['file-missing', { file: 'router.post.json' }, { path: 'handoff.program.post' }],
    ]);
  });

  it.each([
    ['job-not-json', '{ "format": "isobath-post",\n nonsense', '', 2],
    ['job-format-unknown', { format: 'isobath-job' }, 'format', undefined],
    ['job-version-unknown', { version: 7 }, 'version', undefined],
    ['job-key-unknown', { fead: 3 }, 'fead', 27],
    ['job-key-missing', { feed: undefined }, 'feed', 1],
    ['job-value-wrong', { unit: 'furlong' }, 'unit', 4],
    ['job-value-wrong', { toolOn: [3] }, 'toolOn[0]', 11],
    ['job-value-wrong', { toolOn: ['M3 (größer)'] }, 'toolOn[0]', 11],
    ['job-value-wrong', { footer: ['M5\nG0 Z-5'] }, 'footer[0]', 21],
    ['job-value-wrong', { unit: 'in', decimals: 4 }, 'decimals', 5],
    ['job-value-wrong', { safeHeight: -1 }, 'safeHeight', 8],
  ])('%s: a bad post is reported with its file, path and line (%#)', (code, change, path, line) => {
    expect(faultsOf(change)).toEqual([[code, 'router.post.json', path, line]]);
  });
});

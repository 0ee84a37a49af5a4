/** Each sample's job with every file of the hand-off chosen and cut along a slanting line: what must be the same bytes everywhere. */
import { readdirSync, readFileSync } from 'node:fs';
import { HANDOFF_FILES } from '#job/handoff-list.ts';

export interface SampleInput {
  /** Of the sample, as its job file is named. */
  readonly name: string;
  readonly jobText: string;
  readonly drawingName: string;
  readonly drawingBytes: Uint8Array;
}

/** In drawing coordinates, from edge to edge at no round angle; the shortest sheet is 24 units wide. */
const CUTS = [{ from: [1, 3], to: [33, 19], name: 'slanting' }];

export function samplesWithEveryFile(): SampleInput[] {
  return readdirSync('samples')
    .filter((file) => file.endsWith('.job.json'))
    .sort()
    .map((file) => {
      const job = JSON.parse(readFileSync(`samples/${file}`, 'utf8'));
      job.handoff = { files: HANDOFF_FILES, date: '2026-05-31', sections: CUTS };
      return {
        name: file.replace('.job.json', ''),
        jobText: JSON.stringify(job),
        drawingName: job.drawing,
        drawingBytes: readFileSync(`samples/${job.drawing}`),
      };
    });
}

/** The sample jobs that come with the workbench; the first is open when it starts. */
import type { PartPicture } from '#app/state/part-picture.ts';
import type { DrawingFile } from '#app/worker/plan-service.ts';
import { filesNamed } from '#run/files-named.ts';
import PICTURES from './sample-pictures.json' with { type: 'json' };

export interface Sample {
  /** Name of the job file, beside the page. */
  readonly file: string;
  readonly title: string;
  /** What it shows, in a few words. */
  readonly teaches: string;
}

export const SAMPLES: readonly Sample[] = [
  { file: 'gauge-pod-cover.job.json', title: 'Gauge-pod cover', teaches: '3 levels, a ring' },
  {
    file: 'shutter-bay-grid.job.json',
    title: 'Observatory shutter, in inches',
    teaches: '14 bays, shared lines',
  },
  {
    file: 'glider-wing-skin.job.json',
    title: 'Survey glider, lower skin',
    teaches: 'wide floors, root to tip',
  },
  {
    file: 'glider-wing-skin-tapered.job.json',
    title: 'Survey glider, tapered lower skin',
    teaches: 'tapers made in steps',
  },
  {
    file: 'gauge-pod-cover-this-sheet.job.json',
    title: 'Pod cover on a gauged sheet',
    teaches: 'thickness place by place',
  },
  {
    file: 'shutter-bay-grid-edges.job.json',
    title: 'Shutter with its edges held',
    teaches: 'how far lines may be off',
  },
  {
    file: 'current-meter-cover.job.json',
    title: 'Current-meter cover, both faces',
    teaches: 'a web between two faces',
  },
  {
    file: 'radiator-panel.job.json',
    title: 'Radiator panel, cut through',
    teaches: 'slots on tabs, fold lines',
  },
  {
    file: 'hatch-from-supplier.job.json',
    title: 'Deck hatch, a drawing with faults',
    teaches: 'gaps and loose lines',
  },
];

/** How it comes out planned; none of a sample that was added since the pictures were drawn. */
export function samplePicture({ file }: Sample): PartPicture | undefined {
  return (PICTURES as Readonly<Record<string, PartPicture>>)[file];
}

/** The job file and the files that it names. */
export async function fetchSample({ file }: Sample): Promise<DrawingFile[]> {
  const job = await fetchFile(file);
  const named = filesNamed(new TextDecoder().decode(job.bytes));
  if ('refused' in named) throw new Error(`${file} is not a job`);
  return [job, ...(await Promise.all([named.drawing, ...named.beside].map(fetchFile)))];
}

async function fetchFile(name: string): Promise<DrawingFile> {
  const answer = await fetch(`./${name}`);
  if (!answer.ok) throw new Error(`${name} could not be fetched: ${answer.status}`);
  return { name, bytes: new Uint8Array(await answer.arrayBuffer()) };
}

/**
 * Files that a job names beside itself, as it names its drawing: their contents take the place of their names before anything
 * else is resolved, so that all that follows, and the job in plan.json, holds the whole of what was decided.
 */
import { type Finding, finding } from '#findings/finding.ts';
import type { JobFile } from './job-file.ts';
import { readFigures } from './read-figures.ts';
import type { FormatReading } from './read-format.ts';
import { readPost } from './read-post.ts';

/** Texts by the name that stands in the job. */
export type BesideTexts = ReadonlyMap<string, string>;

/** A key of the job that holds either a value or the name of a file with that value. */
interface Slot {
  readonly path: string;
  /** As the file says it in its key `format`. */
  readonly format: string;
  readonly nameIn: (job: JobFile) => string | undefined;
  readonly fill: (job: JobFile, name: string, text: string) => FormatReading<JobFile>;
}

const SLOTS: readonly Slot[] = [
  slot({
    path: 'figures',
    format: 'isobath-figures',
    held: ({ figures }) => figures,
    put: (job, figures) => ({ ...job, figures }),
    read: readFigures,
  }),
  slot({
    path: 'handoff.program.post',
    format: 'isobath-post',
    held: ({ handoff }) => handoff?.program?.post,
    put: (job, post) => ({
      ...job,
      handoff: { ...job.handoff, program: { ...job.handoff?.program, post } },
    }),
    read: readPost,
  }),
];

/** Names of the files that the job needs beside its drawing, each once. */
export function besideNames(job: JobFile): string[] {
  return [...new Set(SLOTS.flatMap(({ nameIn }) => nameIn(job) ?? []))];
}

/** The job with each name's content in its place; undefined when one is missing or cannot be used. */
export function takeInBeside(
  job: JobFile,
  texts: BesideTexts,
): { readonly jobFile?: JobFile; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  let whole = job;
  let isWhole = true;
  for (const { path, nameIn, fill } of SLOTS) {
    const name = nameIn(job);
    if (name === undefined) continue;
    const text = texts.get(name);
    const filled: FormatReading<JobFile> =
      text === undefined
        ? { findings: [finding('file-missing', { file: name }, { path })] }
        : fill(whole, name, text);
    findings.push(...filled.findings);
    whole = filled.value ?? whole;
    isWhole &&= filled.value !== undefined;
  }
  return isWhole ? { jobFile: whole, findings } : { findings };
}

/** Whether a text says that it is of a format that stands beside jobs; one that is no JSON further on may say so as well. */
export function isBesideText(text: string): boolean {
  return slotOf(text) !== undefined;
}

/** The job with a file of such a format put into its place, whatever stood there. */
export function putBeside(job: JobFile, name: string, text: string): FormatReading<JobFile> {
  return slotOf(text)?.fill(job, name, text) ?? { value: job, findings: [] };
}

function slotOf(text: string): Slot | undefined {
  const format = /^\s*\{[^{}[\]]*"format"\s*:\s*"([^"]*)"/.exec(text)?.[1];
  return SLOTS.find((each) => each.format === format);
}

function slot<Value>({
  held,
  put,
  read,
  ...told
}: Pick<Slot, 'path' | 'format'> & {
  readonly held: (job: JobFile) => Value | string | undefined;
  readonly put: (job: JobFile, value: Value) => JobFile;
  readonly read: (text: string, file: string) => FormatReading<Value>;
}): Slot {
  return {
    ...told,
    nameIn: (job) => {
      const value = held(job);
      return typeof value === 'string' ? value : undefined;
    },
    fill: (job, name, text) => {
      const { value, findings } = read(text, name);
      return value === undefined ? { findings } : { value: put(job, value), findings };
    },
  };
}

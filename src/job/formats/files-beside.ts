/**
 * Files that a job names beside itself, as it names its drawing: their contents take the place of their names before anything
 * else is resolved, so that all that follows, and the job in plan.json, holds the whole of what was decided.
 */
import { type Finding, finding } from '#findings/finding.ts';
import { type FieldPath, fieldIn, setField } from '#job/fields/edit-field.ts';
import type { JobFile } from '#job/job-file.ts';
import { isSurveyText, readSurvey } from '#job/survey-csv.ts';
import { FIGURES_FORMAT } from './check-figures.ts';
import { POST_FORMAT } from './check-post.ts';
import { type Format, type FormatReading, readFormat } from './read-format.ts';
import { spellPath } from './read-json.ts';

/** Texts by the name that stands in the job. */
export type BesideTexts = ReadonlyMap<string, string>;

/** A key of the job that holds either a value or the name of a file with that value. */
interface Slot {
  readonly path: FieldPath;
  readonly read: (text: string, file: string) => FormatReading<unknown>;
  /** Whether a text says that it is such a file; one with faults further on may say so as well. */
  readonly isOne: (text: string) => boolean;
}

const SLOTS: readonly Slot[] = [
  formatSlot(['figures'], FIGURES_FORMAT),
  formatSlot(['handoff', 'program', 'post'], POST_FORMAT),
  { path: ['stock', 'survey'], read: readSurvey, isOne: isSurveyText },
];

function formatSlot(path: FieldPath, format: Format<unknown>): Slot {
  return {
    path,
    read: (text, file) => readFormat(text, format, file),
    isOne: (text) => /^\s*\{[^{}[\]]*"format"\s*:\s*"([^"]*)"/.exec(text)?.[1] === format.format,
  };
}

/** Names of the files that the job needs beside its drawing, each once. */
export function besideNames(job: JobFile): string[] {
  return [...new Set(SLOTS.flatMap((slot) => nameIn(job, slot) ?? []))];
}

/** The job with each name's content in its place; undefined when one is missing or cannot be used. */
export function fillInFiles(
  job: JobFile,
  texts: BesideTexts,
): { readonly jobFile?: JobFile; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  let whole = job;
  let isWhole = true;
  for (const slot of SLOTS) {
    const name = nameIn(job, slot);
    if (name === undefined) continue;
    const text = texts.get(name);
    const filled: FormatReading<JobFile> =
      text === undefined
        ? { findings: [finding('file-missing', { file: name }, { path: spellPath(slot.path) })] }
        : fill(whole, slot, { name, text });
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
  const slot = slotOf(text);
  return slot === undefined ? { value: job, findings: [] } : fill(job, slot, { name, text });
}

function slotOf(text: string): Slot | undefined {
  return SLOTS.find(({ isOne }) => isOne(text));
}

function nameIn(job: JobFile, { path }: Slot): string | undefined {
  const held = fieldIn(job, path);
  return typeof held === 'string' ? held : undefined;
}

function fill(
  job: JobFile,
  { path, read }: Slot,
  { name, text }: { readonly name: string; readonly text: string },
): FormatReading<JobFile> {
  const { value, findings } = read(text, name);
  return value === undefined ? { findings } : { value: setField(job, path, value), findings };
}

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
  /** A file so named can be nothing else, whatever stands in it. */
  readonly named?: RegExp;
  /** Gives way to it. */
  readonly inPlaceOf?: FieldPath;
}

const SURVEY: FieldPath = ['stock', 'survey'];

const SLOTS: readonly Slot[] = [
  formatSlot(['figures'], FIGURES_FORMAT),
  formatSlot(['handoff', 'program', 'post'], POST_FORMAT),
  {
    path: SURVEY,
    read: readSurvey,
    isOne: isSurveyText,
    named: /\.[ct]sv$/i,
    inPlaceOf: ['stock', 'measured'],
  },
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

interface BesideFile {
  readonly name: string;
  readonly text: string;
}

/** Whether a file is, or says that it is, of a format that stands beside jobs; one that is no JSON further on may say so as well. */
export function isBesideFile(file: BesideFile): boolean {
  return slotOf(file) !== undefined;
}

/** Whether it is the survey of the sheet that such a file would give. */
export function isSurveyFile(file: BesideFile): boolean {
  return slotOf(file)?.path === SURVEY;
}

/** The job with a file of such a format put into its place, whatever stood there. */
export function putBeside(job: JobFile, file: BesideFile): FormatReading<JobFile> {
  const slot = slotOf(file);
  if (slot === undefined) return { value: job, findings: [] };
  const { inPlaceOf } = slot;
  return fill(inPlaceOf === undefined ? job : setField(job, inPlaceOf, undefined), slot, file);
}

function slotOf({ name, text }: BesideFile): Slot | undefined {
  return SLOTS.find(({ isOne }) => isOne(text)) ?? SLOTS.find(({ named }) => named?.test(name) === true);
}

function nameIn(job: JobFile, { path }: Slot): string | undefined {
  const held = fieldIn(job, path);
  return typeof held === 'string' ? held : undefined;
}

function fill(job: JobFile, { path, read }: Slot, { name, text }: BesideFile): FormatReading<JobFile> {
  const { value, findings } = read(text, name);
  return value === undefined ? { findings } : { value: setField(job, path, value), findings };
}

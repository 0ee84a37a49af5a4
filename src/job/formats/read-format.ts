/**
 * Reads the text of a file of a format of ours: a job, or a file that a job names. Every fault is gathered, with its path and
 * line; a value comes back only when there is none.
 */
import * as z from 'zod/mini';
import { type Finding, finding, hasStop, type Place } from '#findings/finding.ts';
import { explainIssues } from './explain-issues.ts';
import { type JsonPath, type PlaceOf, readJson, spellPath } from './read-json.ts';

export interface Format<Value> {
  /** As the key `format` says it. */
  readonly format: string;
  readonly version: number;
  readonly schema: z.ZodMiniType<Value>;
  /** What the file must keep to beyond the shape of its values, looked for in the file as found. */
  readonly check: (value: unknown, placeOf: PlaceOf) => readonly Finding[];
}

export interface FormatReading<Value> {
  readonly value?: Value;
  readonly findings: readonly Finding[];
}

/** `file` is the name for findings; left out for the job itself. */
export function readFormat<Value>(text: string, format: Format<Value>, file?: string): FormatReading<Value> {
  const ofFile = file === undefined ? {} : { file };
  const json = readJson(text);
  if ('expected' in json) {
    const { line, found, expected } = json;
    return { findings: [finding('job-not-json', { found, expected }, { ...ofFile, line })] };
  }
  const { value, lines, doubledKeys } = json;
  const findings: Finding[] = [];
  // The line of a key that is missing is that of the object it is missing from.
  const place = (path: JsonPath) => {
    const spelled = spellPath(path);
    const line = lines.get(spelled) ?? lines.get(spellPath(path.slice(0, -1)));
    return { ...ofFile, path: spelled, ...(line === undefined ? {} : { line }) };
  };

  const stranger = findStranger(value, format, ofFile);
  if (stranger !== undefined) return { findings: [stranger] };
  for (const path of doubledKeys) {
    findings.push(finding('job-key-doubled', { key: String(path.at(-1)) }, place(path)));
  }
  // A file is read once or twice: code made for it would cost more than it saves.
  const parsed = z.safeParse(format.schema, value, { jitless: true });
  if (!parsed.success) {
    findings.push(
      ...explainIssues(parsed.error.issues, { root: value, placeOf: place, schema: format.schema }),
    );
  }
  findings.push(...format.check(value, place));
  if (!parsed.success || hasStop(findings)) return { findings };
  return { value: parsed.data, findings };
}

/** A file of another kind or another version: what else is in it can't be judged. */
function findStranger(
  value: unknown,
  wanted: { readonly format: string; readonly version: number },
  ofFile: Place,
): Finding | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return finding('job-format-unknown', { found: 'no object at all', wanted: wanted.format }, ofFile);
  }
  const { format, version } = value as { readonly format?: unknown; readonly version?: unknown };
  if (format !== wanted.format) {
    const found = format === undefined ? 'of no format' : `of format ${JSON.stringify(format)}`;
    return finding('job-format-unknown', { found, wanted: wanted.format }, { ...ofFile, path: 'format' });
  }
  if (version !== wanted.version && version !== undefined) {
    return finding(
      'job-version-unknown',
      { found: JSON.stringify(version), known: wanted.version },
      { ...ofFile, path: 'version' },
    );
  }
  return undefined;
}

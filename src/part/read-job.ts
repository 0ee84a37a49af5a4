/** Reads the text of a job file. Every fault is gathered, with its path and line; a job comes back only when there is none. */
import { type Finding, finding, hasStop } from '#findings/finding.ts';
import { checkChoices } from './check-choices.ts';
import { explainIssues } from './explain-issues.ts';
import { type JobFile, jobFileSchema } from './job-file.ts';
import { type JsonPath, readJson, spellPath } from './read-json.ts';

export interface JobReading {
  readonly jobFile?: JobFile;
  readonly findings: readonly Finding[];
}

const FORMAT = 'isobath-job';
const VERSION = 1;

export function readJob(text: string): JobReading {
  const json = readJson(text);
  if ('expected' in json) {
    const { line, found, expected } = json;
    return { findings: [finding('job-not-json', { found, expected }, { line })] };
  }
  const { value, lines, doubledKeys } = json;
  const findings: Finding[] = [];
  // The line of a key that is missing is that of the object it is missing from.
  const place = (path: JsonPath) => {
    const spelled = spellPath(path);
    const line = lines.get(spelled) ?? lines.get(spellPath(path.slice(0, -1)));
    return { path: spelled, ...(line === undefined ? {} : { line }) };
  };

  const stranger = findStranger(value);
  if (stranger !== undefined) return { findings: [stranger] };
  for (const path of doubledKeys) {
    findings.push(finding('job-key-doubled', { key: String(path.at(-1)) }, place(path)));
  }
  const parsed = jobFileSchema.safeParse(value);
  if (!parsed.success)
    findings.push(
      ...explainIssues(parsed.error.issues, { root: value, schema: jobFileSchema, placeOf: place }),
    );
  findings.push(...checkChoices(value, place));
  if (!parsed.success || hasStop(findings)) return { findings };
  return { jobFile: parsed.data, findings };
}

/** A file of another kind or another version: what else is in it can't be judged. */
function findStranger(value: unknown): Finding | undefined {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) {
    return finding('job-format-unknown', { found: 'no object at all' });
  }
  const { format, version } = value as { readonly format?: unknown; readonly version?: unknown };
  if (format !== FORMAT) {
    const found = format === undefined ? 'of no format' : `of format ${JSON.stringify(format)}`;
    return finding('job-format-unknown', { found }, { path: 'format' });
  }
  if (version !== VERSION && version !== undefined) {
    return finding(
      'job-version-unknown',
      { found: JSON.stringify(version), known: VERSION },
      { path: 'version' },
    );
  }
  return undefined;
}

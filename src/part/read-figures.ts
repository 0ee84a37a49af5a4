/**
 * The figures that a job brings along: inline, or in a file of their own, which is read here and then stands inline as if it
 * had been written there. Faults of the file are told as those of the job are, with its name before the path.
 */
import { type FiguresFile, figuresSchema } from '#bath/figures-file.ts';
import { type Finding, finding, hasStop } from '#findings/finding.ts';
import { checkFigures } from './check-figures.ts';
import { explainIssues } from './explain-issues.ts';
import type { JobFile } from './job-file.ts';
import { type JsonPath, readJson, spellPath } from './read-json.ts';

export interface FiguresReading {
  readonly figures?: FiguresFile;
  readonly findings: readonly Finding[];
}

const FORMAT = 'isobath-figures';
const VERSION = 1;

/** Findings: `figures-file-unusable`, and those of keys and values. */
export function readFigures(text: string, file: string): FiguresReading {
  const unusable = (facts: { found: string; expected: string }, line?: number): FiguresReading => ({
    findings: [finding('figures-file-unusable', { file, ...facts }, { path: file, ...(line && { line }) })],
  });
  const json = readJson(text);
  if ('expected' in json) return unusable({ found: json.found, expected: json.expected }, json.line);
  const { value, lines, doubledKeys } = json;
  const { format, version } = (value ?? {}) as { readonly format?: unknown; readonly version?: unknown };
  if (format !== FORMAT) {
    return unusable({ found: `the format ${JSON.stringify(format) ?? 'nothing'}`, expected: `"${FORMAT}"` });
  }
  if (version !== VERSION) {
    return unusable({
      found: `the version ${JSON.stringify(version) ?? 'nothing'}`,
      expected: `version ${VERSION}`,
    });
  }
  const place = (path: JsonPath) => {
    const spelled = spellPath(path);
    const line = lines.get(spelled) ?? lines.get(spellPath(path.slice(0, -1)));
    return { path: `${file}: ${spelled}`, ...(line === undefined ? {} : { line }) };
  };
  const findings = doubledKeys.map((path) =>
    finding('job-key-doubled', { key: String(path.at(-1)) }, place(path)),
  );
  const parsed = figuresSchema.safeParse(value);
  if (!parsed.success) {
    findings.push(
      ...explainIssues(parsed.error.issues, { root: value, schema: figuresSchema, placeOf: place }),
    );
  }
  findings.push(...checkFigures(value, [], place));
  return parsed.success && !hasStop(findings) ? { figures: parsed.data, findings } : { findings };
}

/** The job with the figures that it names standing in it; `text` is that file, where it is there. */
export function takeInFigures(
  jobFile: JobFile,
  text: string | undefined,
): { readonly jobFile?: JobFile; readonly findings: readonly Finding[] } {
  const { figures: named } = jobFile;
  if (typeof named !== 'string') return { jobFile, findings: [] };
  if (text === undefined) {
    return { findings: [finding('figures-file-missing', { file: named }, { path: 'figures' })] };
  }
  const { figures, findings } = readFigures(text, named);
  return figures === undefined ? { findings } : { jobFile: { ...jobFile, figures }, findings };
}

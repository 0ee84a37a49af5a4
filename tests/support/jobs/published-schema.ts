/** The published JSON Schemas as another program checks files by them: Ajv, an independent validator (draft 2020-12). */
import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import type { FileKind } from './json-schemas.ts';

const ajv = new Ajv2020({ allErrors: true, strictTypes: false });
// The pattern beside it says what a day is.
ajv.addFormat('date', true);

const compiled = new Map<FileKind, ValidateFunction>();

const KIND_OF_FORMAT: Readonly<Record<string, FileKind>> = {
  'isobath-job': 'job',
  'isobath-plan': 'plan',
  'isobath-run': 'readings',
  'isobath-review': 'review',
  'isobath-figures': 'figures',
  'isobath-post': 'post',
};

/** Places and reasons of what the schema objects to; of an unfinished file, what it leaves out is none. */
export function schemaFaults(kind: FileKind, value: unknown, isUnfinished = false): string[] {
  const validate = compiled.get(kind) ?? ajv.compile(publishedSchema(kind));
  compiled.set(kind, validate);
  validate(value);
  return (validate.errors ?? [])
    .filter(({ keyword }) => !isUnfinished || keyword !== 'required')
    .map(({ instancePath, message }) => `${instancePath}: ${message}`);
}

/** Throws for a file of one of Isobath's formats that does not keep to its published schema; a plan and a review by what they hold too. */
export function keepToSchema(value: unknown, isUnfinished = false): void {
  const { format, job, plan } = (value ?? {}) as {
    format?: unknown;
    job?: unknown;
    plan?: { file?: unknown };
  };
  const kind = typeof format === 'string' ? KIND_OF_FORMAT[format] : undefined;
  if (kind === undefined) return;
  const faults = schemaFaults(kind, value, isUnfinished);
  if (faults.length > 0)
    throw new Error(`The ${kind} file does not keep to its schema: ${faults.join('; ')}`);
  if (kind === 'plan') keepToSchema(job);
  if (kind === 'review') keepToSchema(plan?.file);
}

function publishedSchema(kind: FileKind): object {
  return JSON.parse(
    readFileSync(new URL(`../../../docs/schemas/${kind}.schema.json`, import.meta.url), 'utf8'),
  );
}

/** The published JSON Schemas as another program checks files by them: Ajv, an independent validator (draft 2020-12). */
import { readFileSync } from 'node:fs';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import type { FileKind } from './json-schemas.ts';

const ajv = new Ajv2020({ allErrors: true, strictTypes: false });
// The pattern beside it says what a day is.
ajv.addFormat('date', true);

const compiled = new Map<FileKind, ValidateFunction>();

/** Places and reasons of what the schema objects to. */
export function schemaFaults(kind: FileKind, value: unknown): string[] {
  const validate = compiled.get(kind) ?? ajv.compile(publishedSchema(kind));
  compiled.set(kind, validate);
  validate(value);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath}: ${message}`);
}

function publishedSchema(kind: FileKind): object {
  return JSON.parse(
    readFileSync(new URL(`../../../docs/schemas/${kind}.schema.json`, import.meta.url), 'utf8'),
  );
}

/** Scribe templates, to cut and on paper. */
import { templateFiles } from '#handoff/template/template-files.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'template'> = async ({ choices, templates, units, planHash, origin, fonts }) =>
  templateFiles(templates, {
    planHash,
    unit: units.drawing,
    origin,
    date: choices.date,
    fonts: await fonts(),
  });

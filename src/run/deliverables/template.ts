/** Scribe templates, to cut and on paper. */
import { templateFiles } from '#handoff/template/template-files.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'template'> = ({ choices, templates, units, planHash, origin }) =>
  templateFiles(templates, { planHash, unit: units.drawing, origin, date: choices.date });

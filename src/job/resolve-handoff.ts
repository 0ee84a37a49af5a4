/** The hand-off chosen by a job, in millimetres, every default filled in. */
import type * as z from 'zod/mini';
import type { Sourced } from '#bath/provenance.ts';
import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import {
  type CuttingChoices,
  type ProgramChoices,
  resolveCutting,
  resolveProgram,
} from './cutting-choices.ts';
import { INSPECTION_DEFAULTS } from './handoff-defaults.ts';
import type { HANDOFF_FILES, handoffSchema } from './handoff-schema.ts';
import { DEFAULT_UNITS } from './job-defaults.ts';
import { jobMillimetres } from './job-figures.ts';
import type { JobFile } from './job-file.ts';
import { drawnPoint } from './resolve-taper.ts';
import { resolveTemplate, type TemplateChoices } from './template-choices.ts';

export type HandoffFile = (typeof HANDOFF_FILES)[number];

/** A cut that the job asks for, mm in the drawing's frame. */
export interface ChosenCut {
  readonly name: string;
  readonly from: Point;
  readonly to: Point;
  /** Path in the job file, for findings; undefined for the cut made where none is chosen. */
  readonly path: string | undefined;
}

export interface HandoffChoices {
  readonly files: readonly HandoffFile[];
  readonly paper: 'a4' | 'a3';
  /** `2026-05-31` */
  readonly date: string | undefined;
  readonly issue: { readonly number: string | undefined; readonly by: string | undefined };
  readonly inspection: { readonly margin: number; readonly spacing: number };
  /** Empty: the job chooses none. */
  readonly sections: readonly ChosenCut[];
  readonly scribe: CuttingChoices;
  readonly program: ProgramChoices;
  readonly template: TemplateChoices;
}

export function resolveHandoff(jobFile: JobFile, drawingUnit: LengthUnit): HandoffChoices {
  const given: z.infer<typeof handoffSchema> = jobFile.handoff ?? {};
  const unit = jobFile.units ?? DEFAULT_UNITS;
  const millimetres = (length: number | undefined, otherwise: Sourced) =>
    length === undefined ? otherwise.value : jobMillimetres(length, unit);
  return {
    files: given.files ?? [],
    paper: given.paper ?? 'a4',
    date: given.date,
    issue: { number: given.issue?.number, by: given.issue?.by },
    inspection: {
      margin: millimetres(given.inspection?.margin, INSPECTION_DEFAULTS.margin),
      spacing: millimetres(given.inspection?.spacing, INSPECTION_DEFAULTS.spacing),
    },
    sections: (given.sections ?? []).map(({ from, to, name }, index) => ({
      name: name ?? cutName(index),
      from: drawnPoint(from, drawingUnit),
      to: drawnPoint(to, drawingUnit),
      path: `handoff.sections[${index}]`,
    })),
    scribe: resolveCutting(given.scribe, unit),
    program: resolveProgram(given.program, unit),
    template: resolveTemplate(given.template, { unit, drawingUnit, paper: given.paper ?? 'a4' }),
  };
}

/** A, B, … Z, then 27, 28, …: sections are lettered on drawings (ISO 128). */
export function cutName(index: number): string {
  return index < 26 ? String.fromCharCode(65 + index) : String(index + 1);
}

/** The hand-off chosen by a job, in millimetres, every default filled in. */
import type * as z from 'zod/mini';
import type { Point } from '#geometry/point.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { type ProgramChoices, resolveProgram } from './cutting-choices.ts';
import type { HANDOFF_FILES, handoffSchema } from './handoff-schema.ts';
import { DEFAULT_UNITS } from './job-defaults.ts';
import { jobMillimetres } from './job-figures.ts';
import type { JobFile } from './job-file.ts';

export type HandoffFile = (typeof HANDOFF_FILES)[number];

export interface Cut {
  readonly from: Point;
  readonly to: Point;
}

export interface HandoffChoices {
  readonly files: readonly HandoffFile[];
  readonly paper: 'a4' | 'a3';
  /** `2026-05-31` */
  readonly date: string | undefined;
  readonly inspection: { readonly margin: number; readonly spacing: number };
  readonly program: ProgramChoices;
  /** Undefined: the longest cut through most levels. */
  readonly sections: readonly Cut[] | undefined;
}

/** mm. Clear of a wall by as much as an ultrasonic probe is wide, and about a hand's length apart: both our own choice. */
const DEFAULT_MARGIN = 3;
const DEFAULT_SPACING = 150;

/** `drawingUnit` is the unit that the drawing was read in: points are in it. */
export function resolveHandoff(jobFile: JobFile, drawingUnit: LengthUnit): HandoffChoices {
  const given: z.infer<typeof handoffSchema> = jobFile.handoff ?? {};
  const unit = jobFile.units ?? DEFAULT_UNITS;
  const millimetres = (length: number | undefined, otherwise: number) =>
    length === undefined ? otherwise : jobMillimetres(length, unit);
  const drawn = ([x, y]: readonly [number, number]): Point => {
    const scale = millimetresIn(drawingUnit);
    return { x: x * scale, y: y * scale };
  };
  return {
    files: given.files ?? [],
    paper: given.paper ?? 'a4',
    date: given.date,
    inspection: {
      margin: millimetres(given.inspection?.margin, DEFAULT_MARGIN),
      spacing: millimetres(given.inspection?.spacing, DEFAULT_SPACING),
    },
    program: resolveProgram(given.program, unit),
    sections: given.sections?.map(({ from, to }) => ({ from: drawn(from), to: drawn(to) })),
  };
}

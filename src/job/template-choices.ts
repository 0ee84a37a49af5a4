/**
 * How the scribe template is made: the knife that runs in its slots, the bridges that hold it together, the metal or film
 * between slots, its margin and tooling holes, and what it stretches by. In the job, lengths are in its own unit, and holes
 * are points in drawing coordinates.
 */
import * as z from 'zod/mini';
import type { Sourced } from '#bath/provenance.ts';
import type { Point } from '#geometry/point.ts';
import type { LengthUnit } from '#units/length-unit.ts';
import { TEMPLATE_DEFAULTS, templateMargin } from './handoff-defaults.ts';
import { jobMillimetres } from './job-figures.ts';
import { drawnPoint } from './resolve-taper.ts';

/** Papers by ISO 216, from the smallest. */
export const TEMPLATE_PAPERS = ['a4', 'a3', 'a2', 'a1', 'a0'] as const;

const length = z.number().check(z.gte(1e-3), z.lte(1e5));
const coordinate = z.number().check(z.gte(-1e12), z.lte(1e12));
/** A tenth either way: more is no stretch but another part. */
const factor = z.number().check(z.gte(0.9), z.lte(1.1));

/** More tooling holes than any sheet needs. */
const MOST_HOLES = 100;

export const templateSchema = z.strictObject({
  knife: z.optional(
    z.strictObject({
      width: z.optional(length),
      side: z.optional(z.enum(['middle', 'peeled', 'kept'])),
    }),
  ),
  bridge: z.optional(
    z.strictObject({ width: z.optional(length), apart: z.optional(length), clear: z.optional(length) }),
  ),
  web: z.optional(length),
  margin: z.optional(length),
  holes: z.optional(
    z.strictObject({
      diameter: z.optional(length),
      at: z.optional(z.array(z.tuple([coordinate, coordinate])).check(z.maxLength(MOST_HOLES))),
    }),
  ),
  stretch: z.optional(z.tuple([factor, factor])),
  paper: z.optional(z.enum(TEMPLATE_PAPERS)),
});

export type TemplatePaper = (typeof TEMPLATE_PAPERS)[number];

export interface TemplateChoices {
  readonly knife: {
    /** mm across the slot. */
    readonly width: number;
    /** Where the slot lies: on both sides of the line, or on the side that is peeled or kept. */
    readonly side: 'middle' | 'peeled' | 'kept';
  };
  readonly bridge: {
    /** mm along the line. */
    readonly width: number;
    /** Longest slot between two bridges, mm. */
    readonly apart: number;
    /** Least distance of a bridge from a corner or from where lines meet, mm. */
    readonly clear: number;
  };
  /** Least material between two slots, mm. */
  readonly web: number;
  /** mm around the part. */
  readonly margin: number;
  readonly holes: {
    readonly diameter: number;
    /** In the plan's frame, mm; left out, four near the corners. */
    readonly at: readonly Point[] | undefined;
  };
  /** Size of the template to that of the part. */
  readonly stretch: { readonly x: number; readonly y: number };
  readonly paper: TemplatePaper;
}

export function resolveTemplate(
  given: z.infer<typeof templateSchema> | undefined,
  {
    unit,
    drawingUnit,
    paper,
  }: { readonly unit: LengthUnit; readonly drawingUnit: LengthUnit; readonly paper: TemplatePaper },
): TemplateChoices {
  const millimetres = (length: number | undefined, otherwise: Sourced) =>
    length === undefined ? otherwise.value : jobMillimetres(length, unit);
  const [x, y] = given?.stretch ?? [1, 1];
  const width = millimetres(given?.knife?.width, TEMPLATE_DEFAULTS.knife);
  const web = millimetres(given?.web, TEMPLATE_DEFAULTS.web);
  const diameter = millimetres(given?.holes?.diameter, TEMPLATE_DEFAULTS.diameter);
  const margin = templateMargin({ diameter, web, knife: width });
  return {
    knife: { width, side: given?.knife?.side ?? 'middle' },
    bridge: {
      width: millimetres(given?.bridge?.width, TEMPLATE_DEFAULTS.bridge),
      apart: millimetres(given?.bridge?.apart, TEMPLATE_DEFAULTS.apart),
      clear: millimetres(given?.bridge?.clear, TEMPLATE_DEFAULTS.clear),
    },
    web,
    margin: millimetres(given?.margin, margin),
    holes: { diameter, at: given?.holes?.at?.map((point) => drawnPoint(point, drawingUnit)) },
    stretch: { x, y },
    paper: given?.paper ?? paper,
  };
}

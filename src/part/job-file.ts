/**
 * The job file: what the engineer decides, as it stands on disk. Its lengths are in the job's `units`, points in drawing
 * coordinates. The schema is strict: unknown keys are errors. `resolve-job.ts` turns it into millimetres with defaults.
 */
import * as z from 'zod/mini';

const finite = z.number();
const positive = z.number().check(z.positive());
const notNegative = z.number().check(z.nonnegative());
const point = z.tuple([finite, finite]);
const names = z.array(z.string());

const lengthUnit = z.enum(['mm', 'in']);

const depthTaper = z.strictObject({ from: point, to: point, depthFrom: notNegative, depthTo: notNegative });
const thicknessTaper = z.strictObject({
  from: point,
  to: point,
  thicknessFrom: positive,
  thicknessTo: positive,
});

const requirement = z.strictObject({
  layer: z.optional(z.string()),
  at: z.optional(point),
  depth: z.optional(notNegative),
  thickness: z.optional(positive),
  taper: z.optional(z.union([depthTaper, thicknessTaper])),
  plus: z.optional(notNegative),
  minus: z.optional(notNegative),
});

export const jobFileSchema = z.strictObject({
  format: z.literal('isobath-job'),
  version: z.literal(1),
  name: z.optional(z.string()),
  drawing: z.string(),
  units: z.optional(lengthUnit),
  drawingUnits: z.optional(lengthUnit),
  joinTolerance: z.optional(notNegative),
  layers: z.optional(
    z.strictObject({ outline: z.optional(names), regions: z.optional(names), ignore: z.optional(names) }),
  ),
  stock: z.strictObject({
    alloy: z.optional(z.string()),
    thickness: z.union([positive, thicknessTaper]),
    minus: z.optional(notNegative),
    plus: z.optional(notNegative),
  }),
  process: z.strictObject({
    bath: z.optional(z.string()),
    etchFactor: z.optional(z.union([positive, z.array(z.tuple([notNegative, positive]))])),
    rate: z.optional(positive),
    rateSpread: z.optional(notNegative),
    edgeDatum: z.optional(z.enum(['shallow-edge', 'mid-wall', 'deep-foot'])),
  }),
  requirements: z.array(requirement),
  rules: z.optional(
    z.strictObject({
      minWeb: z.optional(notNegative),
      minLineSpacing: z.optional(notNegative),
      minPieceWidth: z.optional(notNegative),
      minLandWidth: z.optional(notNegative),
    }),
  ),
  levels: z.optional(z.union([z.enum(['fewest', 'as-drawn']), z.array(positive)])),
});

export type JobFile = z.infer<typeof jobFileSchema>;

/**
 * The linework of the far face in the frame of the part, as seen through it (M9.1): the sheet's own border, and the outlines of the
 * far layers or the far drawing, turned over and brought to the near face as the job says. What both faces have is taken as it is.
 */
import type { Drawing, DrawnCurve } from '#drawing/drawing.ts';
import { type Finding, finding } from '#findings/finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { itemAt } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import type { Loop } from '#geometry/span.ts';
import {
  bringTogether,
  countedFrom,
  mirrorAbout,
  movedSpan,
  type PointPair,
  type RigidMotion,
  STAYING,
} from '#geometry/spans/rigid-motion.ts';
import { SCRIBE_ACCURACY } from '#geometry/tolerances.ts';
import type { Job } from '#job/job.ts';
import { drawnPoint } from '#job/job-figures.ts';
import type { LengthUnit } from '#units/length-unit.ts';

export interface FarInput {
  readonly near: Drawing;
  /** The far face's own drawing, where the job names one. */
  readonly own: Drawing | undefined;
  /** Border of the sheet as the near face has it; empty for a sheet without end. */
  readonly sheet: readonly Loop[];
  readonly job: Pick<Job, 'layers' | 'far'>;
}

export interface FarLinework {
  /** For `findRegions`. */
  readonly drawing: Drawing;
  readonly layers: Job['layers'];
  /** Findings: `far-view-unclear`, `far-misfit`, `layer-missing`. */
  readonly findings: readonly Finding[];
}

/** Of the border, whose lines are the near face's. */
const SHEET = '';

const ORIGIN: Point = { x: 0, y: 0 };

export function farLinework({ near, own, sheet, job }: FarInput): FarLinework {
  const { layers } = job;
  const { motion, findings } = motionOf({ near, own, job });
  const both = new Set(layers.both ?? []);
  const isFar = farPicker(layers, own !== undefined);
  const turned = (own ?? near).curves
    .filter(({ layer }) => isFar(layer) && (own !== undefined || !both.has(layer)))
    .map((curve) => ({ ...curve, spans: curve.spans.map((span) => movedSpan(motion, span)) }));
  const curves = [
    ...sheet.map(borderCurve),
    ...near.curves.filter(({ layer }) => both.has(layer)),
    ...turned,
  ];
  const regions = [...new Set(curves.map(({ layer }) => layer))].filter((layer) => layer !== SHEET);
  const { origin: _, ...rest } = near;
  return {
    drawing: {
      ...rest,
      layers: [SHEET, ...regions].map((name) => ({ name, shown: true, counts: {} })),
      curves,
      notes: [],
      passedOver: [],
      findings: [],
    },
    layers: { outline: sheet.length === 0 ? [] : [SHEET], regions, ignore: [] },
    findings: [...findings, ...missing(layers, near, own)],
  };
}

/** Without a name every shown layer of a far drawing counts that is neither outline nor ignored. */
function farPicker(
  { far, both = [], outline, ignore }: Job['layers'],
  hasOwn: boolean,
): (layer: string) => boolean {
  if (far === undefined && hasOwn) {
    const passed = new Set([...outline, ...ignore]);
    return (layer) => !passed.has(layer);
  }
  const named = new Set([...(far ?? []), ...(hasOwn ? [] : both)]);
  return (layer) => named.has(layer);
}

/** How far linework comes into the frame of the near curves. */
function motionOf({ near, own, job: { far } }: Omit<FarInput, 'sheet'>): {
  readonly motion: RigidMotion;
  readonly findings: readonly Finding[];
} {
  const { origin: to = ORIGIN } = near;
  const { origin: from = ORIGIN } = own ?? near;
  const counted = (motion: RigidMotion) => countedFrom(motion, from, to);
  const isMirrored = far.view === 'far';
  if (far.points !== undefined) {
    const points = pairIn(far.points.far, (own ?? near).unit);
    const { motion, misfit } = bringTogether(points, pairIn(far.points.near, near.unit), isMirrored);
    if (misfit <= SCRIBE_ACCURACY) return { motion: counted(motion), findings: [] };
    const facts = { misfit, limit: SCRIBE_ACCURACY };
    const at = itemAt(pairIn(far.points.near, near.unit), 0);
    return { motion: counted(motion), findings: [finding('far-misfit', facts, { path: 'far.points', at })] };
  }
  if (!isMirrored) return { motion: counted(STAYING), findings: [] };
  if (far.mirror === undefined) {
    return { motion: counted(STAYING), findings: [finding('far-view-unclear', {}, { path: 'far.view' })] };
  }
  const line = pairIn([far.mirror.from, far.mirror.to], (own ?? near).unit);
  return { motion: counted(mirrorAbout(line)), findings: [] };
}

type GivenPair = readonly [readonly [number, number], readonly [number, number]];

function pairIn([a, b]: GivenPair, unit: LengthUnit | undefined): PointPair {
  return [drawnPoint(a, unit ?? 'mm'), drawnPoint(b, unit ?? 'mm')];
}

function borderCurve(spans: Loop): DrawnCurve {
  return { layer: SHEET, kind: 'outline', handle: undefined, line: 0, closed: true, spans };
}

/** Layers that the job names and that are in neither file that could have them. */
function missing({ far = [], both = [] }: Job['layers'], near: Drawing, own: Drawing | undefined): Finding[] {
  const known = (drawing: Drawing) => drawing.layers.map(({ name }) => name);
  const inFar = known(own ?? near);
  const missingOf = (key: 'far' | 'both', names: readonly string[], there: readonly string[]) =>
    names.flatMap((layer, index) => {
      if (there.includes(layer)) return [];
      const facts = { layer, meant: nearestWord(layer, there), known: there };
      return [finding('layer-missing', facts, { layer, path: `layers.${key}[${index}]` })];
    });
  return [...missingOf('far', far, inFar), ...missingOf('both', both, known(near))];
}

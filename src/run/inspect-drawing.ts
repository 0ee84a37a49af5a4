/** What a drawing holds, without a job: unit, layers, entities, closed outlines, regions with area and a label point. */
import type { Drawing, DrawingLayer, DrawnNote, PassedOver } from '#drawing/drawing.ts';
import { type Finding, hasStop, sortFindings } from '#findings/finding.ts';
import { moveFinding } from '#findings/move-finding.ts';
import type { Point } from '#geometry/point.ts';
import { loopArea } from '#geometry/span.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import { JOB } from '#job/job-file.ts';
import { depthNotes, type UnreadNote, unitOfNotes, unreadNotes } from '#part/depth-notes.ts';
import { findRegions } from '#part/find-regions.ts';
import { type NoiseLayer, noiseLayers } from '#part/noise-layers.ts';
import type { Part } from '#part/part.ts';
import { regionIdFinder } from '#part/region-at.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth as round } from '#units/round-figures.ts';
import { limitLinework } from './limit-linework.ts';
import { createRunMemory, drawingFor } from './run-memory.ts';
import { RunCancelled, type RunOptions } from './run-options.ts';

export interface RegionSeen {
  readonly id: string;
  readonly layer: string;
  /** mm² */
  readonly area: number;
  /** A point well inside, mm in the drawing's frame. */
  readonly label: readonly [number, number];
  /** The same in the drawing's own unit, as `at` in a job takes it. */
  readonly at: readonly [number, number];
  readonly holes: number;
}

export interface OutlineSeen {
  readonly layer: string;
  readonly kind: string;
  /** mm² inside; the drawn curve closes on itself. Null while nobody knows the unit. */
  readonly area: number | null;
}

/** A text that reads like a depth or a final thickness of the region it stands in: an offer, nothing is asked by it. */
export interface DepthNoteSeen {
  readonly region: string;
  readonly text: string;
  readonly asks: 'depth' | 'thickness';
  /** mm, as are plus and minus. */
  readonly length: number;
  readonly plus: number | null;
  readonly minus: number | null;
  /** Another note in the region reads otherwise. */
  readonly disputed: boolean;
  /** Where it hangs, mm in the drawing's frame. */
  readonly place: readonly [number, number];
}

export interface Inspection {
  /** Short name; null when the drawing does not say. */
  readonly unit: string | null;
  readonly layers: readonly DrawingLayer[];
  readonly passedOver: readonly PassedOver[];
  readonly notes: readonly Omit<DrawnNote, 'hung'>[];
  readonly closedOutlines: readonly OutlineSeen[];
  /** Layers that look as if they did not draw the part; no regions were looked for on them. */
  readonly suggestedIgnore: readonly NoiseLayer[];
  /** Null where they were not looked for: a finding says why. */
  readonly regions: readonly RegionSeen[] | null;
  readonly depthNotes: readonly DepthNoteSeen[] | null;
  /** Texts with a figure inside regions that are no depth notes. */
  readonly unreadNotes: readonly UnreadNote[] | null;
  readonly findings: readonly Finding[];
}

export interface InspectOptions extends RunOptions {
  /** The unit that the drawing is drawn in, whatever it says itself. */
  readonly unit?: LengthUnit | undefined;
  /** What a depth note begins with on this drawing. */
  readonly notePrefix?: string;
}

export async function inspectDrawing(bytes: Uint8Array, options: InspectOptions = {}): Promise<Inspection> {
  const step = async (share: number, what: string): Promise<void> => {
    options.progress?.(share, what);
    await options.breathe?.();
    if (options.signal?.aborted === true) throw new RunCancelled();
  };
  await step(0, 'reading the drawing');
  const drawing = drawingFor(createRunMemory(), bytes, {
    unit: options.unit,
    progress: (share, what) => options.progress?.(share * 0.6, what),
  });
  await step(0.6, 'finding the regions');
  const { unit, layers, passedOver } = drawing;
  const notes = drawing.notes.map(({ layer, text, at }) => ({
    layer,
    text,
    at: movePoint(at, drawing.origin ?? { x: 0, y: 0 }),
  }));
  const closed = drawing.curves.filter((curve) => curve.closed);
  const seen = {
    unit: unit ?? null,
    layers,
    passedOver,
    notes,
    closedOutlines: closed.map(({ layer, kind, spans }) => ({
      layer,
      kind,
      area: unit === undefined ? null : round(Math.abs(loopArea(spans))),
    })),
  };
  const nothing = { ...seen, suggestedIgnore: [], regions: null, depthNotes: null, unreadNotes: null };
  if (hasStop(drawing.findings)) return { ...nothing, findings: sortFindings(drawing.findings) };
  const suggestedIgnore = noiseLayers(drawing);
  const everyLayer = { outline: [], regions: undefined, ignore: suggestedIgnore.map(({ layer }) => layer) };
  const tooMuch = limitLinework(drawing, everyLayer);
  if (tooMuch !== undefined) {
    return { ...nothing, findings: sortFindings([...drawing.findings, tooMuch]) };
  }
  const { part, findings } = findRegions(drawing, {
    layers: everyLayer,
    joinTolerance: JOB.members.joinTolerance.usual.value,
  });
  await step(1, 'done');
  const { origin = { x: 0, y: 0 } } = drawing;
  const millimetres = unit === undefined ? 1 : millimetresIn(unit);
  return {
    ...seen,
    suggestedIgnore,
    regions: part.regions.map(({ id, layer, area, label, loops }) => ({
      id,
      layer,
      area: round(area),
      label: placeOf(label, origin),
      at: [round((label.x + origin.x) / millimetres), round((label.y + origin.y) / millimetres)],
      holes: loops.length - 1,
    })),
    ...seeNotes(drawing, part, options.notePrefix ?? ''),
    findings: sortFindings([...drawing.findings, ...findings.map((each) => moveFinding(each, origin))]),
  };
}

function placeOf(point: Point, origin: Point): [number, number] {
  return [round(point.x + origin.x), round(point.y + origin.y)];
}

function seeNotes(
  { notes, unit, origin = { x: 0, y: 0 } }: Drawing,
  part: Part,
  prefix: string,
): Pick<Inspection, 'depthNotes' | 'unreadNotes'> {
  const regionAt = regionIdFinder(part);
  const rule = { unit: unitOfNotes(unit ?? 'mm'), prefix };
  const seen = depthNotes(notes, regionAt, rule).map((offer) => ({
    region: offer.region,
    text: offer.text,
    asks: offer.asks,
    length: offer.length,
    plus: offer.plus ?? null,
    minus: offer.minus ?? null,
    disputed: offer.isDisputed,
    place: placeOf(offer.at, origin),
  }));
  return { depthNotes: seen, unreadNotes: unreadNotes(notes, regionAt, rule) };
}

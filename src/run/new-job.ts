/**
 * A job begun from its drawing alone: unit, the sheet as found, layers sorted, and depth notes as requirements once it is known what
 * bare figures mean. Nothing is guessed: what the drawing does not say stays open, and is named.
 */

import { knownFigures } from '#bath/known-figures.ts';
import type { Drawing } from '#drawing/drawing.ts';
import { type Finding, finding, hasStop, sortFindings } from '#findings/finding.ts';
import { moveFinding } from '#findings/move-finding.ts';
import { nearestWord } from '#findings/nearest-word.ts';
import { movePoint } from '#geometry/spans/move-spans.ts';
import type { Job } from '#job/job.ts';
import { JOB, type JobFile } from '#job/job-file.ts';
import { type DepthOffer, depthNotes, type UnreadNote, unitOfNotes, unreadNotes } from '#part/depth-notes.ts';
import { findRegions } from '#part/find-regions.ts';
import { type NoiseLayer, noiseLayers } from '#part/noise-layers.ts';
import type { Part } from '#part/part.ts';
import { regionIdFinder } from '#part/region-at.ts';
import { type LengthUnit, millimetresIn } from '#units/length-unit.ts';
import { toMillionth } from '#units/round-figures.ts';
import { limitLinework } from './limit-linework.ts';
import { createRunMemory, drawingFor } from './run-memory.ts';

export interface NewJobInput {
  /** As the job shall name it. */
  readonly drawingName: string;
  readonly drawingBytes: Uint8Array;
  /** The unit that the drawing is drawn in, whatever it says itself. */
  readonly unit?: LengthUnit | undefined;
  /** What figures stand for that are written bare in a region. */
  readonly notes?: 'depth' | 'thickness' | undefined;
  /** What a note begins with on this drawing. */
  readonly notePrefix: string;
  readonly alloy?: string | undefined;
  readonly bath?: string | undefined;
  /** In the job's unit: inches on drawings in inches or feet, else millimetres. */
  readonly thickness?: number | undefined;
}

/** The job file as far as it is known: `stock.thickness` may be missing. */
export interface NewJob {
  readonly jobFile?: Omit<JobFile, 'stock'> & { readonly stock: Partial<JobFile['stock']> };
  readonly ignored: readonly NoiseLayer[];
  readonly regions: number;
  /** Notes taken as requirements; bare ones whose meaning is still to be given; regions whose notes differ; texts with a figure that were not read. */
  readonly taken: number;
  readonly waiting: number;
  readonly disputed: readonly string[];
  readonly unread: readonly UnreadNote[];
  readonly findings: readonly Finding[];
}

export function newJob(input: NewJobInput): NewJob {
  const drawing = drawingFor(createRunMemory(), input.drawingBytes, { unit: input.unit });
  const ignored = noiseLayers(drawing);
  const nothing = { ignored, regions: 0, taken: 0, waiting: 0, disputed: [], unread: [] };
  const unknown = unknownNames(input);
  if (unknown.length > 0) return { ...nothing, findings: unknown };
  const ignore = ignored.map(({ layer }) => layer);
  const everyLayer = { outline: [], sheet: 'outermost', regions: undefined, ignore } as const;
  const { unit } = drawing;
  if (unit === undefined || hasStop(drawing.findings)) return { ...nothing, findings: drawing.findings };
  const tooMuch = limitLinework(drawing, everyLayer);
  if (tooMuch !== undefined) return { ...nothing, findings: sortFindings([...drawing.findings, tooMuch]) };
  const joinTolerance = JOB.members.joinTolerance.usual.value;
  const outermost = findRegions(drawing, { layers: everyLayer, joinTolerance });
  const outline = outlineOf(drawing, outermost.part, ignore);
  const layers: Job['layers'] =
    outline === 'outermost' ? everyLayer : { outline: [...outline], regions: undefined, ignore };
  const found = outline === 'outermost' ? outermost : findRegions(drawing, { layers, joinTolerance });
  const noted = requirementsFrom({ drawing, unit, part: found.part }, input);
  return {
    jobFile: {
      format: 'isobath-job',
      version: 1,
      name: input.drawingName.replace(/\.dxf$/i, ''),
      drawing: input.drawingName,
      units: unitOfNotes(unit),
      ...(input.unit === undefined ? {} : { drawingUnits: input.unit }),
      layers: { outline: outline === 'outermost' ? outline : [...outline], ignore },
      stock: {
        ...(input.alloy === undefined ? {} : { alloy: input.alloy }),
        ...(input.thickness === undefined ? {} : { thickness: input.thickness }),
      },
      process: input.bath === undefined ? {} : { bath: input.bath },
      requirements: noted.requirements,
    },
    ignored,
    regions: found.part.regions.length,
    taken: noted.requirements.length,
    waiting: noted.waiting,
    disputed: noted.disputed,
    unread: noted.unread,
    findings: sortFindings([
      ...drawing.findings,
      ...found.findings.map((each) => moveFinding(each, drawing.origin ?? { x: 0, y: 0 })),
    ]),
  };
}

/** An alloy or a bath that no figures are built in for: a job of such a name could not be planned. */
function unknownNames({ alloy, bath }: NewJobInput): Finding[] {
  const { alloys, baths } = knownFigures();
  const known = { alloys: alloys.map(({ id }) => id), baths: baths.map(({ id }) => id) };
  const facts = (name: string, ids: readonly string[]) => ({
    name,
    meant: nearestWord(name, ids),
    known: ids,
  });
  return [
    ...(alloy === undefined || known.alloys.includes(alloy)
      ? []
      : [finding('alloy-unknown', facts(alloy, known.alloys))]),
    ...(bath === undefined || known.baths.includes(bath)
      ? []
      : [finding('bath-unknown', facts(bath, known.baths))]),
  ];
}

/** The one layer of the outermost outline, where other layers have curves of their own; else whatever is outermost. */
function outlineOf(
  { curves }: Drawing,
  { arrangement, regionOfFace }: Part,
  ignore: readonly string[],
): 'outermost' | readonly string[] {
  const isMetal = (face: number): boolean => (regionOfFace[face] ?? -1) >= 0;
  const border = arrangement.edges.filter(({ left, right }) => isMetal(left) !== isMetal(right));
  const onAll = [...new Set(curves.map(({ layer }) => layer))].filter(
    (layer) =>
      !ignore.includes(layer) &&
      border.length > 0 &&
      border.every(({ sources }) => sources.some((source) => curves[source]?.layer === layer)),
  );
  const [layer] = onAll;
  const hasOthers = curves.some((curve) => curve.layer !== layer && !ignore.includes(curve.layer));
  return layer !== undefined && onAll.length === 1 && hasOthers ? [layer] : 'outermost';
}

interface Noted {
  readonly drawing: Drawing;
  readonly unit: LengthUnit;
  readonly part: Part;
}

function requirementsFrom(
  { drawing, unit, part }: Noted,
  { notes, notePrefix }: NewJobInput,
): {
  readonly requirements: JobFile['requirements'];
  readonly waiting: number;
  readonly disputed: readonly string[];
  readonly unread: readonly UnreadNote[];
} {
  const regionAt = regionIdFinder(part);
  const rule = { unit: unitOfNotes(unit), prefix: notePrefix };
  const offers = depthNotes(drawing.notes, regionAt, rule);
  const clear = offers.filter(({ isDisputed }) => !isDisputed);
  const isSaid = (offer: DepthOffer): boolean => offer.isSaid || notes !== undefined;
  const length = (millimetres: number) => inUnit(millimetres, unitOfNotes(unit));
  const requirements = clear
    .filter(isSaid)
    .flatMap(({ region, asks, isSaid: saysItself, length: asked, plus, minus }) => {
      const label = part.regions.find(({ id }) => id === region)?.label;
      if (label === undefined) return [];
      const { x, y } = movePoint(label, drawing.origin ?? { x: 0, y: 0 });
      const at: [number, number] = [inUnit(x, unit), inUnit(y, unit)];
      const kind = saysItself || notes === undefined ? asks : notes;
      return [
        {
          at,
          [kind]: length(asked),
          ...(plus === undefined || minus === undefined ? {} : { plus: length(plus), minus: length(minus) }),
        },
      ];
    });
  return {
    requirements,
    waiting: clear.filter((offer) => !isSaid(offer)).length,
    disputed: [...new Set(offers.filter(({ isDisputed }) => isDisputed).map(({ region }) => region))],
    unread: unreadNotes(drawing.notes, regionAt, rule),
  };
}

function inUnit(millimetres: number, unit: LengthUnit): number {
  return toMillionth(millimetres / millimetresIn(unit));
}

/**
 * The relief as the page draws it. A part that is etched on both faces is one solid with its holes, whichever face is on show; where its
 * two reliefs do not join, each face is shown by itself.
 */
import { finding } from '#findings/finding.ts';
import { type EtchedSolid, etchedSolid } from '#handoff/solid/etched-solid.ts';
import { twoFacedRelief } from '#handoff/solid/two-faced-solid.ts';
import type { SheetSide } from '#job/job.ts';
import { thickestOf } from '#job/sheet-at.ts';
import type { EtchedPart } from '#run/etched-part.ts';
import type { ReliefRequest } from './plan-service.ts';
import type { ReliefAnswer, ReliefArrays } from './planned-page.ts';
import { reliefEdges } from './relief-edges.ts';
import { turnedRelief } from './turned-relief.ts';

/** Lines and arcs that a front may start from for its relief to have room in a browser; our own choice. */
const MOST_BORDERS = 200_000;

export function reliefArrays(
  part: EtchedPart,
  face: SheetSide,
  request: Omit<ReliefRequest, 'face'>,
): ReliefAnswer | undefined {
  const borders = bordersOf(part) + (part.far === undefined ? 0 : bordersOf(part.far));
  if (borders > MOST_BORDERS)
    return { heldBack: finding('relief-too-large', { borders, most: MOST_BORDERS }) };
  const thickness = thickestOf(part.thickness);
  const both = bothFaces(part, request);
  if (both !== undefined) {
    const own = arraysOf(both);
    // Floors of the far face are level with it turned up.
    const over = turnedRelief(own, thickness);
    const far = turnedRelief({ ...over, ...reliefEdges(over) }, thickness);
    return { mesh: { ...own, edges: joined(own.edges, far.edges), feet: joined(own.feet, far.feet) } };
  }
  const shown = face === 'far' ? part.far : part;
  if (shown === undefined) return undefined;
  const made = etchedSolid(shown.kit(), shown, request);
  if ('trouble' in made) return { heldBack: finding('solid-held-back', { of: 'relief', ...made.trouble }) };
  const arrays = arraysOf(made.mesh);
  return { mesh: face === 'far' ? turnedRelief(arrays, thickness) : arrays };
}

function bordersOf({ kit }: Pick<EtchedPart, 'kit'>): number {
  return kit().index.features.length;
}

type ReliefMesh = Extract<EtchedSolid, { readonly mesh: unknown }>['mesh'];

function bothFaces(
  part: EtchedPart,
  { minute, tolerance }: Omit<ReliefRequest, 'face'>,
): ReliefMesh | undefined {
  const { far, thickness } = part;
  if (far === undefined) return undefined;
  const fronts = { near: part.kit(), far: far.kit(), thickness: thickestOf(thickness) };
  const made = twoFacedRelief({
    ...fronts,
    minute,
    tolerance,
    stock: { thickness },
  });
  return 'trouble' in made ? undefined : made.mesh;
}

function arraysOf({ origin, positions, indices, stageOfTriangle }: ReliefMesh): ReliefArrays {
  return { origin, positions, indices, stageOfTriangle, ...reliefEdges({ positions, indices }) };
}

function joined(one: Float32Array, other: Float32Array): Float32Array {
  const both = new Float32Array(one.length + other.length);
  both.set(one);
  both.set(other, one.length);
  return both;
}

/**
 * The etched part as a GLB (glTF 2.0, ISO/IEC 12113): metres and y up, as the standard asks; the drawing's x stays x, its y
 * is −z. One mesh with a primitive and a material a stage, and one for untouched metal; all share one list of vertices, so
 * that the whole is the border of a solid. Normals are left to the viewer: flat, which shows the chords for what they are.
 */

import type { ReliefMesh } from '#front/relief/relief-mesh.ts';
import { itemAt } from '#geometry/assert.ts';
import { CAUTIONS } from '#handoff/cautions.ts';
import { root } from '#maths/root.ts';
import type { Stage } from '#plan/etch-plan.ts';

export interface GlbInput {
  readonly name: string;
  /** SHA-256 of plan.json, hexadecimal. */
  readonly planHash: string;
  readonly mesh: ReliefMesh;
  /** mm by which the mesh may leave the front. */
  readonly tolerance: number;
  readonly stages: readonly Pick<Stage, 'number' | 'level' | 'color'>[];
}

interface Part {
  readonly material: object;
  readonly indices: Uint32Array;
}

/** The standard's numbers for kinds of figures and for what a stretch of the buffer holds. */
const FLOAT = 5126;
const UNSIGNED_INT = 5125;
const VERTICES = 34962;
const INDICES = 34963;

/** Grey of bare metal, our own choice. */
const METAL = '#b9bdc1';

export function glbFile(input: GlbInput): Uint8Array {
  const { mesh, stages } = input;
  const parts: Part[] = [
    { number: 0, material: materialOf('untouched', METAL) },
    ...stages.map(({ number, level, color }) => ({
      number,
      material: materialOf(`stage ${number}, to ${level.toFixed(3)} mm`, color),
    })),
  ]
    .map(({ number, material }) => ({ material, indices: indicesOf(mesh, number) }))
    .filter(({ indices }) => indices.length > 0);
  const vertices = yUpMetres(mesh.positions);
  const blocks = [vertices, ...parts.map(({ indices }) => indices)];
  return packed(contentsOf(input, parts, vertices), blocks);
}

/** The JSON part. Accessor and buffer view 0 are the vertices; those of part i stand at i + 1. */
function contentsOf(
  { name, planHash, tolerance, mesh }: GlbInput,
  parts: readonly Part[],
  vertices: Float32Array,
): object {
  let byteOffset = vertices.byteLength;
  const bufferViews: object[] = [{ buffer: 0, byteLength: vertices.byteLength, target: VERTICES }];
  const accessors: object[] = [
    { bufferView: 0, componentType: FLOAT, count: vertices.length / 3, type: 'VEC3', ...extent(vertices) },
  ];
  const primitives: object[] = [];
  parts.forEach(({ indices }, part) => {
    const { byteLength, length: count } = indices;
    bufferViews.push({ buffer: 0, byteOffset, byteLength, target: INDICES });
    accessors.push({ bufferView: part + 1, componentType: UNSIGNED_INT, count, type: 'SCALAR' });
    primitives.push({ attributes: { POSITION: 0 }, indices: part + 1, material: part });
    byteOffset += byteLength;
  });
  return {
    asset: {
      version: '2.0',
      generator: 'Isobath',
      extras: { name, planSha256: planHash, toleranceMm: tolerance, caution: itemAt(CAUTIONS, 0) },
    },
    scene: 0,
    scenes: [{ name, nodes: [0] }],
    nodes: [{ name, mesh: 0, ...placeOf(mesh) }],
    meshes: [{ name, primitives }],
    materials: parts.map(({ material }) => material),
    accessors,
    bufferViews,
    buffers: [{ byteLength: byteOffset }],
  };
}

/** Where the mesh's own frame stands in the drawing's; nothing where they are one. */
function placeOf({ origin: { x, y } }: ReliefMesh): object {
  return x === 0 && y === 0 ? {} : { translation: [x / 1000, 0, -y / 1000] };
}

function yUpMetres(positions: Float32Array): Float32Array {
  const turned = new Float32Array(positions.length);
  for (let i = 0; i < positions.length; i += 3) {
    turned[i] = itemAt(positions, i) / 1000;
    turned[i + 1] = itemAt(positions, i + 2) / 1000;
    turned[i + 2] = -itemAt(positions, i + 1) / 1000;
  }
  return turned;
}

/** As the standard wants it: of the figures as written. */
function extent(vertices: Float32Array): { readonly min: number[]; readonly max: number[] } {
  const min = [0, 0, 0].fill(Number.POSITIVE_INFINITY);
  const max = [0, 0, 0].fill(Number.NEGATIVE_INFINITY);
  vertices.forEach((figure, i) => {
    min[i % 3] = Math.min(itemAt(min, i % 3), figure);
    max[i % 3] = Math.max(itemAt(max, i % 3), figure);
  });
  return { min, max };
}

function indicesOf({ indices, stageOfTriangle }: ReliefMesh, stage: number): Uint32Array {
  const count = stageOfTriangle.reduce((sum, each) => sum + (each === stage ? 1 : 0), 0);
  const chosen = new Uint32Array(3 * count);
  let at = 0;
  stageOfTriangle.forEach((each, triangle) => {
    if (each !== stage) return;
    for (let corner = 0; corner < 3; corner++) chosen[at++] = itemAt(indices, 3 * triangle + corner);
  });
  return chosen;
}

function materialOf(name: string, color: string): object {
  const value = Number.parseInt(color.slice(1), 16);
  const linear = (shift: number): number => linearOf(((value >> shift) & 255) / 255);
  return {
    name,
    pbrMetallicRoughness: {
      baseColorFactor: [linear(16), linear(8), linear(0), 1],
      metallicFactor: 0.2,
      roughnessFactor: 0.7,
    },
  };
}

/** sRGB to linear (IEC 61966-2-1), in which glTF wants its factors. */
function linearOf(channel: number): number {
  const linear = channel <= 0.04045 ? channel / 12.92 : powerTwelveFifths((channel + 0.055) / 1.055);
  return Number(linear.toFixed(6));
}

/** To the power of 2.4. */
function powerTwelveFifths(value: number): number {
  const sixth = value * value * value * value * value * value;
  return root(sixth * sixth, 5);
}

/** Heading, JSON chunk, binary chunk: little-endian, each chunk a multiple of four bytes (glTF 2.0, section 4). */
function packed(contents: object, blocks: readonly (Float32Array | Uint32Array)[]): Uint8Array {
  const json = asciiJson(contents);
  const text = json.padEnd(Math.ceil(json.length / 4) * 4, ' ');
  const binary = blocks.reduce((sum, { byteLength }) => sum + byteLength, 0);
  const bytes = new Uint8Array(12 + 8 + text.length + 8 + binary);
  const view = new DataView(bytes.buffer);
  let at = 0;
  const word = (value: number): void => {
    view.setUint32(at, value, true);
    at += 4;
  };
  [0x46546c67, 2, bytes.length, text.length, 0x4e4f534a].forEach(word);
  for (let i = 0; i < text.length; i++) bytes[at++] = text.charCodeAt(i);
  [binary, 0x004e4942].forEach(word);
  for (const block of blocks) {
    const isFloat = block instanceof Float32Array;
    for (const value of block) {
      if (isFloat) view.setFloat32(at, value, true);
      else view.setUint32(at, value, true);
      at += 4;
    }
  }
  return bytes;
}

/** What is not ASCII as JSON's own escape, so that a letter is a byte. */
function asciiJson(value: object): string {
  return JSON.stringify(value).replace(
    /[^ -~]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}

/** dxf-parser walks the condensed drawing: which layers, blocks and entities there are, entities by their numbers. */
import DxfParser from 'dxf-parser';
import { assert } from '#geometry/assert.ts';
import type { Point } from '#geometry/point.ts';
import { NAME_MARK, REFERENCE } from './condense-drawing.ts';

export interface LayerRecord {
  readonly name: string;
  readonly off: boolean;
  readonly frozen: boolean;
}

export interface BlockRecord {
  readonly name: string;
  readonly base: Point;
  /** Path of the file that holds the block, when it is an external reference. */
  readonly externalPath: string | undefined;
  readonly entities: readonly number[];
}

export interface Container {
  /** By name in capitals: names of layers and blocks do not distinguish capitals from small letters. */
  readonly layers: ReadonlyMap<string, LayerRecord>;
  readonly blocks: ReadonlyMap<string, BlockRecord>;
  readonly entities: readonly number[];
}

/** Block flags 4 (external reference) and 8 (external overlay), DXF reference, BLOCK group 70. */
const EXTERNAL = 4 | 8;

export function walkContainer(skeleton: string): Container {
  const parser = new DxfParser();
  parser.registerEntityHandler(ReferenceHandler as unknown as HandlerType);
  const walked = parser.parseSync(skeleton);
  assert(walked !== null, 'the walker takes text');
  const layers = new Map<string, LayerRecord>();
  for (const { name, visible, frozen } of Object.values(walked.tables?.layer?.layers ?? {})) {
    const plain = unmark(name);
    layers.set(plain.toUpperCase(), { name: plain, off: visible === false, frozen: frozen === true });
  }
  const blocks = new Map<string, BlockRecord>();
  for (const { name, position, type, xrefPath, entities } of Object.values(walked.blocks ?? {})) {
    const plain = unmark(name);
    blocks.set(plain.toUpperCase(), {
      name: plain,
      base: { x: position.x, y: position.y },
      externalPath: ((type ?? 0) & EXTERNAL) === 0 ? undefined : unmark(xrefPath),
      entities: numbersOf(entities ?? []),
    });
  }
  return { layers, blocks, entities: numbersOf(walked.entities ?? []) };
}

type HandlerType = Parameters<DxfParser['registerEntityHandler']>[0];
type Handler = InstanceType<HandlerType>;

/** Takes one reference: its kind is the current group, its two numbers the next two, and it leaves on the group after them. */
class ReferenceHandler {
  readonly ForEntityName = REFERENCE;

  parseEntity(scanner: Parameters<Handler['parseEntity']>[0]): EntityRun {
    const handle = scanner.next().value;
    const last = scanner.next().value;
    scanner.next();
    return { type: REFERENCE, handle, last };
  }
}

interface EntityRun {
  readonly type: string;
  /** Number of the first entity; the walker wants it under this name. */
  readonly handle: unknown;
  readonly last: unknown;
}

function numbersOf(runs: readonly unknown[]): number[] {
  const numbers: number[] = [];
  for (const run of runs as readonly EntityRun[]) {
    for (let number = Number(run.handle); number <= Number(run.last); number++) numbers.push(number);
  }
  return numbers;
}

function unmark(name: string): string {
  return name.slice(NAME_MARK.length);
}

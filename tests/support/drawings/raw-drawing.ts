/** DXF texts put together from tags, for tests: only what is asked for is in them, right or wrong. */

export type Tag = readonly [code: number, value: string | number];

export interface DrawingParts {
  /** Header variables; millimetres unless given. */
  readonly header?: readonly Tag[];
  readonly layers?: readonly LayerPart[];
  readonly blocks?: string;
  /** Entities as text, each made by `entity` or by hand. */
  readonly entities: string;
}

interface LayerPart {
  readonly name: string;
  readonly color?: number;
  readonly flags?: number;
}

export const MILLIMETRES: readonly Tag[] = [
  [9, '$INSUNITS'],
  [70, 4],
];

export function tags(...list: readonly Tag[]): string {
  return list.map(([code, value]) => `${code}\n${value}\n`).join('');
}

/** An entity on layer SKIN unless its own tags name one. */
export function entity(kind: string, ...list: readonly Tag[]): string {
  const layer: readonly Tag[] = list.some(([code]) => code === 8) ? [] : [[8, 'SKIN']];
  return tags([0, kind], ...layer, ...list);
}

export function line(x1: number, y1: number, x2: number, y2: number, ...more: readonly Tag[]): string {
  return entity('LINE', ...more, [10, x1], [20, y1], [11, x2], [21, y2]);
}

export function circle(x: number, y: number, radius: number, ...more: readonly Tag[]): string {
  return entity('CIRCLE', ...more, [10, x], [20, y], [40, radius]);
}

/** LWPOLYLINE through [x, y, bulge?] vertices. */
export function polyline(
  vertices: readonly (readonly [x: number, y: number, bulge?: number])[],
  flags: number,
  ...more: readonly Tag[]
): string {
  // One call a vertex: a hundred thousand of them are too many arguments for one.
  const points = vertices.map(([x, y, bulge]) =>
    tags([10, x], [20, y], ...(bulge === undefined ? [] : ([[42, bulge]] as const))),
  );
  return entity('LWPOLYLINE', ...more, [90, vertices.length], [70, flags]) + points.join('');
}

export function insert(block: string, x: number, y: number, ...more: readonly Tag[]): string {
  return entity('INSERT', [2, block], [10, x], [20, y], ...more);
}

export function block(name: string, entities: string, ...head: readonly Tag[]): string {
  const base: readonly Tag[] = head.some(([code]) => code === 10)
    ? []
    : [
        [10, 0],
        [20, 0],
        [30, 0],
      ];
  return tags([0, 'BLOCK'], [8, '0'], [2, name], ...base, ...head) + entities + tags([0, 'ENDBLK'], [8, '0']);
}

export function section(name: string, body: string): string {
  return tags([0, 'SECTION'], [2, name]) + body + tags([0, 'ENDSEC']);
}

function layerTable(layers: readonly LayerPart[]): string {
  const records = layers.map(({ name, color = 7, flags = 0 }) =>
    tags([0, 'LAYER'], [2, name], [70, flags], [62, color], [6, 'CONTINUOUS']),
  );
  return tags([0, 'TABLE'], [2, 'LAYER'], [70, layers.length]) + records.join('') + tags([0, 'ENDTAB']);
}

export function drawingText({ header = MILLIMETRES, layers, blocks, entities }: DrawingParts): string {
  return [
    section('HEADER', tags([9, '$ACADVER'], [1, 'AC1015'], ...header)),
    layers === undefined ? '' : section('TABLES', layerTable(layers)),
    blocks === undefined ? '' : section('BLOCKS', blocks),
    section('ENTITIES', entities),
    tags([0, 'EOF']),
  ].join('');
}

/** One byte a character: what a text of ASCII and codepage letters is on disk. */
export function bytesOf(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at++) bytes[at] = text.charCodeAt(at);
  return bytes;
}

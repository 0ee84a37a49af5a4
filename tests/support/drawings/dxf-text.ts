/** Writes drawings as ASCII DXF (AC1015) the plain way that drawing programs do, for samples and tests. */
import type { Point } from '#geometry/point.ts';

export interface DxfEntity {
  readonly type: string;
  readonly layer: string;
  readonly inPaperSpace?: boolean;
  /** Group code and value, after handle, owner and layer. */
  readonly pairs: readonly Pair[];
}

interface DxfLayer {
  readonly name: string;
  readonly color: number;
  readonly frozen?: boolean;
  readonly off?: boolean;
}

export interface DxfSheet {
  /** `$INSUNITS`; left out when undefined. */
  readonly insunits?: number;
  readonly layers: readonly DxfLayer[];
  readonly blocks?: Readonly<Record<string, readonly DxfEntity[]>>;
  readonly entities: readonly DxfEntity[];
}

type Pair = readonly [code: number, value: number | string];

export function line(layer: string, from: Point, to: Point): DxfEntity {
  return { type: 'LINE', layer, pairs: [[100, 'AcDbLine'], ...at(10, from), ...at(11, to)] };
}

export function arc(
  layer: string,
  { center, radius, fromDeg, toDeg }: { center: Point; radius: number; fromDeg: number; toDeg: number },
): DxfEntity {
  const angles: Pair[] = [
    [100, 'AcDbArc'],
    [50, fromDeg],
    [51, toDeg],
  ];
  return { type: 'ARC', layer, pairs: [[100, 'AcDbCircle'], ...at(10, center), [40, radius], ...angles] };
}

export function circle(layer: string, center: Point, radius: number): DxfEntity {
  return { type: 'CIRCLE', layer, pairs: [[100, 'AcDbCircle'], ...at(10, center), [40, radius]] };
}

export interface BulgedVertex extends Point {
  readonly bulge?: number;
}

export function outline(layer: string, vertices: readonly BulgedVertex[]): DxfEntity {
  const points = vertices.flatMap(({ x, y, bulge }): Pair[] => [
    [10, x],
    [20, y],
    ...(bulge === undefined ? [] : [[42, bulge] as const]),
  ]);
  const head: Pair[] = [
    [100, 'AcDbPolyline'],
    [90, vertices.length],
    [70, 1],
  ];
  return { type: 'LWPOLYLINE', layer, pairs: [...head, ...points] };
}

export function text(layer: string, place: Point, words: string, height = 5): DxfEntity {
  const pairs: Pair[] = [[100, 'AcDbText'], ...at(10, place), [40, height], [1, words], [100, 'AcDbText']];
  return { type: 'TEXT', layer, pairs };
}

export function insert(
  layer: string,
  block: string,
  { place, turnDeg, mirrored }: { place: Point; turnDeg: number; mirrored: boolean },
): DxfEntity {
  const pairs: Pair[] = [[100, 'AcDbBlockReference'], [2, block], ...at(10, place), [41, mirrored ? -1 : 1]];
  return { type: 'INSERT', layer, pairs: [...pairs, [50, turnDeg]] };
}

/** A cubic curve that starts at the first and ends at the last of its control points (uniform inner knots). */
export function spline(layer: string, controls: readonly Point[]): DxfEntity {
  const inner = Array.from({ length: controls.length - 4 }, (_, index) => index + 1);
  const last = controls.length - 3;
  const knots = [0, 0, 0, 0, ...inner, last, last, last, last];
  const head: Pair[] = [
    [100, 'AcDbSpline'],
    [70, 8],
    [71, 3],
    [72, knots.length],
    [73, controls.length],
    [74, 0],
  ];
  return {
    type: 'SPLINE',
    layer,
    pairs: [
      ...head,
      ...knots.map((knot) => [40, knot] as const),
      ...controls.flatMap((each) => at(10, each)),
    ],
  };
}

/** Solid filling of a polygon. */
export function hatch(layer: string, corners: readonly Point[]): DxfEntity {
  const head: Pair[] = [
    [100, 'AcDbHatch'],
    ...at(10, { x: 0, y: 0 }),
    [210, 0],
    [220, 0],
    [230, 1],
    [2, 'SOLID'],
    [70, 1],
    [71, 0],
    [91, 1],
    [92, 2],
    [72, 0],
    [73, 1],
    [93, corners.length],
  ];
  const tail: Pair[] = [
    [97, 0],
    [75, 0],
    [76, 1],
    [98, 0],
  ];
  const border = corners.flatMap(({ x, y }): Pair[] => [
    [10, x],
    [20, y],
  ]);
  return { type: 'HATCH', layer, pairs: [...head, ...border, ...tail] };
}

/** A polygon, counter-clockwise, whose corners are rounded by one radius. */
export function roundedPolygon(corners: readonly Point[], radius: number): BulgedVertex[] {
  return corners.flatMap((corner, index): BulgedVertex[] => {
    const before = corners.at(index - 1) ?? corner;
    const after = corners[(index + 1) % corners.length] ?? corner;
    const into = directionOf(before, corner);
    const out = directionOf(corner, after);
    const turn = Math.atan2(into.x * out.y - into.y * out.x, into.x * out.x + into.y * out.y);
    const cut = radius * Math.tan(turn / 2);
    return [
      { x: corner.x - into.x * cut, y: corner.y - into.y * cut, bulge: Math.tan(turn / 4) },
      { x: corner.x + out.x * cut, y: corner.y + out.y * cut },
    ];
  });
}

export function roundedRectangle(
  { x, y, width, height }: { x: number; y: number; width: number; height: number },
  radius: number,
): BulgedVertex[] {
  const right = x + width;
  const top = y + height;
  return roundedPolygon(
    [
      { x, y },
      { x: right, y },
      { x: right, y: top },
      { x, y: top },
    ],
    radius,
  );
}

/** The drawing as a file's text, lines ended the way DXF files usually are. */
export function dxfText(sheet: DxfSheet): string {
  const handles = new HandleSource();
  const blocks = Object.entries({ '*Model_Space': [], '*Paper_Space': [], ...sheet.blocks });
  const records = blocks.map(([name, entities]) => ({ name, entities, handle: handles.next() }));
  const [model, paper] = records;
  const owner = (entity: DxfEntity) => (entity.inPaperSpace ? paper : model)?.handle ?? '0';
  const body: Pair[] = [
    ...section('TABLES', [
      ...table('LTYPE', handles, [namedRecord('LTYPE', 'CONTINUOUS', handles)]),
      ...table(
        'LAYER',
        handles,
        sheet.layers.map((layer) => layerRecord(layer, handles)),
      ),
      ...table('STYLE', handles, [namedRecord('STYLE', 'STANDARD', handles)]),
      ...table(
        'BLOCK_RECORD',
        handles,
        records.map(({ name, handle }) => [
          ...start('BLOCK_RECORD', handle, 'AcDbSymbolTableRecord', 'AcDbBlockTableRecord'),
          [2, name],
        ]),
      ),
    ]),
    ...section(
      'BLOCKS',
      records.flatMap(({ name, entities, handle }) => blockPairs(name, entities, { handle, handles })),
    ),
    ...section(
      'ENTITIES',
      sheet.entities.flatMap((each) => entityPairs(each, owner(each), handles)),
    ),
    ...section('OBJECTS', [...start('DICTIONARY', handles.next(), 'AcDbDictionary'), [281, 1]]),
  ];
  const header: Pair[] = [
    [9, '$ACADVER'],
    [1, 'AC1015'],
    [9, '$HANDSEED'],
    [5, handles.next()],
    ...(sheet.insunits === undefined
      ? []
      : ([
          [9, '$INSUNITS'],
          [70, sheet.insunits],
        ] as const)),
  ];
  const pairs: Pair[] = [...section('HEADER', header), ...body, [0, 'EOF']];
  return pairs.map(([code, value]) => `${String(code).padStart(3)}\r\n${spell(value)}\r\n`).join('');
}

class HandleSource {
  private last = 15;
  next(): string {
    this.last++;
    return this.last.toString(16).toUpperCase();
  }
}

function at(code: number, { x, y }: Point): Pair[] {
  return [
    [code, x],
    [code + 10, y],
    [code + 20, 0],
  ];
}

function directionOf(from: Point, to: Point): Point {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
}

function section(name: string, pairs: readonly Pair[]): Pair[] {
  return [[0, 'SECTION'], [2, name], ...pairs, [0, 'ENDSEC']];
}

function start(type: string, handle: string, ...classes: readonly string[]): Pair[] {
  return [[0, type], [5, handle], ...classes.map((each) => [100, each] as const)];
}

function table(name: string, handles: HandleSource, records: readonly (readonly Pair[])[]): Pair[] {
  const head: Pair[] = [
    [0, 'TABLE'],
    [2, name],
    [5, handles.next()],
    [100, 'AcDbSymbolTable'],
    [70, records.length],
  ];
  return [...head, ...records.flat(), [0, 'ENDTAB']];
}

function namedRecord(kind: 'LTYPE' | 'STYLE', name: string, handles: HandleSource): Pair[] {
  const subclass = kind === 'LTYPE' ? 'AcDbLinetypeTableRecord' : 'AcDbTextStyleTableRecord';
  const rest: Pair[] =
    kind === 'LTYPE'
      ? [
          [3, 'Solid line'],
          [72, 65],
          [73, 0],
          [40, 0],
        ]
      : [
          [40, 0],
          [41, 1],
          [50, 0],
          [71, 0],
          [42, 2.5],
          [3, 'txt'],
          [4, ''],
        ];
  return [...start(kind, handles.next(), 'AcDbSymbolTableRecord', subclass), [2, name], [70, 0], ...rest];
}

function layerRecord(layer: DxfLayer, handles: HandleSource): Pair[] {
  return [
    ...start('LAYER', handles.next(), 'AcDbSymbolTableRecord', 'AcDbLayerTableRecord'),
    [2, layer.name],
    [70, layer.frozen ? 1 : 0],
    [62, layer.off ? -layer.color : layer.color],
    [6, 'CONTINUOUS'],
  ];
}

function blockPairs(
  name: string,
  entities: readonly DxfEntity[],
  { handle, handles }: { handle: string; handles: HandleSource },
): Pair[] {
  const opening: Pair[] = [
    [0, 'BLOCK'],
    [5, handles.next()],
    [330, handle],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockBegin'],
    [2, name],
    [70, 0],
    ...at(10, { x: 0, y: 0 }),
    [3, name],
    [1, ''],
  ];
  const closing: Pair[] = [
    [0, 'ENDBLK'],
    [5, handles.next()],
    [330, handle],
    [100, 'AcDbEntity'],
    [8, '0'],
    [100, 'AcDbBlockEnd'],
  ];
  return [...opening, ...entities.flatMap((each) => entityPairs(each, handle, handles)), ...closing];
}

function entityPairs(entity: DxfEntity, owner: string, handles: HandleSource): Pair[] {
  return [
    [0, entity.type],
    [5, handles.next()],
    [330, owner],
    [100, 'AcDbEntity'],
    ...(entity.inPaperSpace ? [[67, 1] as const] : []),
    [8, entity.layer],
    ...entity.pairs,
  ];
}

/** Six decimals, as drawing programs write. */
function spell(value: number | string): string {
  return typeof value === 'string' ? value : String(Number(value.toFixed(6)));
}

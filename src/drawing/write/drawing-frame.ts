/**
 * What an AC1015 drawing needs around its entities: tables, the two standard blocks, and the dictionaries of layouts.
 * Source: DXF reference, release 2000 (TABLES, BLOCKS, OBJECTS sections); strict readers refuse a file without them.
 */
import type { LayerOut } from './drawing-out.ts';
import { type HandleCount, PLAIN_TEXT, section, type Tag } from './dxf-tags.ts';

export interface Frame {
  /** Sections before ENTITIES. */
  readonly before: readonly Tag[];
  /** Sections after ENTITIES. */
  readonly after: readonly Tag[];
  /** Handle of the model space block record: the owner of every entity. */
  readonly modelSpace: string;
}

interface Space {
  readonly block: string;
  readonly layout: string;
  readonly record: string;
  readonly layoutHandle: string;
}

export function frameSections(layers: readonly LayerOut[], handles: HandleCount): Frame {
  const plotStyle = handles.next();
  const spaces: readonly Space[] = [
    { block: '*Model_Space', layout: 'Model', record: handles.next(), layoutHandle: handles.next() },
    { block: '*Paper_Space', layout: 'Layout1', record: handles.next(), layoutHandle: handles.next() },
  ];
  return {
    before: [
      ...section('CLASSES', []),
      ...tablesSection(layers, { handles, plotStyle, spaces }),
      ...blocksSection(spaces, handles),
    ],
    after: objectsSection({ handles, plotStyle, spaces }),
    modelSpace: spaces[0]?.record ?? '',
  };
}

interface Parts {
  readonly handles: HandleCount;
  readonly plotStyle: string;
  readonly spaces: readonly Space[];
}

function tablesSection(layers: readonly LayerOut[], { handles, plotStyle, spaces }: Parts): Tag[] {
  const all: readonly LayerOut[] = [{ name: '0', color: 7, shown: true }, ...layers];
  const lineTypes = ['ByBlock', 'ByLayer', 'Continuous'];
  return section('TABLES', [
    ...table('VPORT', handles, [viewPort]),
    ...table(
      'LTYPE',
      handles,
      lineTypes.map((name) => () => lineType(name)),
    ),
    ...table(
      'LAYER',
      handles,
      all.map((layer) => () => layerTags(layer, plotStyle)),
    ),
    ...table('STYLE', handles, [textStyle]),
    ...table('VIEW', handles, []),
    ...table('UCS', handles, []),
    ...table('APPID', handles, [() => record('AcDbRegAppTableRecord', 'ACAD', [[70, '0']])]),
    ...table('DIMSTYLE', handles, [() => record('AcDbDimStyleTableRecord', 'Standard', [[70, '0']])]),
    ...blockRecordTable(spaces, handles),
  ]);
}

/** A table and its records; each record gets its handle and owner. The dimension styles wear code 105 for 5, and a mark of their own. */
function table(kind: string, handles: HandleCount, records: readonly (() => Tag[])[]): Tag[] {
  const owner = handles.next();
  const tags = tableHead(kind, owner, records.length);
  if (kind === 'DIMSTYLE') tags.push([100, 'AcDbDimStyleTable'], [71, String(records.length)]);
  for (const make of records) {
    tags.push(
      [0, kind],
      [kind === 'DIMSTYLE' ? 105 : 5, handles.next()],
      [330, owner],
      [100, 'AcDbSymbolTableRecord'],
      ...make(),
    );
  }
  tags.push([0, 'ENDTAB']);
  return tags;
}

function tableHead(kind: string, handle: string, count: number): Tag[] {
  return [
    [0, 'TABLE'],
    [2, kind],
    [5, handle],
    [330, '0'],
    [100, 'AcDbSymbolTable'],
    [70, String(count)],
  ];
}

function record(mark: string, name: string, rest: readonly Tag[]): Tag[] {
  return [[100, mark], [2, name], ...rest];
}

function viewPort(): Tag[] {
  const pairs: Tag[] = [[70, '0']];
  const corner = (code: number, x: string, y: string): void => {
    pairs.push([code, x], [code + 10, y]);
  };
  corner(10, '0.0', '0.0');
  corner(11, '1.0', '1.0');
  corner(12, '0.0', '0.0');
  corner(13, '0.0', '0.0');
  corner(14, '10.0', '10.0');
  corner(15, '10.0', '10.0');
  pairs.push([16, '0.0'], [26, '0.0'], [36, '1.0'], [17, '0.0'], [27, '0.0'], [37, '0.0']);
  pairs.push([40, '1000.0'], [41, '1.5'], [42, '50.0'], [43, '0.0'], [44, '0.0'], [50, '0.0'], [51, '0.0']);
  pairs.push([71, '0'], [72, '100'], [73, '1'], [74, '3'], [75, '0'], [76, '0'], [77, '0'], [78, '0']);
  return record('AcDbViewportTableRecord', '*Active', pairs);
}

function lineType(name: string): Tag[] {
  return record('AcDbLinetypeTableRecord', name, [
    [70, '0'],
    [3, name === 'Continuous' ? 'Solid line' : ''],
    [72, '65'],
    [73, '0'],
    [40, '0.0'],
  ]);
}

/** A layer that is off has its colour number negative. −3: the default line weight. */
function layerTags(layer: LayerOut, plotStyle: string): Tag[] {
  return record('AcDbLayerTableRecord', layer.name, [
    [70, '0'],
    [62, String(layer.shown ? layer.color : -layer.color)],
    [6, 'Continuous'],
    [370, '-3'],
    [390, plotStyle],
  ]);
}

function textStyle(): Tag[] {
  return record('AcDbTextStyleTableRecord', 'Standard', PLAIN_TEXT);
}

function blockRecordTable(spaces: readonly Space[], handles: HandleCount): Tag[] {
  const owner = handles.next();
  const tags = tableHead('BLOCK_RECORD', owner, spaces.length);
  for (const space of spaces) {
    tags.push(
      [0, 'BLOCK_RECORD'],
      [5, space.record],
      [330, owner],
      [100, 'AcDbSymbolTableRecord'],
      [100, 'AcDbBlockTableRecord'],
      [2, space.block],
      [340, space.layoutHandle],
    );
  }
  tags.push([0, 'ENDTAB']);
  return tags;
}

function blocksSection(spaces: readonly Space[], handles: HandleCount): Tag[] {
  const tags: Tag[] = [];
  for (const [index, space] of spaces.entries()) {
    const head = (kind: string, mark: string): Tag[] => [
      [0, kind],
      [5, handles.next()],
      [330, space.record],
      [100, 'AcDbEntity'],
      ...(index === 1 ? ([[67, '1']] as Tag[]) : []),
      [8, '0'],
      [100, mark],
    ];
    tags.push(
      ...head('BLOCK', 'AcDbBlockBegin'),
      [2, space.block],
      [70, '0'],
      [10, '0.0'],
      [20, '0.0'],
      [30, '0.0'],
    );
    tags.push([3, space.block], [1, ''], ...head('ENDBLK', 'AcDbBlockEnd'));
  }
  return section('BLOCKS', tags);
}

function objectsSection({ handles, plotStyle, spaces }: Parts): Tag[] {
  const root = handles.next();
  const groups = handles.next();
  const layouts = handles.next();
  const plotStyles = handles.next();
  const entries = (pairs: readonly (readonly [string, string])[]): Tag[] =>
    pairs.flatMap(([name, handle]): Tag[] => [
      [3, name],
      [350, handle],
    ]);
  return section('OBJECTS', [
    ...dictionary('DICTIONARY', root, '0'),
    ...entries([
      ['ACAD_GROUP', groups],
      ['ACAD_LAYOUT', layouts],
      ['ACAD_PLOTSTYLENAME', plotStyles],
    ]),
    ...dictionary('DICTIONARY', groups, root),
    ...dictionary('DICTIONARY', layouts, root),
    ...entries(spaces.map((space) => [space.layout, space.layoutHandle] as const)),
    ...dictionary('ACDBDICTIONARYWDFLT', plotStyles, root),
    ...entries([['Normal', plotStyle]]),
    [100, 'AcDbDictionaryWithDefault'],
    [340, plotStyle],
    [0, 'ACDBPLACEHOLDER'],
    [5, plotStyle],
    [330, plotStyles],
    ...spaces.flatMap((space, index) => layoutTags(space, layouts, index)),
  ]);
}

function dictionary(kind: string, handle: string, owner: string): Tag[] {
  return [
    [0, kind],
    [5, handle],
    [330, owner],
    [100, 'AcDbDictionary'],
    [281, '1'],
  ];
}

/** Group codes 40 to 149 of a layout's plot settings: margins, paper size and scales; all plain defaults. */
function layoutTags(space: Space, owner: string, order: number): Tag[] {
  const zeros = (codes: readonly number[]): Tag[] => codes.map((code): Tag => [code, '0.0']);
  return [
    [0, 'LAYOUT'],
    [5, space.layoutHandle],
    [330, owner],
    [100, 'AcDbPlotSettings'],
    [1, ''],
    [2, ''],
    [4, ''],
    [6, ''],
    ...zeros([40, 41, 42, 43, 44, 45, 46, 47, 48, 49, 140, 141]),
    [142, '1.0'],
    [143, '1.0'],
    [70, order === 0 ? '1712' : '688'],
    [72, '0'],
    [73, '0'],
    [74, '5'],
    [7, ''],
    [75, '16'],
    [147, '1.0'],
    ...zeros([148, 149]),
    [100, 'AcDbLayout'],
    [1, space.layout],
    [70, '1'],
    [71, String(order)],
    ...zeros([10, 20]),
    [11, '420.0'],
    [21, '297.0'],
    ...zeros([12, 22, 32]),
    ...zeros([14, 24, 34]),
    ...zeros([15, 25, 35]),
    [146, '0.0'],
    ...zeros([13, 23, 33]),
    [16, '1.0'],
    ...zeros([26, 36]),
    [17, '0.0'],
    [27, '1.0'],
    [37, '0.0'],
    [76, '0'],
    [330, space.record],
  ];
}

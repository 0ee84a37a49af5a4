/**
 * What is wrong with a text DXF by the letter of the DXF reference: lines that do not pair up, values not of their code's type, sections,
 * tables, blocks and polylines that do not close, entities without the groups that they must have, counts that do not hold. Shares no
 * code with the reader. What has none of these faults is a drawing, whatever it was damaged from. Lenient where the reference is: a group
 * that an entity does not know is passed over.
 */

interface Tag {
  readonly code: number;
  readonly value: string;
}

/** A fault without its place: two files with the same faults are equally right. */
export function dxfFaults(text: string): string[] {
  const faults: string[] = [];
  const tags = tagsOf(text, faults);
  walkSections(tags, faults);
  return faults;
}

const FLOAT = /^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d{1,3})?\s*$/i;
const WHOLE = /^\s*[-+]?\d+\s*$/;

/** DXF reference, "Group Code Value Types". */
function isFloat(code: number): boolean {
  return (
    (code >= 10 && code < 60) ||
    (code >= 110 && code < 150) ||
    (code >= 210 && code < 240) ||
    (code >= 460 && code < 470) ||
    (code >= 1010 && code < 1060)
  );
}

function isWhole(code: number): boolean {
  return (
    (code >= 60 && code < 100) ||
    (code >= 160 && code < 180) ||
    (code >= 270 && code < 290) ||
    (code >= 370 && code < 390) ||
    (code >= 400 && code < 410) ||
    (code >= 420 && code < 430) ||
    (code >= 440 && code < 460)
  );
}

function tagsOf(text: string, faults: string[]): Tag[] {
  const lines = text.split(/\r\n|\n|\r/);
  if (lines.at(-1) === '') lines.pop();
  if (lines.length % 2 === 1) faults.push('an odd number of lines');
  const tags: Tag[] = [];
  for (let n = 0; n + 1 < lines.length; n += 2) {
    const [codeText = '', value = ''] = [lines[n], lines[n + 1]];
    const code = WHOLE.test(codeText) ? Number(codeText) : Number.NaN;
    if (!(code >= -5 && code <= 1071)) {
      faults.push('a line that is no group code');
      continue;
    }
    if (!isRightValue(code, value))
      faults.push(`group ${code} is no ${isFloat(code) ? 'number' : 'whole number'}`);
    if (code === 0 && !/^\s*[0-9A-Z_*]*[A-Z][0-9A-Z_*]*\s*$/.test(value))
      faults.push('a type without a name');
    tags.push({ code, value: value.trim() });
  }
  if (tags.at(-1)?.code !== 0 || tags.at(-1)?.value !== 'EOF') faults.push('no end of file');
  return tags;
}

/** Whether a value is of its code's type; of texts anything is. */
export function isRightValue(code: number, value: string): boolean {
  if (isFloat(code)) return FLOAT.test(value) && Number.isFinite(Number(value));
  return !isWhole(code) || WHOLE.test(value);
}

interface Part {
  readonly kind: string;
  readonly tags: readonly Tag[];
}

function elementsOf(tags: readonly Tag[], faults: string[]): Part[] {
  const elements: { kind: string; tags: Tag[] }[] = [];
  for (const tag of tags) {
    if (tag.code === 999) continue;
    if (tag.code === 0) elements.push({ kind: tag.value, tags: [] });
    else if (elements.length === 0) faults.push('a group before the first type');
    else elements.at(-1)?.tags.push(tag);
  }
  return elements;
}

const SECTIONS = [
  'HEADER',
  'CLASSES',
  'TABLES',
  'BLOCKS',
  'ENTITIES',
  'OBJECTS',
  'THUMBNAILIMAGE',
  'ACDSDATA',
];

interface Walk {
  section: string;
  /** BLOCK or TABLE. */
  opened: string;
  readonly seen: Set<string>;
  readonly blocks: Set<string>;
  readonly inserted: string[];
  readonly faults: string[];
}

function walkSections(tags: readonly Tag[], faults: string[]): void {
  const elements = elementsOf(tags, faults);
  const walk: Walk = { section: '', opened: '', seen: new Set(), blocks: new Set(), inserted: [], faults };
  for (const [n, element] of elements.entries()) {
    if (walkBounds(walk, element)) continue;
    if (element.kind === 'EOF') {
      if (n < elements.length - 1) faults.push('something after the end of file');
    } else if (walk.section === '') faults.push('something outside sections');
    else if (walk.section === 'ENTITIES' || walk.section === 'BLOCKS') {
      if (walk.section === 'BLOCKS' && walk.opened === '') faults.push('an entity between blocks');
      checkEntity(elements, n, faults);
      if (element.kind === 'INSERT') walk.inserted.push(groupOf(element, 2) ?? '');
    }
  }
  if (walk.section !== '') faults.push('a section that does not end');
  if (!walk.seen.has('ENTITIES')) faults.push('no section of entities');
  const missing = walk.inserted.filter((name) => !walk.blocks.has(name.toUpperCase()));
  faults.push(...missing.map((name) => `block ${name} is not there`));
}

function groupOf({ tags }: Part, wanted: number): string | undefined {
  return tags.find(({ code }) => code === wanted)?.value;
}

/** Begins and ends of sections, tables and blocks; false for what stands within. */
function walkBounds(walk: Walk, element: Part): boolean {
  const { faults } = walk;
  switch (element.kind) {
    case 'SECTION':
      beginSection(walk, element);
      return true;
    case 'ENDSEC':
      if (walk.section === '') faults.push('an end without a section');
      if (walk.opened !== '') faults.push(`${walk.opened} that does not end`);
      walk.section = '';
      walk.opened = '';
      return true;
    case 'BLOCK':
    case 'TABLE': {
      if (walk.opened !== '') faults.push(`${walk.opened} that does not end`);
      walk.opened = element.kind;
      const name = groupOf(element, 2);
      if (name === undefined) faults.push(`${element.kind} without a name`);
      else if (element.kind === 'BLOCK') walk.blocks.add(name.toUpperCase());
      return true;
    }
    case 'ENDBLK':
    case 'ENDTAB':
      if (walk.opened !== (element.kind === 'ENDBLK' ? 'BLOCK' : 'TABLE'))
        faults.push(`${element.kind} of nothing`);
      walk.opened = '';
      return true;
    default:
      return false;
  }
}

function beginSection(walk: Walk, element: Part): void {
  const { faults, seen } = walk;
  if (walk.section !== '') faults.push('a section in a section');
  walk.section = groupOf(element, 2) ?? 'nameless';
  if (!SECTIONS.includes(walk.section)) faults.push('a section of no known name');
  if (seen.has(walk.section)) faults.push(`a second section ${walk.section}`);
  seen.add(walk.section);
  if (walk.section === 'HEADER') checkHeader(element, faults);
}

function checkHeader({ tags }: Part, faults: string[]): void {
  for (const { code, value } of tags) {
    if (code === 9 && !/^\$[A-Z0-9]+$/.test(value)) faults.push('a header variable of no name');
  }
  for (const [n, { code, value }] of tags.entries()) {
    if (code !== 9) continue;
    const next = tags[n + 1];
    if (next === undefined || next.code === 9) faults.push(`${value} without a value`);
    if (value === '$INSUNITS' && next?.code !== 70) faults.push('$INSUNITS that is no number');
  }
}

/** Groups that each must have (DXF reference, entities). */
const NEEDED = new Map<string, readonly number[]>(
  Object.entries({
    LINE: [10, 20, 11, 21],
    CIRCLE: [10, 20, 40],
    ARC: [10, 20, 40, 50, 51],
    ELLIPSE: [10, 20, 11, 21, 40],
    LWPOLYLINE: [90],
    VERTEX: [10, 20],
    SPLINE: [71],
    INSERT: [2, 10, 20],
    TEXT: [10, 20, 1],
    MTEXT: [10, 20, 1],
  }),
);
/** Those of which an entity has one only. */
const SINGLE = new Map<string, readonly number[]>(
  Object.entries({
    LINE: [8, 10, 20, 11, 21],
    CIRCLE: [8, 10, 20, 40],
    ARC: [8, 10, 20, 40, 50, 51],
    ELLIPSE: [8, 10, 20, 11, 21, 40, 41, 42],
    INSERT: [8, 2, 10, 20, 41, 42, 50, 70, 71],
  }),
);
const KINDS = [
  ...NEEDED.keys(),
  ...[
    'POLYLINE',
    'SEQEND',
    'POINT',
    'HATCH',
    'SOLID',
    'TRACE',
    'DIMENSION',
    'LEADER',
    'MULTILEADER',
    'ATTRIB',
    'ATTDEF',
    '3DFACE',
  ],
  ...[
    '3DSOLID',
    'REGION',
    'BODY',
    'VIEWPORT',
    'IMAGE',
    'XLINE',
    'RAY',
    'WIPEOUT',
    'TOLERANCE',
    'MLINE',
    'ACAD_PROXY_ENTITY',
    'SHAPE',
  ],
  ...[
    'HELIX',
    'MESH',
    'SURFACE',
    'LIGHT',
    'ARC_DIMENSION',
    'ACAD_TABLE',
    'OLE2FRAME',
    'UNDERLAY',
    'PDFUNDERLAY',
    'SECTIONOBJECT',
  ],
];

function checkEntity(elements: readonly Part[], n: number, faults: string[]): void {
  const { kind, tags } = elements[n] ?? { kind: '', tags: [] };
  if (!KINDS.includes(kind)) faults.push(`an entity of no known kind, ${kind}`);
  const own = beforeExtensions(tags);
  const countOf = (wanted: number) => own.filter(({ code }) => code === wanted).length;
  for (const code of NEEDED.get(kind) ?? [])
    if (countOf(code) === 0) faults.push(`${kind} without group ${code}`);
  for (const code of SINGLE.get(kind) ?? [])
    if (countOf(code) > 1) faults.push(`${kind} with group ${code} twice`);
  checkCounts({ kind, tags: own }, faults);
  if (kind === 'POLYLINE') {
    let next = n + 1;
    while (elements[next]?.kind === 'VERTEX') next++;
    if (elements[next]?.kind !== 'SEQEND') faults.push('POLYLINE that does not end');
  }
  if (kind === 'VERTEX' && !['VERTEX', 'POLYLINE'].includes(elements[n - 1]?.kind ?? '')) {
    faults.push('VERTEX of no polyline');
  }
}

function checkCounts(entity: Part, faults: string[]): void {
  const { kind, tags: own } = entity;
  const countOf = (wanted: number) => own.filter(({ code }) => code === wanted).length;
  const numberOf = (wanted: number) => Number(groupOf(entity, wanted) ?? 0);
  if ((kind === 'CIRCLE' || kind === 'ARC') && numberOf(40) <= 0) faults.push(`${kind} without a radius`);
  if (kind === 'LWPOLYLINE') checkPairs(own, [10, numberOf(90)], faults);
  if (kind !== 'SPLINE') return;
  if (numberOf(74) > 0 && countOf(10) === 0) checkPairs(own, [11, numberOf(74)], faults);
  else checkPairs(own, [10, numberOf(73)], faults);
  if (countOf(40) !== numberOf(72)) faults.push('SPLINE whose count of knots does not hold');
}

/** Extended data belongs to other programs. */
function beforeExtensions(tags: readonly Tag[]): readonly Tag[] {
  const at = tags.findIndex(({ code }) => code >= 1000);
  return at < 0 ? tags : tags.slice(0, at);
}

function checkPairs(
  own: readonly Tag[],
  [x, count]: readonly [x: number, count: number],
  faults: string[],
): void {
  const points = own.filter(({ code }) => code === x);
  if (points.length !== count) faults.push(`a count of points that does not hold, group ${x}`);
  own.forEach(({ code }, n) => {
    if (code === x && own[n + 1]?.code !== x + 10) faults.push(`a point without group ${x + 10}`);
    if (code === x + 10 && own[n - 1]?.code !== x) faults.push(`a point without group ${x}`);
  });
}

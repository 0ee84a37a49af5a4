/** Which entity is read how, and which are passed over and why. Every kind that is not read has a reason that the engineer sees. */
import { decodeInsert } from './decode-insert.ts';
import { decodeMultilineText, decodeText } from './decode-note.ts';
import { decodeLightPolyline, decodeLine, decodeOldPolyline } from './decode-polyline.ts';
import { decodeArc, decodeCircle, decodeEllipse } from './decode-round.ts';
import { decodeSpline } from './decode-spline.ts';
import type { Decoded, PassedEntity } from './decoded.ts';
import { type EntityTags, hasBadNumber } from './entity-tags.ts';

const READ: ReadonlyMap<string, (entity: EntityTags) => Decoded> = new Map([
  ['LINE', decodeLine],
  ['LWPOLYLINE', decodeLightPolyline],
  ['POLYLINE', decodeOldPolyline],
  ['ARC', decodeArc],
  ['CIRCLE', decodeCircle],
  ['ELLIPSE', decodeEllipse],
  ['SPLINE', decodeSpline],
  ['INSERT', decodeInsert],
  ['TEXT', decodeText],
  ['MTEXT', decodeMultilineText],
]);

const ANNOTATION = 'it is annotation, not an outline';
const FILL = 'it is a filled area; its outline is usually drawn as well';
const ENDLESS = 'it is a construction line without ends';
const PICTURE = 'it is a picture, a frame or a window';
const BODY = 'it is a solid or surface, whose data only its own program can read';
const MESHES = 'it is a mesh or face in space, not an outline';

/** Kinds without outlines, by reason. */
const HARMLESS: ReadonlyMap<string, string> = byReason([
  [
    ANNOTATION,
    'DIMENSION ARC_DIMENSION LARGE_RADIAL_DIMENSION LEADER MULTILEADER MLEADER TOLERANCE ATTDEF ATTRIB ACAD_TABLE RTEXT ARCALIGNEDTEXT',
  ],
  [FILL, 'HATCH MPOLYGON SOLID TRACE'],
  [ENDLESS, 'XLINE RAY'],
  [
    PICTURE,
    'IMAGE WIPEOUT OLEFRAME OLE2FRAME VIEWPORT PDFUNDERLAY DWFUNDERLAY DGNUNDERLAY LIGHT SUN CAMERA SECTION GEOPOSITIONMARKER POINTCLOUD',
  ],
  ['it is a point', 'POINT'],
]);

/** Kinds that may be meant as outlines and cannot be read. */
const SERIOUS: ReadonlyMap<string, string> = byReason([
  [
    BODY,
    'REGION 3DSOLID BODY SURFACE EXTRUDEDSURFACE LOFTEDSURFACE REVOLVEDSURFACE SWEPTSURFACE PLANESURFACE NURBSURFACE',
  ],
  [MESHES, '3DFACE MESH'],
  ['it is a bundle of parallel lines', 'MLINE'],
  ['it is a helix in space', 'HELIX'],
  ['it is a shape from a font file', 'SHAPE'],
  ['it belongs to another program', 'ACAD_PROXY_ENTITY OBJECT_PTR'],
  ['it is a vertex without its polyline', 'VERTEX'],
]);

function byReason(groups: readonly (readonly [why: string, kinds: string])[]): Map<string, string> {
  return new Map(groups.flatMap(([why, kinds]) => kinds.split(' ').map((kind) => [kind, why] as const)));
}

export function decodeEntity(entity: EntityTags): Decoded {
  const read = READ.get(entity.kind);
  if (read === undefined) return passOver(entity.kind);
  const decoded = read(entity);
  if (!hasBadNumber(entity)) return decoded;
  // What followed from the bad number is not news.
  entity.findings.splice(0, entity.findings.length, ...entity.findings.filter(isBadNumber));
  return undefined;
}

function isBadNumber({ code }: { readonly code: string }): boolean {
  return code === 'entity-number-bad';
}

function passOver(kind: string): PassedEntity {
  const harmless = HARMLESS.get(kind);
  if (harmless !== undefined) return { what: 'passed', why: harmless, mayMatter: false };
  return { what: 'passed', why: SERIOUS.get(kind) ?? 'Isobath does not know this kind', mayMatter: true };
}

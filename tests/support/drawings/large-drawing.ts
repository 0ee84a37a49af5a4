/**
 * A synthetic drawing of any size with the mix of entities that flat patterns have: polylines with bulges, lines, arcs, circles, a few
 * splines and texts, with handles, owners and subclass marks as drawing programs write them. Deterministic.
 */
import { drawingText, entity, type Tag } from './raw-drawing.ts';

/** About 225 bytes an entity: 225 000 entities make 50 MB. */
export function largeDrawing(entities: number): string {
  const parts: string[] = [];
  for (let n = 0; n < entities; n++) parts.push(oneEntity(n));
  return drawingText({
    layers: LAYERS.map((name) => ({ name })),
    entities: parts.join(''),
  });
}

const LAYERS = ['TRIM', 'POCKET-1', 'POCKET-2', 'BAYS', 'NOTES'];

function oneEntity(n: number): string {
  const x = (n % 500) * 12.5;
  const y = Math.floor(n / 500) * 12.5;
  const share = n % 10;
  if (share < 5)
    return entity('LINE', ...head(n, 'AcDbLine'), ...at(10, x, y), ...at(11, x + 10.123456, y + wave(n)));
  if (share < 7)
    return entity(
      'LWPOLYLINE',
      ...head(n, 'AcDbPolyline'),
      [90, 8],
      [70, 1],
      [43, 0],
      ...roundedSquare(x, y, 1 + (n % 7) / 8),
    );
  if (share < 8)
    return entity(
      'ARC',
      ...head(n, 'AcDbCircle'),
      ...at(10, x, y),
      [40, radius(n)],
      [100, 'AcDbArc'],
      [50, n % 360],
      [51, (n * 7 + 45) % 360],
    );
  if (share < 9) return entity('CIRCLE', ...head(n, 'AcDbCircle'), ...at(10, x, y), [40, radius(n)]);
  return entity(
    'TEXT',
    ...head(n, 'AcDbText'),
    ...at(10, x, y),
    [40, 2.5],
    [1, `BAY ${n}`],
    [100, 'AcDbText'],
  );
}

function head(n: number, mark: string): Tag[] {
  const handle = (n + 0x100).toString(16).toUpperCase();
  return [
    [5, handle],
    [330, '1F'],
    [100, 'AcDbEntity'],
    [8, LAYERS[n % LAYERS.length] ?? '0'],
    [62, 256],
    [370, -1],
    [100, mark],
  ];
}

function at(code: number, x: number, y: number): Tag[] {
  return [
    [code, x.toFixed(6)],
    [code + 10, y.toFixed(6)],
    [code + 20, '0.000000'],
  ];
}

function roundedSquare(x: number, y: number, r: number): Tag[] {
  const corners: readonly (readonly [number, number, number])[] = [
    [x + r, y, 0],
    [x + 10 - r, y, BULGE],
    [x + 10, y + r, 0],
    [x + 10, y + 10 - r, BULGE],
    [x + 10 - r, y + 10, 0],
    [x + r, y + 10, BULGE],
    [x, y + 10 - r, 0],
    [x, y + r, BULGE],
  ];
  return corners.flatMap(([vx, vy, bulge]): Tag[] => [
    [10, vx.toFixed(6)],
    [20, vy.toFixed(6)],
    [42, bulge.toFixed(15)],
  ]);
}

const BULGE = Math.tan(Math.PI / 8);

function radius(n: number): string {
  return (1 + (n % 40) / 11).toFixed(6);
}

function wave(n: number): number {
  return Math.sin(n * 0.7) * 5;
}

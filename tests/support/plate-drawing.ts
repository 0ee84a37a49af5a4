/** A drawing of rectangles, small enough to read, in millimetres. */

/** A plate of 200 × 120 on layer EDGE with one pocket of 80 × 50 on layer POCKET. */
export function plateDrawing(): string {
  return drawingOf([
    ...rectangle('EDGE', { x: 0, y: 0, width: 200, height: 120 }),
    ...rectangle('POCKET', { x: 30, y: 40, width: 80, height: 50 }),
  ]);
}

function drawingOf(entities: readonly string[]): string {
  const lines = [
    ...[
      '0',
      'SECTION',
      '2',
      'HEADER',
      '9',
      '$ACADVER',
      '1',
      'AC1015',
      '9',
      '$INSUNITS',
      '70',
      '4',
      '0',
      'ENDSEC',
    ],
    ...['0', 'SECTION', '2', 'ENTITIES', ...entities, '0', 'ENDSEC', '0', 'EOF'],
  ];
  return `${lines.join('\n')}\n`;
}

interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function rectangle(layer: string, { x, y, width, height }: Rectangle): string[] {
  const corners = [
    [x, y],
    [x + width, y],
    [x + width, y + height],
    [x, y + height],
  ];
  return [
    ...['0', 'LWPOLYLINE', '100', 'AcDbEntity', '8', layer, '100', 'AcDbPolyline', '90', '4', '70', '1'],
    ...corners.flatMap(([cornerX, cornerY]) => ['10', String(cornerX), '20', String(cornerY)]),
  ];
}

/** Drawings of rectangles, small enough to read or large enough to keep a planner busy, in millimetres. */

/** A plate of 200 × 120 on layer EDGE with one pocket of 80 × 50 on layer POCKET. */
export function plateDrawing(): string {
  return drawingOf([
    ...rectangle('EDGE', { x: 0, y: 0, width: 200, height: 120 }),
    ...rectangle('POCKET', { x: 30, y: 40, width: 80, height: 50 }),
  ]);
}

/** A plate with so many pockets on layer POCKET, each with a deeper one inside on layer WELL. */
export function gridDrawing(columns: number, rows: number): string {
  const entities = rectangle('EDGE', { x: -20, y: -20, width: columns * 60 + 30, height: rows * 60 + 30 });
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const [x, y] = [column * 60, row * 60];
      entities.push(...rectangle('POCKET', { x, y, width: 50, height: 50 }));
      entities.push(...rectangle('WELL', { x: x + 12, y: y + 12, width: 26, height: 26 }));
    }
  }
  return drawingOf(entities);
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

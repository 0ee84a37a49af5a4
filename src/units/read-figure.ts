/** Reads a figure without a unit as people type it: `1.05`, `1,05`. */

export function readFigure(text: string): number | undefined {
  const figure = text.trim().replace(',', '.');
  const value = Number(figure);
  return figure === '' || !Number.isFinite(value) ? undefined : value;
}

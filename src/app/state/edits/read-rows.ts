/** Reads rows of figures as people type them: "12.5 40; 300 40", also a row a line. Undefined where one of them is no such row. */

export function readRows(text: string, columns: number): number[][] | undefined {
  const rows = text
    .split(/[;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .map((each) => each.split(/\s+/).map(Number));
  const isWhole = rows.every((row) => row.length === columns && row.every(Number.isFinite));
  return isWhole ? rows : undefined;
}

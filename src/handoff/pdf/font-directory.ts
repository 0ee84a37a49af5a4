/**
 * The head of a TrueType font's table directory (OpenType 1.9, Table directory): how many tables, and three figures that
 * follow from it. fontkit takes them from logarithms, whose last bit engines differ in; here they come from halving.
 */
export function withPlainDirectory(font: Uint8Array): Uint8Array {
  const settled = font.slice();
  const view = new DataView(settled.buffer);
  const tables = view.getUint16(4);
  let [power, doublings] = [1, 0];
  for (; power * 2 <= tables; doublings++) power *= 2;
  view.setUint16(6, power * 16);
  view.setUint16(8, doublings);
  view.setUint16(10, (tables - power) * 16);
  return settled;
}

/** Minutes in the bath that a depth takes at a rate: depth / rate (docs/method.md, M5.1). */
export function etchMinutes(cut: { readonly depth: number; readonly rate: number }): number {
  return cut.depth / cut.rate;
}

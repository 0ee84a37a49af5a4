/** Findings about the drawing itself, by code, in their order: those with a line of the file or a layer and no part of a plan. */
import type { Finding } from '#findings/finding.ts';

export function troubleOf(findings: readonly Finding[]): [Finding, ...Finding[]][] {
  const kinds = new Map<string, [Finding, ...Finding[]]>();
  for (const finding of findings) {
    const { path, line, layer, regions } = finding.place;
    const isOfDrawing = finding.code.startsWith('drawing-') || line !== undefined || layer !== undefined;
    if (!isOfDrawing || path !== undefined || regions !== undefined) continue;
    const same = kinds.get(finding.code);
    if (same === undefined) kinds.set(finding.code, [finding]);
    else same.push(finding);
  }
  return [...kinds.values()];
}

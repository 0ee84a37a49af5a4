/** Colours of the band along a drawn edge: of the stage that makes it, or of what is picked. */
import type { SceneTheme } from './scene-theme.ts';
import { lookOf, mixed } from './stage-looks.ts';

/** Of its fill, that is its border's colour; the rest is land. */
const TINT = 0.45;

/** Its border, and what fills it. */
export function bandColors(
  color: string,
  { isPicked, theme }: { readonly isPicked: boolean; readonly theme: SceneTheme },
): { readonly line: string; readonly floor: string } {
  const own = isPicked ? theme.accent : lookOf(color, theme).mark;
  return { line: own, floor: mixed(theme.land, own, TINT) };
}

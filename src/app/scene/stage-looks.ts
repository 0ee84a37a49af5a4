/**
 * How a stage's colour is drawn: its line, the casing that makes the line stand out, its mark, and the tint of its floors.
 * Contrast is that of WCAG 2.2: a line needs 3 : 1 against what it lies on (1.4.11), else its casing has it.
 */
import {
  useMode as addMode,
  formatHex,
  interpolate,
  modeLrgb,
  modeOklch,
  modeRgb,
  wcagContrast,
} from 'culori/fn';
import type { SceneTheme } from './scene-theme.ts';

addMode(modeRgb);
addMode(modeLrgb);
const toOklch = addMode(modeOklch);

export interface StageLook {
  readonly line: string;
  readonly casing: string;
  /** Of one colour: the line's own, or its casing's where the line does not stand out. */
  readonly mark: string;
  /** Its floors in plan. */
  readonly floor: string;
  /** Words and numbers on the floor. */
  readonly words: string;
}

const LEAST_CONTRAST = 3;
/** OKLCH of a casing that takes the line's own hue: dark on a light page, pale on a dark one. */
const OWN_HUE = { light: { l: 0.34, c: 0.07 }, dark: { l: 0.84, c: 0.055 } };
const DARK_WORDS = '#000000';
const LIGHT_WORDS = '#ffffff';

export function lookOf(color: string, theme: SceneTheme): StageLook {
  const floor = mixed(theme.land, color, theme.tint);
  const standsOut = [theme.land, theme.ground].every((under) => wcagContrast(color, under) >= LEAST_CONTRAST);
  const casing = standsOut ? theme.ground : ofOwnHue(color, theme);
  return { line: color, casing, mark: standsOut ? color : casing, floor, words: wordsOn(floor) };
}

/** Whichever of near black and white stands out more; the better of the two always reaches 4.5 : 1. */
export function wordsOn(color: string): string {
  return wcagContrast(color, DARK_WORDS) >= wcagContrast(color, LIGHT_WORDS) ? DARK_WORDS : LIGHT_WORDS;
}

/** Mixed as the eye sees it (sRGB values). */
export function mixed(from: string, to: string, share: number): string {
  return formatHex(interpolate([from, to], 'rgb')(share));
}

function ofOwnHue(color: string, { isDark }: SceneTheme): string {
  const hue = toOklch(color)?.h ?? 0;
  const { l, c } = isDark ? OWN_HUE.dark : OWN_HUE.light;
  return formatHex({ mode: 'oklch', l, c, h: hue });
}

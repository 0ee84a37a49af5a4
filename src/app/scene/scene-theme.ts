/** Colours of the sheet that are not stages: neutral metal, ink and the selection, whose blue no stage ever has. */

export interface SceneTheme {
  readonly metal: string;
  /** Masked surface: darker and warmer than metal, lighter than ink. */
  readonly maskant: string;
  readonly ink: string;
  /** Scribe lines that are still sealed over. */
  readonly sealed: string;
  readonly stop: string;
  readonly faint: string;
  readonly selection: string;
  readonly ground: string;
}

/** How much of the stage's own colour a tinted region keeps; the rest is metal, so that lines stay readable on it. */
export const TINT = 0.62;

const LIGHT: SceneTheme = {
  metal: '#d5d9dd',
  maskant: '#b9b4a9',
  ink: '#2b3138',
  sealed: '#5b564b',
  stop: '#b0201a',
  faint: '#9aa2aa',
  selection: '#1546d0',
  ground: '#f3f4f2',
};

const DARK: SceneTheme = {
  metal: '#59616a',
  maskant: '#3f3b34',
  ink: '#e6e9ec',
  sealed: '#a39c8d',
  stop: '#ff8e85',
  faint: '#7c858e',
  selection: '#9dbaff',
  ground: '#14171a',
};

export function sceneTheme(isDark: boolean): SceneTheme {
  return isDark ? DARK : LIGHT;
}

/** Colours of the sheet that are not stages: neutral metal, ink, and the accent, whose blue no stage ever has. */

export interface SceneTheme {
  readonly isDark: boolean;
  /** Untouched metal. */
  readonly land: string;
  /** Cut metal. */
  readonly metal: string;
  /** Masked surface: warm, where metal is cool. */
  readonly maskant: string;
  /** The edge of the part and of holes through it. */
  readonly outline: string;
  /** Linework inside the part, which stands back: there scribe lines are what is read. */
  readonly linework: string;
  /** Scribe lines that are still sealed over. */
  readonly sealed: string;
  readonly stop: string;
  readonly accent: string;
  readonly ground: string;
  /** How much of the stage's own colour a floor keeps in plan; the rest is land, so that lines and words stay readable on it. */
  readonly tint: number;
}

const LIGHT: SceneTheme = {
  isDark: false,
  land: '#d3d6da',
  metal: '#babec3',
  maskant: '#c3bdb1',
  outline: '#31363b',
  linework: '#72767b',
  sealed: '#5b564b',
  stop: '#c22826',
  accent: '#285cc2',
  ground: '#fafbfc',
  tint: 0.42,
};

const DARK: SceneTheme = {
  isDark: true,
  land: '#5f6469',
  metal: '#44484d',
  maskant: '#524c42',
  outline: '#c0c5c9',
  linework: '#999ea3',
  sealed: '#a39c8d',
  stop: '#f66d62',
  accent: '#80acfb',
  ground: '#121518',
  tint: 0.62,
};

export function sceneTheme(isDark: boolean): SceneTheme {
  return isDark ? DARK : LIGHT;
}

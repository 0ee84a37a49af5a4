/** Colours of the sheet that are not stages: neutral metal, ink and the selection, whose blue no stage ever has. */

export interface SceneTheme {
  readonly metal: string;
  readonly ink: string;
  readonly faint: string;
  readonly selection: string;
  readonly ground: string;
}

const LIGHT: SceneTheme = {
  metal: '#d5d9dd',
  ink: '#2b3138',
  faint: '#9aa2aa',
  selection: '#1546d0',
  ground: '#f3f4f2',
};

const DARK: SceneTheme = {
  metal: '#59616a',
  ink: '#e6e9ec',
  faint: '#7c858e',
  selection: '#9dbaff',
  ground: '#14171a',
};

export function sceneTheme(isDark: boolean): SceneTheme {
  return isDark ? DARK : LIGHT;
}

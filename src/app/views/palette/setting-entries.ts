/** Every field of the job and every file of the hand-off as an entry of the palette, which leads to its control. */

import { PANEL_TITLES, type PanelName } from '#app/state/layout-state.ts';
import { focusControl } from '#app/views/focus-control.ts';
import type { Workbench } from '#app/views/workbench-context.ts';
import { FIELD_LABELS } from '#job/field-labels.ts';
import { HANDOFF_FILES, HANDOFF_LIST } from '#job/handoff-list.ts';
import type { PaletteEntry } from './palette-entry.ts';

export function settingEntries(layout: Workbench['layout']): PaletteEntry[] {
  const entry = (path: string, label: string): PaletteEntry => {
    const panel = panelOf(path);
    const run = () => {
      layout.setState({ panel });
      void focusControl(label);
    };
    return { key: `setting ${path}`, words: label, aside: PANEL_TITLES[panel], run };
  };
  return [
    ...[...FIELD_LABELS].map(([path, label]) => entry(path, label)),
    ...HANDOFF_FILES.map((word) => entry(`handoff.files.${word}`, HANDOFF_LIST[word].label)),
  ];
}

const OF_THE_DRAWING = ['layers', 'far', 'drawing', 'drawingUnits', 'joinTolerance', 'wideLines'];

function panelOf(path: string): PanelName {
  const group = path.split('.')[0] ?? '';
  if (group === 'handoff' || group === 'sections') return 'handoff';
  if (group === 'requirements') return 'requirements';
  return OF_THE_DRAWING.includes(group) ? 'drawing' : 'stock';
}

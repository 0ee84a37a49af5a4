/** What the palette finds: actions, regions and findings by their words, and what a number may mean. */

import { PANEL_TITLES, type PanelName } from '#app/state/layout-state.ts';
import { fetchSample, SAMPLES } from '#app/state/opening/samples.ts';
import { bySeverity } from '#app/state/plan-standing.ts';
import { runEnd } from '#app/state/run-end.ts';
import { faceOnShow, hasFarFace } from '#app/state/shown-face.ts';
import { pickFiles } from '#app/views/pick-files.ts';
import { useGoTo } from '#app/views/use-go-to.ts';
import { useWorkbench, useWorkbenchState, type Workbench } from '#app/views/workbench-context.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { readFigure } from '#units/read-figure.ts';
import { readLength } from '#units/read-length.ts';
import { showLength, showMinutes } from '#units/show-length.ts';
import type { PaletteEntry } from './palette-entry.ts';
import { settingEntries } from './setting-entries.ts';

export interface PaletteSection {
  readonly title: string;
  readonly entries: readonly PaletteEntry[];
}

export function useEntries(text: string): readonly PaletteSection[] {
  const workbench = useWorkbench();
  const goTo = useGoTo();
  const { page, shapes } = useWorkbenchState((state) => state.derived);
  const unit = useWorkbenchState((state) => state.session.unit);
  const wanted = text.trim().toLowerCase();
  const isFound = ({ words, aside = '' }: PaletteEntry) => `${words} ${aside}`.toLowerCase().includes(wanted);
  const regions = shapes.map(
    ({ region }): PaletteEntry => ({
      key: `region ${region.id}`,
      words: region.id,
      aside: region.level > 0 ? `${showLength(region.level, unit)} deep, ${region.layer}` : region.layer,
      run: () => goTo({ regions: [region.id] }),
    }),
  );
  const { stops, warnings, notes } = bySeverity(page?.findings ?? []);
  const findings = [...stops, ...warnings, ...notes].map((finding, index): PaletteEntry => {
    const { regions: where } = finding.place;
    return {
      key: `finding ${index}`,
      words: sayFinding(finding, unit).title,
      ...(where === undefined ? {} : { aside: where.join(', ') }),
      run: () => {
        workbench.layout.setState({ panel: 'findings' });
        goTo(finding.place);
      },
    };
  });
  return [
    { title: 'Regions', entries: regions.filter((each) => matchesRegion(each, wanted)) },
    { title: 'Number', entries: numberEntries(text, workbench) },
    { title: 'Actions', entries: actionEntries(workbench).filter(isFound) },
    { title: 'Settings', entries: wanted === '' ? [] : settingEntries(workbench.layout).filter(isFound) },
    { title: 'Findings', entries: findings.filter(isFound) },
  ].filter(({ entries }) => entries.length > 0);
}

/** A number alone is meant for the name; other words may be of the layer too. */
function matchesRegion({ words, aside = '' }: PaletteEntry, wanted: string): boolean {
  if (wanted === '') return false;
  const isNumber = /^[\d.,]+$/.test(wanted);
  return (isNumber ? words : `${words} ${aside}`).toLowerCase().includes(wanted);
}

function numberEntries(text: string, { store, actions }: Workbench): PaletteEntry[] {
  const { session, derived } = store.getState();
  const plan = derived.page?.plan;
  const length = readLength(text, session.unit);
  const minute = readFigure(text);
  const entries: PaletteEntry[] = [];
  if (session.selection.length > 0 && length !== undefined && length > 0) {
    const names = session.selection.length > 4 ? 'the picked regions' : session.selection.join(', ');
    entries.push({
      key: 'depth',
      words: `Set the depth of ${names} to ${showLength(length, session.unit)}`,
      run: () =>
        actions.askOfSelection({ depth: length }, `depth ${showLength(length, session.unit)} of ${names}`),
    });
  }
  if (plan !== undefined && minute !== undefined && minute >= 0 && minute <= runEnd(plan)) {
    entries.push({
      key: 'minute',
      words: `The part as it is at ${showMinutes(minute)}`,
      run: () => actions.turnClock(minute),
    });
  }
  return entries;
}

function turnEntry({ store, actions }: Workbench): PaletteEntry[] {
  const state = store.getState();
  if (!hasFarFace(state)) return [];
  const run = () => actions.turnOver(faceOnShow(state) === 'near' ? 'far' : 'near');
  return [{ key: 'turn', words: 'Turn the part over', keys: 'T', run }];
}

function actionEntries(workbench: Workbench): PaletteEntry[] {
  const { actions, layout, mode, store } = workbench;
  const panel = (name: PanelName) => () => layout.setState({ panel: name });
  const isReady = store.getState().derived.page?.isWhole === true;
  const samples = SAMPLES.map((sample) => ({
    key: sample.file,
    words: `Open the sample ${sample.title}`,
    run: async () => actions.openSample(await fetchSample(sample)),
  }));
  return [
    { key: 'open', words: 'Open drawing or job', keys: 'Ctrl O', run: () => pickFiles(workbench) },
    { key: 'start', words: 'Jobs and samples', run: () => layout.setState({ over: 'start' }) },
    ...turnEntry(workbench),
    { key: 'undo', words: 'Undo', keys: 'Ctrl Z', run: actions.undo },
    { key: 'redo', words: 'Redo', keys: 'Ctrl Shift Z', run: actions.redo },
    ...(['drawing', 'requirements', 'stock', 'findings'] as const).map((name) => ({
      key: name,
      words: `Open the panel ${PANEL_TITLES[name]}`,
      run: panel(name),
    })),
    { key: 'handoff', words: 'Hand off: save the files', run: panel('handoff') },
    ...(isReady
      ? [
          {
            key: 'review',
            words: 'Review the stages',
            run: () => mode.setState({ mode: 'review', step: 0 }),
          },
          { key: 'tank', words: 'At the tank', run: () => mode.setState({ mode: 'tank', step: 0 }) },
        ]
      : []),
    { key: 'plan', words: 'Show the plan', run: () => actions.show('plan') },
    { key: 'relief', words: 'Show the relief', run: () => actions.show('relief') },
    { key: 'mm', words: 'Show lengths in millimetres', run: () => actions.readIn('mm') },
    { key: 'in', words: 'Show lengths in inches', run: () => actions.readIn('in') },
    { key: 'light', words: 'Light colours', run: () => layout.setState({ theme: 'light' }) },
    { key: 'dark', words: 'Dark colours', run: () => layout.setState({ theme: 'dark' }) },
    ...samples,
  ];
}

/** How the window is laid out, per user and not per job: which panel is open, the height of the foot, light or dark. Kept in the browser. */
import { createStore, type StoreApi } from 'zustand/vanilla';

/** The subjects of the side panel, in the order of the job. */
export const PANELS = ['drawing', 'requirements', 'stock', 'findings', 'handoff'] as const;
export type PanelName = (typeof PANELS)[number];

export const PANEL_TITLES: Readonly<Record<PanelName, string>> = {
  drawing: 'Drawing',
  requirements: 'Requirements',
  stock: 'Sheet and bath',
  findings: 'Findings',
  handoff: 'Hand-off',
};

export type Theme = 'system' | 'light' | 'dark';

/** Folded it keeps numbers and marks; pinned it says what each level leaves. */
export const LADDER_WIDTHS = ['folded', 'usual', 'pinned'] as const;
export type LadderWidth = (typeof LADDER_WIDTHS)[number];

export interface LayoutState {
  /** The subject that is open; undefined while the panel is folded to its rail. */
  readonly panel: PanelName | undefined;
  /** px; of section and clock together. */
  readonly footHeight: number;
  readonly theme: Theme;
  readonly ladder: LadderWidth;
  /** How a whole hand-off is saved. */
  readonly saveAs: 'zip' | 'folder';
  /** Who reviews, as typed last. */
  readonly reviewer: string;
  /** What lies over the window: none of it is kept. */
  readonly over: 'nothing' | 'start' | 'palette';
}

export const FOOT = { usual: 160, folded: 44, least: 136 } as const;

const USUAL: LayoutState = {
  reviewer: '',
  panel: 'findings',
  footHeight: FOOT.usual,
  theme: 'system',
  ladder: 'usual',
  saveAs: 'zip',
  over: 'nothing',
};
const KEY = 'isobath layout';

export type LayoutStore = StoreApi<LayoutState>;

/** A window too narrow for a panel beside the sheet begins with its rail. */
export function startLayout(isNarrow: boolean): LayoutStore {
  const kept = { ...USUAL, ...readKept(), over: 'nothing' } as const;
  const opensOn = kept.panel === 'handoff' ? 'findings' : kept.panel;
  const store = createStore<LayoutState>(() => ({
    ...kept,
    panel: isNarrow ? undefined : opensOn,
    ladder: isNarrow ? 'folded' : kept.ladder,
  }));
  store.subscribe(({ panel, footHeight, theme, saveAs, ladder, reviewer }) => {
    try {
      // The panel of a narrow window is opened for a moment; what a wide one had stays.
      localStorage.setItem(
        KEY,
        JSON.stringify({
          panel: isNarrow ? kept.panel : panel,
          ladder: isNarrow ? kept.ladder : ladder,
          footHeight,
          theme,
          saveAs,
          reviewer,
        }),
      );
    } catch {
      // A browser that keeps nothing lays the window out as usual next time.
    }
  });
  return store;
}

function readKept(): Partial<LayoutState> {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof kept === 'object' && kept !== null ? readParts(kept as Record<string, unknown>) : {};
  } catch {
    return {};
  }
}

/** What another version wrote counts as far as it is understood. */
function readParts({
  panel,
  footHeight,
  theme,
  saveAs,
  reviewer,
  ladder,
}: Record<string, unknown>): Partial<LayoutState> {
  const known = PANELS.find((each) => each === panel);
  const width = LADDER_WIDTHS.find((each) => each === ladder);
  return {
    ...(known === undefined ? {} : { panel: known }),
    ...(typeof footHeight === 'number' && footHeight >= FOOT.folded ? { footHeight } : {}),
    ...(typeof reviewer === 'string' ? { reviewer } : {}),
    ...(width === undefined ? {} : { ladder: width }),
    ...(saveAs === 'folder' ? { saveAs } : {}),
    ...(theme === 'light' || theme === 'dark' ? { theme } : {}),
  };
}

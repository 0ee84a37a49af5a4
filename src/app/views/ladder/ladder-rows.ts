/** Figures beside the ladder: of levels of either face, of listed levels that came to nothing, and of the metal between. Pixels; pure. */
import type { SheetSide } from '#job/job.ts';
import { placeRows } from './ladder-layout.ts';
import { belowNear, type LadderSide, type SideLevel } from './ladder-sides.ts';

/** Height of a figure, px: so near they may stand. */
export const FIGURE = 16.5;
/** Of the words in the metal between both faces, and what the bar must have for them. */
const BETWEEN = { words: 30, room: 44 };

interface RowPlace {
  readonly key: string;
  /** Where its depth lies, px from the top. */
  readonly from: number;
  /** Middle of its figure. */
  readonly to: number;
}

export type LadderRow = RowPlace &
  (
    | { readonly kind: 'level'; readonly planned: SideLevel; readonly face: SheetSide }
    | { readonly kind: 'other'; readonly planned: SideLevel; readonly face: SheetSide }
    | { readonly kind: 'unused'; readonly level: number }
    | { readonly kind: 'between'; readonly left: number }
  );

export interface RowsAsk {
  readonly sides: readonly LadderSide[];
  /** Of the job's list, on the face on show. */
  readonly unused: readonly number[];
  /** Least metal between both faces, mm. */
  readonly least: number | undefined;
  readonly thickness: number;
  readonly yOf: (depth: number) => number;
  readonly height: number;
}

/** From top to bottom. */
export function ladderRows({ sides, unused, least, thickness, yOf, height }: RowsAsk): LadderRow[] {
  const at = (face: SheetSide, depth: number) => yOf(belowNear(face, depth, thickness));
  const shown = sides.find(({ isOnShow }) => isOnShow);
  const face = shown?.face ?? 'near';
  const isShownCut = (level: SideLevel) =>
    level.isCut && (shown?.levels ?? []).some(({ stage }) => stage.number === level.stage.number);
  const rows = [
    ...sides.flatMap(({ face, isOnShow, levels }) =>
      levels.flatMap((planned) => {
        if (!isOnShow && isShownCut(planned)) return [];
        const { level } = planned.stage;
        const kind = isOnShow ? ('level' as const) : ('other' as const);
        return [{ key: `${face} ${level}`, from: at(face, level), kind, planned, face }];
      }),
    ),
    ...unused.map((level) => ({
      key: `unused ${level}`,
      from: at(face, level),
      kind: 'unused' as const,
      level,
    })),
    ...betweenRow({ sides, least, thickness, yOf }),
  ].sort((a, b) => a.from - b.from);
  const wanted = rows.map(({ from, kind }) => ({ wanted: from, height: rowHeight(kind) }));
  const tops = placeRows(wanted, height);
  return rows.map((row, index) => ({ ...row, to: (tops[index] ?? 0) + rowHeight(row.kind) / 2 }));
}

/** Middles of the levels that what is picked can join: all but one that it lies on already. */
export function joinPlaces(rows: readonly LadderRow[], selection: readonly string[]): number[] {
  if (selection.length === 0) return [];
  return rows.flatMap((row) => {
    if (row.kind !== 'level') return [];
    const ids = row.planned.regions.map(({ id }) => id);
    return selection.every((id) => ids.includes(id)) ? [] : [row.to];
  });
}

export function rowHeight(kind: LadderRow['kind']): number {
  return kind === 'between' ? BETWEEN.words : FIGURE;
}

/** Of the metal between the deepest floors, px: where the bar has room for it and its words. */
export function barBetween({
  sides,
  thickness,
  yOf,
}: Pick<RowsAsk, 'sides' | 'thickness' | 'yOf'>): { top: number; bottom: number } | undefined {
  const [near, far] = sides;
  if (near === undefined || far === undefined) return undefined;
  const [top, bottom] = [yOf(near.deepest), yOf(thickness - far.deepest)];
  return bottom - top < BETWEEN.room ? undefined : { top, bottom };
}

function betweenRow(ask: Omit<RowsAsk, 'unused' | 'height'>) {
  const { sides, least, thickness, yOf } = ask;
  const [near, far] = sides;
  if (near === undefined || far === undefined || least === undefined) return [];
  if (barBetween(ask) !== undefined) return [];
  const from = yOf((near.deepest + thickness - far.deepest) / 2);
  return [{ key: 'between', from, kind: 'between' as const, left: least }];
}

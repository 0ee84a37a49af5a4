/** What each meaning of the figures in a drawing would give, before one is chosen: depths, what is left, and what could not be made. */
import type { Point } from '#geometry/point.ts';
import type { DepthOffer } from '#part/depth-notes.ts';
import type { Meaning } from './depth-offers.ts';

export interface FigureRow {
  readonly region: string;
  readonly text: string;
  /** Where it hangs, mm. */
  readonly at: Point;
  /** The text itself says what it gives. */
  readonly said: Meaning | undefined;
  /** mm: the depth where the figure is what is left, and what is left where it is a depth. */
  readonly other: number;
  readonly length: number;
  /** What would be too thin, or no depth at all, under each meaning. */
  readonly stops: Readonly<Record<Meaning, boolean>>;
}

export interface FigureSummary {
  readonly meaning: Meaning;
  /** mm */
  readonly least: number;
  readonly most: number;
  /** Regions that could not be made. */
  readonly stopped: readonly string[];
  readonly count: number;
}

export interface FigureSheet {
  /** mm */
  readonly thickness: number;
  /** Thinnest metal that may be left, mm. */
  readonly minWeb: number;
}

/** In the order of the regions; regions whose figures differ are left out, for these are to be asked by hand. */
export function figureRows(offers: readonly DepthOffer[], { thickness, minWeb }: FigureSheet): FigureRow[] {
  return offers
    .filter(({ isDisputed }) => !isDisputed)
    .map(({ region, text, at, isSaid, asks, length }) => ({
      region,
      text,
      at,
      said: isSaid ? asks : undefined,
      length,
      other: thickness - length,
      stops: { thickness: length < minWeb, depth: thickness - length < minWeb },
    }));
}

/** What the choice gives: the depths where the figures are what is left, what is left where they are depths. No figure that says it itself. */
export function figureSummary(rows: readonly FigureRow[], meaning: Meaning): FigureSummary {
  const others = rows.map(({ other }) => other);
  return {
    meaning,
    least: Math.min(...others),
    most: Math.max(...others),
    stopped: rows.filter(({ stops }) => stops[meaning]).map(({ region }) => region),
    count: rows.length,
  };
}

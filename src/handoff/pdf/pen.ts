/**
 * The pen: what a sheet of paper is drawn with, whoever draws it. Millimetres on the page, y up from its lower left corner,
 * so that a part goes on to paper at 1 : 1 without a change of sign.
 */
import type { Point } from '#geometry/point.ts';
import type { Path } from '#geometry/span.ts';

/** mm */
export interface PageSize {
  readonly width: number;
  readonly height: number;
}

/** Paper by ISO 216 and, letter, by ANSI/ASME Y14.1 (8.5 × 11 in); the short side across. */
export const PAPER: Readonly<Record<'a4' | 'letter' | 'a3', PageSize>> = {
  a4: { width: 210, height: 297 },
  letter: { width: 215.9, height: 279.4 },
  a3: { width: 297, height: 420 },
};

export type Paper = keyof typeof PAPER;

export interface Stroke {
  /** mm */
  readonly width: number;
  /** `#rrggbb` */
  readonly color: string;
  /** mm drawn, mm left out; left out altogether, the line is whole. */
  readonly dash?: readonly [on: number, off: number];
}

export interface TextStyle {
  /** Of the letters' body, mm: capitals are seven tenths of it. */
  readonly size: number;
  readonly color?: string;
  readonly isBold?: boolean;
  readonly align?: 'left' | 'middle' | 'right';
  /** Counter-clockwise about the place, radians. */
  readonly turn?: number;
}

export interface Pen {
  /** Starts a page; all else is drawn on the page started last. */
  page(size: PageSize): void;
  line(from: Point, to: Point, stroke: Stroke): void;
  /** Lines and true arcs, filled by the even-odd rule, then stroked. */
  paths(paths: readonly Path[], how: { readonly stroke?: Stroke; readonly fill?: string }): void;
  rectangle(box: PageBox, how: { readonly stroke?: Stroke; readonly fill?: string }): void;
  /** The place is on the baseline. Text is not broken. */
  text(text: string, at: Point, style: TextStyle): void;
  /** mm that a text takes. */
  textWidth(text: string, style: Pick<TextStyle, 'size' | 'isBold'>): number;
  /** Draws with nothing showing outside the box. */
  within(box: PageBox, draw: () => void): void;
}

export interface PageBox {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * The lower skin of a survey glider, in inches: bays between root and tip, each with what is to be left of the sheet written in
 * it; a centre line and dimensions on layers of their own. As an engineer gets it: nothing says that the figures are thicknesses
 * but one `T=`.
 */
import { dxf, line, note, outline } from './small-drawing.ts';

/** Of sheet 0.125 in: what each bay keeps, as written, from the root to the tip, the upper row and the lower one. */
const FIGURES = [
  ['.106', '.090'],
  ['.090', 'T=.090'],
  ['.077', '.077'],
  ['.061', '.061'],
  ['.045', '.045'],
  ['.032', '.032'],
] as const;

const LENGTH = 33;
const ROOT = 14;
const TIP = 7.5;
const RIM = 0.8;
const LAND = 0.5;

/** Half the width at a distance from the root. */
const half = (x: number): number => (ROOT + ((TIP - ROOT) * x) / LENGTH) / 2;

export function inchSkin(): string {
  const pitch = (LENGTH - 2 * RIM + LAND) / FIGURES.length;
  const bays = FIGURES.flatMap((figures, index) => {
    const [from, to] = [RIM + index * pitch, RIM + (index + 1) * pitch - LAND];
    return figures.flatMap((figure, row) => {
      const sign = row === 0 ? 1 : -1;
      const inner = sign * (LAND / 2);
      const [nearFrom, nearTo] = [from, to].map((x) => sign * (half(x) - RIM));
      const corners: [number, number][] = [
        [from, inner],
        [to, inner],
        [to, nearTo ?? 0],
        [from, nearFrom ?? 0],
      ];
      return [
        outline('BAYS', sign > 0 ? corners : corners.reverse()),
        note('FIGURES', [(from + to) / 2 - 0.5, sign * 2], figure),
      ];
    });
  });
  return dxf({
    insunits: 1,
    entities: [
      outline('TRIM', [
        [0, -half(0)],
        [LENGTH, -half(LENGTH)],
        [LENGTH, half(LENGTH)],
        [0, half(0)],
      ]),
      ...bays,
      line('CENTRE LINE', [-1, 0], [LENGTH + 1, 0]),
      line('DIMENSIONS', [0, -8.5], [LENGTH, -8.5]),
    ],
  });
}

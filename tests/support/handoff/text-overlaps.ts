/** Texts of a page read back that stand on each other: capitals and descenders of one within those of another. */
import type { ReadPage } from './read-pdf.ts';

type Word = ReadPage['words'][number];

/** mm that two may share: rounding of the reader. */
const SLACK = 0.05;

export function textOverlaps({ words }: ReadPage): string[] {
  const level = words.filter(({ isTurned }) => !isTurned);
  return level.flatMap((a, index) =>
    level
      .slice(index + 1)
      .filter((b) => meet(a, b))
      .map((b) => `${a.text} | ${b.text} at ${a.x.toFixed(1)}, ${a.y.toFixed(1)}`),
  );
}

function meet(a: Word, b: Word): boolean {
  return (
    a.x + a.width > b.x + SLACK &&
    b.x + b.width > a.x + SLACK &&
    top(a) > bottom(b) + SLACK &&
    top(b) > bottom(a) + SLACK
  );
}

/** Of the body: capitals are seven tenths of it, few letters reach a fifth below the line. */
const top = ({ y, size }: Word): number => y + 0.7 * size;
const bottom = ({ y, text, size }: Word): number => (/[gjpqy,;()]/.test(text) ? y - 0.2 * size : y);

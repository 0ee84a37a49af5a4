/** What makes a figure less sure than it is large, in a few words. */

/** The sheet was not gauged where thicknesses were read; readings disagree; there is too little to go by. */
export type WhyWide = 'sheet' | 'spread' | 'few';

export const WIDE_WORDS: Record<WhyWide, string> = {
  sheet: 'the sheet was not gauged',
  spread: 'the readings disagree',
  few: 'too little was read so far',
};

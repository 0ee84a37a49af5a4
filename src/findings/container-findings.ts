/** Findings about the parts that a drawing file is made of: sections, tables, and lines that belong to none. */
import { warn } from './words.ts';

export const containerWords = {
  'drawing-part-unclosed': warn<{ part: string; lacks: string }>({
    title: 'Part of the file not closed',
    say: ({ part, lacks }) => ({
      reason: `${part} is not closed by ${lacks}; it was assumed to end where the next part begins.`,
      remedy: 'Compare the drawing with its print, or export it again.',
    }),
  }),
  'drawing-section-repeated': warn<{ section: string }>({
    title: 'Section repeated',
    say: ({ section }) => ({
      reason: `The file has another ${section === '' ? 'section without a name' : `${section} section`}; the contents of both were used.`,
      remedy: 'Compare the drawing with its print; if lines appear twice, export it again.',
    }),
  }),
  'drawing-out-of-step': warn<{ lines: number }>({
    title: 'Stray lines in the file',
    say: ({ lines }) => ({
      reason: `${lines} ${lines === 1 ? 'line belongs' : 'lines belong'} to no pair of code and value; reading continued after ${lines === 1 ? 'it' : 'them'}.`,
      remedy: 'Compare the drawing with its print; if anything differs, export it again.',
    }),
  }),
};

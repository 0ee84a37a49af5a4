/** Reads the text of a file of figures that stands beside the job. */
import { type FiguresFile, figuresSchema } from '#bath/figures-file.ts';
import { checkFigures } from './check-figures.ts';
import { type Format, type FormatReading, readFormat } from './read-format.ts';

const FIGURES: Format<FiguresFile> = {
  format: 'isobath-figures',
  version: 1,
  schema: figuresSchema,
  check: (value, placeOf) => checkFigures(value, [], placeOf),
};

export function readFigures(text: string, file: string): FormatReading<FiguresFile> {
  return readFormat(text, FIGURES, file);
}

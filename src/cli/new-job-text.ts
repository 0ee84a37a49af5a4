/** What a job begun from a drawing holds, and what is still to be decided, as text for the terminal. */
import type { NewJob } from '#run/new-job.ts';
import { paint } from './paint.ts';
import { printable } from './printable.ts';

type Begun = NewJob & { readonly jobFile: NonNullable<NewJob['jobFile']> };

export function newJobText(
  { jobFile, ignored, regions, taken, waiting, disputed, unread }: Begun,
  { file, color }: { readonly file: string; readonly color: boolean },
): string {
  const { layers, stock, process, units } = jobFile;
  const outline = layers?.outline;
  const sheet = Array.isArray(outline)
    ? `layer ${outline.map(printable).join(', ')}`
    : 'the outermost closed outline (no layer of its own)';
  const lines = [
    `${paint('written', 'bold', color)}  ${printable(file)}`,
    `  unit      ${units}`,
    `  sheet     ${sheet}`,
    `  regions   ${regions}`,
    ...ignored.map(({ layer, why }) => `  left out  layer ${printable(layer)}: ${why}`),
    `  required  ${taken === 1 ? '1 requirement' : `${taken} requirements`} from notes`,
  ];
  const open = [
    ...(waiting === 0
      ? []
      : [
          `${waiting === 1 ? '1 note gives' : `${waiting} notes give`} a figure that may be a depth or a final thickness: use --notes depth or --notes thickness`,
        ]),
    ...(disputed.length === 0
      ? []
      : [`notes differ in ${disputed.join(', ')}: add these requirements by hand`]),
    ...unread.map(
      ({ region, text }) => `"${printable(text)}" in ${region} is not read: add this requirement by hand`,
    ),
    ...(taken + waiting > 0 ? [] : ['requirements: none for any region yet']),
    ...(stock.thickness === undefined ? ['stock.thickness: the sheet, --thickness'] : []),
    ...(process.bath === undefined
      ? ['process: a bath (--bath caustic-aluminium), or etchFactor and rate']
      : []),
  ];
  if (open.length > 0) lines.push('', paint('still to decide', 'bold', color));
  return `${[...lines, ...open.map((each) => `  ${each}`)].join('\n')}\n`;
}

/** Which layers hold what, and where the sheet and its holes are where no layer says it. */
import * as z from 'zod/mini';
import { open, usually, withParts } from './field.ts';
import { optionalGroup } from './group.ts';
import { nameSchema, names, point, raw } from './kinds.ts';

/** Of a plate; a perforated sheet has its holes on a layer. */
const MOST_HOLES = 1000;

/** Layers; or, where all is on one layer, the outermost closed outline, or that around a point of the sheet. */
const outline = z.union([z.array(nameSchema), z.literal('outermost'), z.strictObject({ at: point })]);

export const layers = optionalGroup(
  {
    outline: withParts(
      usually(raw(outline), {
        label: 'Sheet',
        help: 'layers with the border of the sheet and its cutouts; or, if everything is drawn on one layer, `"outermost"` (the outermost closed outline is the sheet, the largest if there are several side by side; all inside it are regions) or `{ "at": [x, y] }` (the outline around that point of the sheet, for a plate inside a frame)',
        usual: { value: [] },
        usualWords: 'none: the sheet has no border',
      }),
      { way: { label: 'Edge of the part', control: { as: 'own' } } },
    ),
    regions: open(names(), {
      label: 'Regions',
      help: 'layers with pocket outlines',
      usual: 'every shown layer that is neither outline nor ignored',
    }),
    ignore: usually(names(), {
      label: 'Ignored',
      help: 'layers to ignore',
      usual: { value: [] },
      usualWords: 'none',
    }),
    far: open(names(), {
      label: 'Far face',
      help: 'layers with pocket outlines of the far face, drawn as `far.view` says ([two faces](job-file.md#two-faces))',
    }),
    both: open(names(), {
      label: 'Both faces',
      help: 'layers with outlines that both faces have, such as holes cut out from either side',
    }),
    holes: open(raw(z.array(point).check(z.maxLength(MOST_HOLES))), {
      label: 'Holes',
      help: 'points `[x, y]`, one in each hole through the sheet that no outline layer distinguishes from a region',
    }),
  },
  { order: { first: ['outline'], filled: ['ignore'] } },
);

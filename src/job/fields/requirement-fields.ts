/** What is asked of the regions that a layer or a point names. */

import * as z from 'zod/mini';
import { SMALLEST_POSITIVE } from '#bath/figures-file.ts';
import { drawnPoint, jobMillimetres } from '#job/job-figures.ts';
import { commonPractice } from '#job/sources.ts';
import type { Tabs } from '#job/tabs.ts';
import { depthTaper, resolveTaper, type Taper, thicknessTaper } from '#job/taper.ts';
import { type Kind, needed, open, usually, withParts } from './field.ts';
import { group, groupIfGiven, list, oneOf } from './group.ts';
import {
  byHand,
  choice,
  length,
  name,
  notNegative,
  place,
  point,
  positive,
  shownLength,
  shownNumber,
  written,
} from './kinds.ts';

const asked = z.union([depthTaper, thicknessTaper]);

interface TaperAsked extends Taper {
  readonly isThickness: boolean;
}

const taper: Kind<typeof asked, TaperAsked> = {
  ...written(asked),
  read: (given, units) => ({ ...resolveTaper(given, units), isThickness: 'thicknessFrom' in given }),
};

/** mm; a drawn edge farther off is no edge. */
const edgeOff = length({ shown: { least: 0, most: 10 } });

/** mm; the job takes no depth or width of nothing. */
const LEAST = 0.01;

const throughChoice = z.union([z.literal(true), positive]);

/** `true`, or mm. */
const through: Kind<typeof throughChoice, true | number> = {
  ...written(throughChoice),
  read: (given, { job }) => (given === true ? true : jobMillimetres(given, job)),
};

/** More than anybody cuts by hand afterwards. */
const MOST_TABS = 200;
const tabsGiven = z.strictObject({
  width: positive,
  at: z.optional(z.array(point).check(z.minLength(1), z.maxLength(MOST_TABS))),
  count: z.optional(z.int().check(z.minimum(1), z.maximum(MOST_TABS))),
});

const tabs: Kind<typeof tabsGiven, Tabs> = {
  ...written(tabsGiven),
  read: ({ width, at, count }, { job, drawing }) => ({
    width: jobMillimetres(width, job),
    ...(at === undefined ? {} : { at: at.map((each) => drawnPoint(each, drawing)) }),
    ...(count === undefined ? {} : { count }),
  }),
};

const splitChoice = z.union([z.literal('even'), notNegative]);

/** `even`, or the near face's share, mm. */
const split: Kind<typeof splitChoice, 'even' | number> = {
  ...byHand(written(splitChoice), length().control),
  read: (given, { job }) => (given === 'even' ? given : jobMillimetres(given, job)),
};

/** ± 0.05 mm, or 0.002 in, on depth in production on aluminium. */
export const DEPTH_TOLERANCE = {
  ...commonPractice(0.05, 'depth tolerance of production work on aluminium'),
  inInches: 0.0508,
};

export const requirements = list(
  group(
    {
      layer: open(name(), {
        label: 'Layer',
        help: 'all regions directly inside closed outlines of this layer: see [below](#requirements)',
        usual: '`at` in its place',
      }),
      at: open(place(), {
        label: 'Point',
        help: 'the region that contains this point',
        usual: '`layer` in its place',
      }),
      depth: open(length(), {
        label: 'Depth',
        help: 'depth to etch',
        usual: '`thickness` or `taper` in its place',
      }),
      thickness: open(length({ least: SMALLEST_POSITIVE, shown: { least: 0.001, most: 1000 } }), {
        label: 'Leaves',
        help: 'final thickness',
        usual: '`depth` or `taper` in its place',
      }),
      taper: withParts(
        open(taper, {
          label: 'Taper',
          help: 'depth or thickness that changes evenly from one point to another',
          usual: '`depth` or `thickness` in its place',
        }),
        {
          left: { label: 'Depth at its left end', control: length().control },
          right: { label: 'at its right end', control: length().control },
        },
      ),
      through: withParts(
        open(through, {
          label: 'Cut out',
          help: '`true`: the region is cut out of the sheet, with its drawn line at the narrowest place of the cut; or the depth that each face is etched to for it ([two faces](job-file.md#two-faces))',
          usual: '`depth`, `thickness` or `taper` in its place',
        }),
        {
          depth: { label: 'Each face etched to', control: shownLength({ least: LEAST, most: 1000 }) },
        },
      ),
      face: open(choice({ near: 'the near face', far: 'the far face', both: 'both faces' }), {
        label: 'Face',
        help: '`"near"`, `"far"` or `"both"`: the face that is etched; a thickness required of both is divided as `split` says',
        usual: '`"near"`',
      }),
      split: open(split, {
        label: 'Near face takes',
        help: 'for a thickness required of both faces: `"even"`, or the depth etched into the near face, the far face taking the rest; the tolerance is divided in the same way',
        usual: '`"even"`',
      }),
      tabs: withParts(
        open(tabs, {
          label: 'Tabs',
          help: '`{ "width", "at": [[x, y], …] }`: strips left across the cut-out, so that nothing falls: how wide, and where; or with `"count"`, or neither, placed evenly ([two faces](job-file.md#two-faces))',
        }),
        {
          width: { label: 'Width of tabs', control: shownLength({ least: LEAST, most: 100 }), usual: 2 },
          count: {
            label: 'Number of tabs',
            control: shownNumber('', { least: 1, most: MOST_TABS, isWhole: true }),
          },
        },
      ),
      plus: usually(length(), {
        label: 'Deeper by',
        help: 'how much deeper the floor may be',
        usual: DEPTH_TOLERANCE,
      }),
      minus: usually(length(), {
        label: 'Shallower by',
        help: 'how much shallower the floor may be',
        usual: DEPTH_TOLERANCE,
      }),
      edge: groupIfGiven({
        plus: needed(edgeOff, {
          label: 'Edge outwards by',
          help: 'how far its edges to shallower floors and land may lie outside their drawn lines',
        }),
        minus: needed(edgeOff, {
          label: 'Edge inwards by',
          help: 'how far inside them',
        }),
      }),
    },
    {
      ways: [oneOf('layer', 'at'), oneOf('depth', 'thickness', 'taper', 'through')],
      order: { filled: ['plus', 'minus'] },
    },
  ),
);

/** What is asked of the regions that a layer or a point names. */
import * as z from 'zod/mini';
import { commonPractice } from '#job/sources.ts';
import { depthTaper, resolveTaper, type Taper, thicknessTaper } from '#job/taper.ts';
import { type Kind, open, usually } from './field.ts';
import { group, list, oneOf } from './group.ts';
import { length, name, place, SMALLEST_POSITIVE, written } from './kinds.ts';

const asked = z.union([depthTaper, thicknessTaper]);

interface TaperAsked extends Taper {
  readonly isThickness: boolean;
}

const taper: Kind<typeof asked, TaperAsked> = {
  ...written(asked),
  read: (given, units) => ({ ...resolveTaper(given, units), isThickness: 'thicknessFrom' in given }),
};

/** ± 0.05 mm (0.002 in) on depth in production on aluminium. */
export const DEPTH_TOLERANCE = commonPractice(0.05, 'depth tolerance of production work on aluminium');

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
        help: 'the region that holds this point',
        usual: '`layer` in its place',
      }),
      depth: open(length(), {
        label: 'Depth',
        help: 'depth to etch',
        usual: '`thickness` or `taper` in its place',
      }),
      thickness: open(length({ least: SMALLEST_POSITIVE }), {
        label: 'Remains',
        help: 'thickness that is left',
        usual: '`depth` or `taper` in its place',
      }),
      taper: open(taper, {
        label: 'Taper',
        help: 'depth or thickness that changes evenly from one point to another',
        usual: '`depth` or `thickness` in its place',
      }),
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
    },
    {
      ways: [oneOf('layer', 'at'), oneOf('depth', 'thickness', 'taper')],
      order: { filled: ['plus', 'minus'] },
    },
  ),
);

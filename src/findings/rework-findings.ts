/** Findings about a part that came out thick, thin or otherwise than planned. Lengths in mm. */
import { mm } from './shown-figures.ts';
import { warn } from './words.ts';

export const reworkWords = {
  'floor-not-read': warn<Readonly<Record<never, never>>>({
    title: 'Floor without a reading',
    say: () => ({
      reason: 'No thickness of this floor was read, so nothing is said of it.',
      remedy: 'Gauge it with the maskant still on, and find the extra dips again.',
    }),
  }),
  'floor-too-thin': warn<{
    readonly read: number;
    readonly least: number;
    /** mm² */
    readonly area: number;
  }>({
    title: 'Floor too thin to be saved by etching',
    say: ({ read, least, area }, show) => ({
      reason: `The floor reads ${mm(read, show)} where ${mm(least, show)} is the least, over ${area.toFixed(0)} mm².`,
      remedy: 'Metal does not grow back: put it, with place and area, before whoever decides about the part.',
      value: read,
      limit: least,
    }),
  }),
  'floor-not-served': warn<{
    /** mm, after the extra dips. */
    readonly after: number;
    readonly least: number;
    readonly most: number;
    /** mm² */
    readonly area: number;
  }>({
    title: 'Place that no extra dip serves',
    say: ({ after, least, most, area }, show) => ({
      reason: `Here ${mm(after, show)} is left after the extra dips, where ${mm(least, show)} to ${mm(most, show)} is required, over ${area.toFixed(0)} mm²: the floor needs another depth elsewhere, where it has another floor or land behind it.`,
      remedy:
        'Cover this place of the floor before the dip that would take too much, or leave it out of the others: whoever decides about the part says which places matter.',
      value: after,
      limit: after > most ? most : least,
    }),
  }),
};

/**
 * How the scribe template is made: the knife that runs in its slots, the bridges that hold it together, the metal or film
 * between slots, its margin and tooling holes, and what it stretches by.
 */
import * as z from 'zod/mini';
import { ownChoice } from '#job/sources.ts';
import { always, type Found, type Kind, open, usually, type ValuesOf, withParts } from './field.ts';
import { optionalGroup } from './group.ts';
import { choice, length, places, shownNumber, written } from './kinds.ts';

const width = length({ least: 1e-3, most: 1e5, shown: { least: 0.03, most: 1000 } });

/** A tenth either way: more is no stretch but another part. */
const STRETCH = { least: 0.9, most: 1.1 };
const factor = z.number().check(z.gte(STRETCH.least), z.lte(STRETCH.most));
const factors = z.tuple([factor, factor]);

const stretch: Kind<typeof factors, { readonly x: number; readonly y: number }> = {
  ...written(factors),
  read: ([x, y]) => ({ x, y }),
};

/** More tooling holes than any sheet needs. */
const MOST_HOLES = 100;

/** From the smallest (ISO 216; letter beside A4). */
const PAPERS = {
  a4: 'A4',
  letter: 'Letter',
  a3: 'A3',
  a2: 'A2',
  a1: 'A1',
  a0: 'A0',
  'roll-610': 'roll 610 mm',
  'roll-914': 'roll 914 mm',
  'roll-1067': 'roll 1067 mm',
  'one-sheet': 'one sheet, as large as needed',
} as const;
export type TemplatePaper = keyof typeof PAPERS;
export const TEMPLATE_PAPERS = Object.keys(PAPERS) as readonly TemplatePaper[];

// For a hand knife and film about a millimetre thick.
const members = {
  knife: optionalGroup({
    width: usually(width, {
      label: 'Slot',
      help: 'width of a slot in the [scribe template](files.md#scribe-template)',
      quantity: 'template slot',
      usual: ownChoice(1.5),
    }),
    blade: usually(width, {
      label: 'Blade',
      help: 'thickness of the knife’s blade; in a wider slot it can wander by the difference',
      usual: { value: 0.5 },
    }),
    side: usually(
      choice({
        middle: 'on both sides of it',
        peeled: 'on the side that is peeled',
        kept: 'on the side that is kept',
      }),
      {
        label: 'Slot lies',
        help: 'position of the slot: `"middle"`, centred on the line; `"peeled"` or `"kept"`, on that side of it',
        usual: { value: 'middle' },
      },
    ),
  }),
  bridge: optionalGroup({
    width: usually(width, {
      label: 'Bridge',
      help: 'width of a bridge, along the line',
      quantity: 'template bridge',
      usual: ownChoice(5),
    }),
    apart: usually(width, {
      label: 'Bridges apart',
      help: 'longest slot between two bridges',
      quantity: 'template bridges apart',
      usual: ownChoice(150),
    }),
    clear: usually(width, {
      label: 'Bridge from corners',
      help: 'minimum distance of a bridge from a corner or a point where lines meet',
      quantity: 'template bridge clear of corners',
      usual: ownChoice(4),
    }),
  }),
  web: usually(width, {
    label: 'Between slots',
    help: 'minimum width of sheet between two slots',
    quantity: 'template web',
    usual: ownChoice(5),
  }),
  margin: always(width, {
    label: 'Margin',
    help: 'width of the margin around the part',
    quantity: 'template margin, at least',
    usual: '25 mm, or what a tooling hole in its middle needs where that is more: our own choice',
  }),
  holes: optionalGroup({
    diameter: usually(width, {
      label: 'Tooling hole',
      help: 'diameter of a tooling hole',
      quantity: 'template tooling hole',
      usual: ownChoice(6),
    }),
    at: open(places(MOST_HOLES), {
      label: 'Tooling holes at',
      help: 'points of the tooling holes; one that lies in a round hole of the part is that hole',
      usual:
        'the part’s own, or else three pins beside it; pins are added until the template fits one way only',
    }),
  }),
  stretch: withParts(
    usually(stretch, {
      label: 'Stretch',
      help: 'size of the template relative to the part, `[along x, along y]`',
      usual: { value: { x: 1, y: 1 } },
      usualWords: '`[1, 1]`',
    }),
    {
      x: { label: 'Stretch along x', control: shownNumber('', STRETCH) },
      y: { label: 'Stretch along y', control: shownNumber('', STRETCH) },
    },
  ),
  paper: open(choice(PAPERS), {
    label: 'Template paper',
    help: 'paper for printing the template: `"a4"` to `"a0"`, `"letter"`, `"roll-610"`, `"roll-914"`, `"roll-1067"` as long as needed, or `"one-sheet"`, as large as needed',
    usual: "the hand-off's",
  }),
};

export const template = optionalGroup(members, {
  follow: { margin: ({ holes, web, knife }) => roomAround(holes.diameter + 2 * (web + knife.width)) },
});

export type TemplateChoices = Omit<ValuesOf<typeof members>, 'paper'> & { readonly paper: TemplatePaper };

/** Room for a tooling hole in the middle of the margin, with a web and a slot to both sides, and no less than 25 mm. */
function roomAround(hole: number): Found<number> {
  const usual = ownChoice(25);
  if (hole <= usual.value) return usual;
  return { value: hole, source: 'tooling hole, two webs and two slots', kind: 'memory' };
}

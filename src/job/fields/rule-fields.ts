/** The least that the shop's maskant, knife and metal allow. */

import { commonPractice, fromMemory } from '#job/sources.ts';
import { always, open, usually } from './field.ts';
import { optionalGroup } from './group.ts';
import { length } from './kinds.ts';

/** mm, of aluminium; of other metals, and where none is named, the same figure is only remembered. */
const THINNEST_SKIN = 0.5;
const ALUMINIUM_WEB = commonPractice(THINNEST_SKIN, 'thinnest milled skin of aluminium, 0.020 in');
const OTHER_WEB = fromMemory(THINNEST_SKIN);

export const rules = optionalGroup(
  {
    minWeb: always(length(), {
      label: 'Thinnest metal left',
      help: 'minimum thickness of metal left',
      quantity: 'thinnest web',
      usual:
        'the alloy’s; else 0.5 mm (0.020 in), common practice for aluminium, from memory for other metals',
    }),
    minLineSpacing: usually(length(), {
      label: 'Scribe lines apart',
      help: 'minimum distance between two scribe lines',
      quantity: 'least distance of scribe lines',
      // Twice the usual error of a line that is cut by hand, 0.4 to 0.8 mm.
      usual: fromMemory(1.5),
    }),
    minPieceWidth: usually(length(), {
      label: 'Narrowest piece to peel',
      help: 'narrowest piece of maskant that peels without tearing',
      quantity: 'narrowest piece',
      usual: fromMemory(3),
    }),
    minLandWidth: usually(length(), {
      label: 'Narrowest land',
      help: 'narrowest land on which maskant holds',
      quantity: 'narrowest land',
      usual: fromMemory(3),
    }),
    lineTolerance: open(length(), {
      label: 'Drawn lines may be off by',
      help: 'how far a drawn edge of a step may come out off its line, ±, where a requirement does not say it itself',
      usual: 'none: a note says how far lines may be off',
    }),
  },
  {
    order: { first: ['minWeb', 'minLineSpacing', 'minPieceWidth', 'minLandWidth'] },
    follow: {
      minWeb: (_, { alloy }) =>
        alloy?.thinnestWeb ?? (alloy?.metal === 'aluminium' ? ALUMINIUM_WEB : OTHER_WEB),
    },
  },
);

/** The far face of the sheet: where its linework is, how it is drawn, and how far its template may lie off. */
import * as z from 'zod/mini';
import { fromMemory } from '#job/sources.ts';
import { open, usually } from './field.ts';
import { optionalGroup } from './group.ts';
import { choice, length, name, point, raw } from './kinds.ts';

const pair = z.tuple([point, point]);

/** How far the far face's template or film may lie off the near one's, in any direction, mm. */
export const REGISTRATION = fromMemory(0.2);

const members = {
  drawing: open(name(), {
    label: 'Far drawing',
    help: 'the DXF file of the far face, beside the job file; all of its shown layers are used except those of the sheet and those ignored, or only those listed under `layers.far` and `layers.both`',
    usual: 'the far face is in the drawing itself, on `layers.far` and `layers.both`',
  }),
  view: usually(choice({ through: 'seen through the part', far: 'seen from the far face' }), {
    label: 'Far face drawn as',
    help: '`"through"`: seen through the part, in the frame of the near face; `"far"`: seen from the far face, mirrored about `mirror`, or about any line if `points` align it',
    usual: { value: 'through' },
  }),
  mirror: open(raw(z.strictObject({ from: point, to: point })), {
    label: 'Mirror line',
    help: '`{ "from": [x, y], "to": [x, y] }`: two points of the line about which the view from the far face is mirrored, in the coordinates of its drawing; with the view `"far"`',
    usual: '`points` in its place',
  }),
  points: open(raw(z.strictObject({ near: pair, far: pair })), {
    label: 'Common points',
    help: '`{ "near": [[x, y], [x, y]], "far": [[x, y], [x, y]] }`: the same two holes or points in both drawings, which align the far drawing with the near one; a mismatch is reported (`far-misfit`)',
  }),
  registration: usually(length({ shown: { least: 0, most: 10 } }), {
    label: 'Registration',
    help: "how far the far face's template may be off the near one's, in any direction; the metal between the faces is checked with it",
    usual: REGISTRATION,
  }),
};

/** What it says shapes no plan of one face: it is filled in for none. */
export const far = optionalGroup(members, { isFilledIn: false });

/** A cover of 180 × 110 mm with a hole, a pocket and a notch that is drawn over its edge, planned with or without sizing. */
import { type RunResult, runJob } from '#run/run-job.ts';
import { box, circle, dxf, outline } from '#support/drawings/small-drawing.ts';

const TRIM = box('TRIM', [0, 0], [180, 110]);
const HOLE = circle('TRIM', [150, 20], 6);
const POCKET = box('POCKETS', [20, 25], [95, 90]);
const NOTCH = box('NOTCH', [160, 60], [190, 85]);
const COVER = [TRIM, HOLE, POCKET, NOTCH];

/** The same with something too near to its edge. */
export const NEAR_EDGE = {
  nearEdge: [...COVER, circle('TRIM', [4.5, 50], 4)],
  nearPocket: [...COVER, box('POCKETS', [100, 0.2], [120, 18])],
  rim: [...COVER, box('POCKETS', [40, 109.8], [70, 110])],
  neck: [
    POCKET,
    NOTCH,
    outline('TRIM', [
      [0, 0],
      [120, 0],
      [120, 20],
      [130, 20],
      [130, 0],
      [180, 0],
      [180, 110],
      [130, 110],
      [130, 20.5],
      [120, 20.5],
      [120, 110],
      [0, 110],
    ]),
  ],
} as const;

interface Change {
  readonly sizing?: object;
  readonly stock?: object;
  readonly process?: object;
  readonly requirements?: readonly object[];
  /** In place of all. */
  readonly job?: object | undefined;
}

export function plannedCover(
  { sizing, stock, process, requirements, job }: Change,
  entities: readonly string[] = COVER,
): Promise<RunResult> {
  return runJob(
    {
      jobText: JSON.stringify(
        job ?? {
          format: 'isobath-job',
          version: 1,
          drawing: 'cover.dxf',
          layers: { outline: ['TRIM'] },
          stock: { alloy: 'al-2024-t3', thickness: 4.1, minus: 0.06, plus: 0.04, ...stock },
          process: {
            bath: 'caustic-aluminium',
            etchFactor: 1.2,
            rate: 0.03,
            rateSpread: 0.05,
            timing: 0.2,
            ...process,
            ...(sizing === undefined ? {} : { sizing }),
          },
          requirements: requirements ?? [
            { layer: 'POCKETS', thickness: 2, plus: 0.1, minus: 0.08 },
            { layer: 'NOTCH', depth: 1.5, plus: 0.1, minus: 0.1 },
          ],
          levels: 'fewest',
        },
      ),
      drawingName: 'cover.dxf',
      drawingBytes: new TextEncoder().encode(dxf({ insunits: 4, entities })),
    },
    { withoutFiles: true },
  );
}

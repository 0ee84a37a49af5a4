/** A place of the drawing as the job names it: in the drawing's own unit and frame, no farther out than a drawing reaches. */
import * as z from 'zod/mini';
import { FARTHEST_PLACE } from '#units/farthest-place.ts';

const coordinate = z.number().check(z.gte(-FARTHEST_PLACE), z.lte(FARTHEST_PLACE));

export const drawingPoint = z.tuple([coordinate, coordinate]);

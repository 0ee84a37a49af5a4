/** Says once a run which seed its random tests have, so that it can be repeated. */
import { PROPERTY_SEED } from './seed-of-run.ts';

export function setup(): void {
  console.log(`Property tests run with SEED=${PROPERTY_SEED}`);
}

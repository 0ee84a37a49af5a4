/** What of the trade's steps a bath needs. */
import type { Job } from '#job/job.ts';

/** The metal of the sheet, or else the one that the bath etches; undefined where neither is named. */
export function metalOf({ stock, process }: Job): string | undefined {
  return stock.material?.metal ?? process.bathNamed?.etches;
}

/** Caustic leaves the alloying metals on aluminium as smut (common practice); where no metal is named the step stays, to be struck. */
export function needsDesmut(job: Job): boolean {
  const metal = metalOf(job);
  return metal === undefined || metal === 'aluminium';
}

/** Metals whose hydrogen the material specification has a word about (common practice). */
export function takesUpHydrogen(job: Job): boolean {
  const metal = metalOf(job);
  return metal === undefined || metal === 'titanium' || metal === 'steel';
}

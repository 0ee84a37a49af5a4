/**
 * What a shop uses for every job: rules of making, bath and ways of handing off, saved by the user on purpose and kept in this
 * browser. Never the sheet, nor a place, a date or an issue: these are of one job.
 */

import { setJobUnit } from '#app/state/edits/job-unit.ts';
import { JOB, type JobFile } from '#job/job-file.ts';

export interface ShopDefault {
  /** Lengths in millimetres. */
  readonly choices: Pick<JobFile, 'rules' | 'handoff'> & { readonly process: JobFile['process'] };
}

const KEY = 'isobath shop default';

export function shopDefaultOf(job: JobFile): ShopDefault {
  const { rules, handoff, process } = setJobUnit(job, 'mm');
  const { coupon, rate, etchFactor, depthPerUndercut, tank, ...kept } = process;
  const { sections, date, issue, template, ...papers } = handoff ?? {};
  const { holes, ...shape } = template ?? {};
  const by = issue?.by;
  return {
    choices: {
      process: kept,
      ...(rules === undefined ? {} : { rules }),
      ...(handoff === undefined
        ? {}
        : {
            handoff: {
              ...papers,
              ...(by === undefined ? {} : { issue: { by } }),
              ...(template === undefined ? {} : { template: shape }),
            },
          }),
    },
  };
}

/** Undefined where none was saved, or what was saved is not understood any more. */
export function keptShopDefault(): ShopDefault | undefined {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    if (typeof kept !== 'object' || kept === null || !('process' in kept)) return undefined;
    const { process, rules, handoff } = JOB.members;
    const read = {
      process: process.schema.parse(kept.process),
      rules: rules.schema.parse('rules' in kept ? kept.rules : undefined),
      handoff: handoff.schema.parse('handoff' in kept ? kept.handoff : undefined),
    };
    return { choices: read };
  } catch {
    return undefined;
  }
}

export function keepShopDefault(shop: ShopDefault | undefined): void {
  if (shop === undefined) localStorage.removeItem(KEY);
  else localStorage.setItem(KEY, JSON.stringify(shop.choices));
}

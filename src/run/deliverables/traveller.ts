/** Steps, pictures and boxes for the tank. */
import { traveller } from '#handoff/traveller.ts';
import type { Writer } from '#run/handoff-files.ts';

export const write: Writer<'traveller'> = async ({ choices, plan, job, planHash }) => {
  const { paper, date, issue } = choices;
  const bytes = await traveller({ plan, job, planHash, paper, date, issue: issue.number });
  return [{ name: 'traveller.pdf', what: 'steps, pictures and boxes for the tank', bytes }];
};

/** An overcut that goes on past a whole turn of a line would cut it twice over, and more: it is reported, and the file kept back. */
import { type Finding, finding } from '#findings/finding.ts';
import { spansLength } from '#geometry/span.ts';
import type { EtchPlan } from '#plan/etch-plan.ts';

/** `of` is the key of the job that chose it. */
export function checkOvercut(
  { stages }: Pick<EtchPlan, 'stages'>,
  { overcut }: { readonly overcut: number },
  of: 'scribe' | 'program',
): Finding[] {
  const closed = stages.flatMap(({ number, lines }) =>
    lines.filter((line) => line.closed).map(({ spans }) => ({ number, spans, length: spansLength(spans) })),
  );
  const [first, ...others] = closed;
  if (first === undefined) return [];
  const shortest = others.reduce((least, each) => (each.length < least.length ? each : least), first);
  if (overcut <= shortest.length) return [];
  const facts = { of, overcut, length: shortest.length, stage: shortest.number };
  const at = shortest.spans[0]?.start;
  const place = { path: `handoff.${of}.overcut`, ...(at === undefined ? {} : { at }) };
  return [finding('overcut-too-long', facts, place)];
}

/** What can hurt here, the first of it always on show, and who decides. */
import { type ReactNode, useMemo } from 'react';
import { shopCautions } from '#handoff/cautions.ts';
import { resolveJob } from '#job/resolve/resolve-job.ts';
import { useTank } from './tank-context.ts';

/** Burns, and what poisons or burns besides. */
const ALWAYS = 2;

export function TankCautions() {
  const { plan } = useTank();
  const lines = useMemo(() => {
    const { job } = resolveJob(plan.job as Parameters<typeof resolveJob>[0], plan.drawing.unit);
    return job === undefined ? plan.cautions : shopCautions(job);
  }, [plan]);
  const more = lines.slice(ALWAYS);
  return (
    <footer className="tank-cautions">
      {lines.slice(0, ALWAYS).map((line) => (
        <p key={line}>{withBold(line)} </p>
      ))}
      <p>Minutes are calculated, not approved: the site’s process specification decides. </p>
      {more.length > 0 && (
        <details>
          <summary>All cautions</summary>
          {more.map((line) => (
            <p key={line}>{withBold(line)}</p>
          ))}
        </details>
      )}
    </footer>
  );
}

/** `**bold**` is what catches the eye. */
function withBold(line: string): ReactNode {
  return line
    .split('**')
    .map((words, index) => (index % 2 === 1 ? <strong key={words}>{words}</strong> : words));
}

/** Trouble in the drawing by kind: how often, and a click flies to the next place of it. */
import { useState } from 'react';
import { SeverityShape } from '#app/views/SeverityShape.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { type Finding, sortFindings } from '#findings/finding.ts';
import { sayFinding } from '#findings/say-finding.ts';
import { troubleOf } from './trouble-of.ts';

export function TroubleList() {
  const findings = useWorkbenchState((state) => state.derived.page?.findings) ?? [];
  const kinds = troubleOf(sortFindings(findings));
  if (kinds.length === 0) return <p className="aside">No trouble in its lines.</p>;
  return (
    <>
      <h3>Joined, passed over, in trouble</h3>
      <ul className="trouble-list">
        {kinds.map(([first, ...others]) => (
          <TroubleKind key={first.code} all={[first, ...others]} />
        ))}
      </ul>
    </>
  );
}

function TroubleKind({ all }: { readonly all: readonly [Finding, ...Finding[]] }) {
  const { actions } = useWorkbench();
  const [next, setNext] = useState(0);
  const [first] = all;
  const places = all.flatMap(({ place }) => (place.at === undefined ? [] : [{ ...place, at: place.at }]));
  const { title } = sayFinding(first);
  const times = all.length === 1 ? '' : `, ${all.length} times`;
  const go = () => {
    const place = places[next % places.length];
    if (place !== undefined) actions.flyTo({ to: place.at, outline: place.outline });
    setNext(next + 1);
  };
  return (
    <li>
      <SeverityShape severity={first.severity} />
      {places.length === 0 ? (
        <span>
          {title}
          {times}
        </span>
      ) : (
        <button type="button" className="go" onClick={go}>
          {title}
          {times}
        </button>
      )}
    </li>
  );
}

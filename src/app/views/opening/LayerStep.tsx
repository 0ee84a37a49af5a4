/** Which face each layer draws, and which draw nothing of the part: asked where a name sounds like the far face, else to be looked at. */
import { useState } from 'react';
import { answerFaces } from '#app/state/edits/answer-faces.ts';
import { type LayerRole, layerRole } from '#app/state/edits/edit-job.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { useDocument, useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { DrawingLayer } from '#drawing/drawing.ts';
import { farLayers } from '#drawing/far-layers.ts';

const OPTIONS: readonly { readonly value: LayerRole; readonly words: string }[] = [
  { value: 'regions', words: 'Near face' },
  { value: 'far', words: 'Far face' },
  { value: 'both', words: 'Both' },
  { value: 'ignore', words: 'Left out' },
];

/** More layers than these are in the panel. */
const MOST = 8;

export function LayerStep() {
  const { actions, layout } = useWorkbench();
  const { job, unsaid = [] } = useDocument() ?? {};
  const layers = useWorkbenchState((state) => state.derived.page?.layers) ?? [];
  const [chosen, choose] = useState<ReadonlyMap<string, LayerRole>>(new Map());
  if (job === undefined) return null;
  const isAsked = unsaid.includes('faces');
  const others = drawn(layers).filter(({ name }) => layerRole(job, name) !== 'outline');
  const sounding = isAsked ? farLayers(others, job.layers?.ignore ?? []) : [];
  const roleOf = (name: string): LayerRole =>
    chosen.get(name) ?? (sounding.includes(name) ? 'far' : layerRole(job, name));
  // Those whose names say something come first.
  const inOrder = [
    ...others.filter(({ name }) => sounding.includes(name)),
    ...others.filter(({ name }) => !sounding.includes(name)),
  ];
  const take = (name: string, role: LayerRole) => {
    if (isAsked) return choose(new Map([...chosen, [name, role]]));
    actions.edit(`part of layer ${name}`, (before) => answerFaces(before, new Map([[name, role]])));
  };
  return (
    <div className="layer-step">
      <p>
        <strong>{questionOf(sounding)}</strong>{' '}
        <span className="aside">
          The near face is the one that the drawing is seen from; both are etched at once.
        </span>
      </p>
      {inOrder.slice(0, MOST).map(({ name }) => (
        <div key={name} className="row">
          <Segments
            label={`Layer ${name}`}
            options={OPTIONS}
            value={roleOf(name)}
            onTake={(role) => take(name, role)}
          />
          <span>{name}</span>
        </div>
      ))}
      <p className="row">
        {isAsked && (
          <button
            type="button"
            className="main"
            onClick={() =>
              actions.say('faces', 'faces of layers', (before) =>
                answerFaces(before, new Map(others.map(({ name }) => [name, roleOf(name)]))),
              )
            }
          >
            Go on
          </button>
        )}
        <button type="button" onClick={() => layout.setState({ panel: 'drawing' })}>
          All layers
        </button>
      </p>
    </div>
  );
}

function questionOf(sounding: readonly string[]): string {
  if (sounding.length === 0) return 'Which face does each layer draw?';
  return `${sounding.join(', ')} ${sounding.length === 1 ? 'sounds' : 'sound'} like the far face. Which face does each layer draw?`;
}

/** Texts alone draw nothing. */
const WORDS: ReadonlySet<string> = new Set(['TEXT', 'MTEXT', 'ATTDEF', 'ATTRIB']);

function drawn(layers: readonly DrawingLayer[]): DrawingLayer[] {
  return layers.filter(({ counts, shown }) => shown && Object.keys(counts).some((kind) => !WORDS.has(kind)));
}

/** What circles inside regions are: holes of the part, bosses or etched, layer by layer. What the drawing says itself is chosen already. */
import { useState } from 'react';
import { answerCircles } from '#app/state/edits/answer-circles.ts';
import type { CircleGroup, CircleMeaning } from '#app/state/opening/circles-inside.ts';
import { regionTargets } from '#app/state/region-targets.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import { counted } from '#findings/counted.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';
import { useCircles } from './use-circles.ts';

const OPTIONS: readonly { readonly value: CircleMeaning; readonly words: string }[] = [
  { value: 'holes', words: 'Holes of the part' },
  { value: 'bosses', words: 'Bosses' },
  { value: 'etched', words: 'Etched' },
];

export function CircleStep() {
  const { store, actions, layout } = useWorkbench();
  const groups = useCircles();
  const [chosen, choose] = useState<Readonly<Record<string, CircleMeaning>>>({});
  const answers = groups.flatMap((group) => {
    const meaning = chosen[group.layer] ?? group.said;
    return meaning === undefined ? [] : [{ group, meaning }];
  });
  const count = groups.reduce((sum, { circles }) => sum + circles.length, 0);
  const isWhole = answers.length === groups.length;
  const use = () => {
    const targets = regionTargets(store.getState());
    actions.say('circles', answerWords(answers), (job) => answerCircles(job, answers, targets));
    const asked = answers.filter(({ group, meaning }) => meaning === 'etched' && !group.isWholeLayer);
    if (asked.length === 0) return;
    actions.select(asked.flatMap(({ group }) => group.circles));
    layout.setState({ panel: 'requirements' });
  };
  return (
    <div className="circle-step">
      <p>
        <strong>{counted(count, 'circle stands', 'circles stand')} inside regions. What are they?</strong>
      </p>
      {groups.map((group) => (
        <CircleRow
          key={group.layer}
          group={group}
          meaning={chosen[group.layer] ?? group.said}
          onChoose={(meaning) => choose({ ...chosen, [group.layer]: meaning })}
        />
      ))}
      <button type="button" className="main" disabled={!isWhole} onClick={use}>
        {isWhole ? 'Go on' : 'Choose one'}
      </button>
    </div>
  );
}

function answerWords(
  answers: readonly { readonly group: CircleGroup; readonly meaning: CircleMeaning }[],
): string {
  const said = answers.map(
    ({ group: { circles }, meaning }) => `${circles.length} ${WORDS[meaning](circles.length)}`,
  );
  return `circles: ${said.join(', ')}`;
}

const WORDS: Readonly<Record<CircleMeaning, (count: number) => string>> = {
  holes: (count) => (count === 1 ? 'hole of the part' : 'holes of the part'),
  bosses: (count) => (count === 1 ? 'boss' : 'bosses'),
  etched: () => 'etched',
};

interface CircleRowProps {
  readonly group: CircleGroup;
  readonly meaning: CircleMeaning | undefined;
  readonly onChoose: (meaning: CircleMeaning) => void;
}

function CircleRow({ group, meaning, onChoose }: CircleRowProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { layer, circles } = group;
  return (
    <div
      className="row"
      onPointerEnter={() => actions.light({ regions: circles, stage: undefined })}
      onPointerLeave={() => actions.light(undefined)}
    >
      <Segments label={`Circles on ${layer}`} options={OPTIONS} value={meaning} onTake={onChoose} />
      <span>
        {counted(circles.length, 'circle')} on {layer},{' '}
        <span className="aside">
          {sizeWords(group, unit)}
          {placeWords(group)}
          {meaning !== undefined && `: ${whatFollows(group, meaning)}`}
        </span>
      </span>
    </div>
  );
}

function sizeWords({ least, most }: CircleGroup, unit: ShownUnit): string {
  const largest = showLength(most, unit);
  return showLength(least, unit) === largest
    ? `Ø ${largest}`
    : `Ø ${lengthFigure(least, unit)} to ${largest}`;
}

/** Regions named; more are counted. */
const MOST_NAMED = 3;

function placeWords({ within }: CircleGroup): string {
  if (within.length === 0) return '';
  return within.length > MOST_NAMED ? `, in ${within.length} regions` : `, in ${within.join(', ')}`;
}

function whatFollows({ isWholeLayer }: CircleGroup, meaning: CircleMeaning): string {
  if (meaning === 'holes') return 'lines keep off them';
  if (meaning === 'bosses') return 'the full sheet stays';
  return isWholeLayer ? 'as deep as around them' : 'each to its own depth';
}

/** Depths written in the regions of the drawing, offered one by one. None is required until it is accepted. */
import { useMemo, useState } from 'react';
import { depthOffers, type JudgedOffer, type Meaning, takeOffers } from '#app/state/edits/depth-offers.ts';
import { regionTargets } from '#app/state/region-targets.ts';
import { sheetThickness } from '#app/state/sheet-thickness.ts';
import { Segments } from '#app/views/controls/Segments.tsx';
import { NameField } from '#app/views/NameField.tsx';
import { useWorkbench, useWorkbenchState } from '#app/views/workbench-context.ts';
import type { JobFile } from '#job/job-file.ts';
import { lengthFigure, type ShownUnit, showLength } from '#units/show-length.ts';

export function FigureList({ job }: { readonly job: JobFile }) {
  const { store, actions } = useWorkbench();
  const page = useWorkbenchState((state) => state.derived.page);
  const shapes = useWorkbenchState((state) => state.derived.shapes);
  const [prefix, setPrefix] = useState('');
  const [meaning, setMeaning] = useState<Meaning>();
  /** Ticked against the default of its box. */
  const [turned, setTurned] = useState<ReadonlySet<string>>(new Set());
  const thickness = sheetThickness(job);
  const offers = useMemo(
    () => depthOffers({ page, shapes, prefix, thickness, meaning }),
    [page, shapes, prefix, thickness, meaning],
  );
  if (page === undefined || page.notes.length === 0) return null;
  const isMeant = (offer: JudgedOffer) => offer.isSaid || meaning !== undefined;
  const ticked = offers.filter((offer) => isMeant(offer) && isTicked(offer, turned));
  const turn = (offer: JudgedOffer) => {
    const next = new Set(turned);
    if (!next.delete(keyOf(offer))) next.add(keyOf(offer));
    setTurned(next);
  };
  const take = () => {
    const targets = regionTargets(store.getState());
    const names =
      ticked.length > 4 ? `${ticked.length} regions` : ticked.map(({ region }) => region).join(', ');
    actions.say('figures', `depth notes of ${names}`, (before) => takeOffers(before, ticked, targets));
    setTurned(new Set());
  };
  return (
    <fieldset className="depth-notes">
      <legend>Depths written in regions</legend>
      <span className="choice">
        <span className="aside">Letters before a depth, if any</span>
        <NameField label="Letters before a depth, if any" name={prefix} isMarked onTake={setPrefix} />
      </span>
      {offers.some(({ isSaid }) => !isSaid) && (
        <div className="field-row">
          <span className="field-name">A bare figure is</span>
          <Segments
            label="A bare figure is"
            options={[
              { value: 'depth', words: 'Depth' },
              { value: 'thickness', words: 'What is left' },
            ]}
            value={meaning}
            onTake={setMeaning}
          />
        </div>
      )}
      {offers.length === 0 && <p className="aside">No text in a region reads like a depth or a thickness.</p>}
      <ul>
        {offers.map((offer) => (
          <OfferRow
            key={keyOf(offer)}
            offer={offer}
            isTicked={isMeant(offer) && isTicked(offer, turned)}
            isMeant={isMeant(offer)}
            onTurn={() => turn(offer)}
          />
        ))}
      </ul>
      {offers.length > 0 && (
        <button type="button" disabled={ticked.length === 0} onClick={take}>
          {ticked.length === 0 ? 'None ticked' : `Take ${ticked.length} of them`}
        </button>
      )}
    </fieldset>
  );
}

interface OfferRowProps {
  readonly offer: JudgedOffer;
  readonly isTicked: boolean;
  /** Whether it is known what its figure gives. */
  readonly isMeant: boolean;
  readonly onTurn: () => void;
}

function OfferRow({ offer, isTicked: isOn, isMeant, onTurn }: OfferRowProps) {
  const { actions } = useWorkbench();
  const unit = useWorkbenchState((state) => state.session.unit);
  const { region, text, at, standing, isDisputed } = offer;
  const go = () => {
    actions.select([region]);
    actions.flyTo({ to: at });
  };
  return (
    <li>
      <label>
        <input type="checkbox" checked={isOn} disabled={!isMeant || standing === 'asked'} onChange={onTurn} />
        {words(offer, unit, isMeant)}
      </label>
      <button type="button" className="go" onClick={go}>
        {region}
      </button>
      <span className="aside">
        “{text}”{standing === 'asked' && ', required'}
        {standing === 'other' && ', another depth required now'}
        {isDisputed && ', two notes differ'}
      </span>
    </li>
  );
}

function words({ asks, length, plus, minus }: JudgedOffer, unit: ShownUnit, isMeant: boolean): string {
  const tolerance =
    plus === undefined || minus === undefined
      ? ''
      : ` +${lengthFigure(plus, unit)} −${lengthFigure(minus, unit)}`;
  const gives = isMeant ? (asks === 'depth' ? 'depth' : 'leaves') : 'depth or left?';
  return `${gives} ${showLength(length, unit)}${tolerance}`;
}

/** By default a note is ticked where nothing is required yet and no other note disagrees. */
function isTicked(offer: JudgedOffer, turned: ReadonlySet<string>): boolean {
  if (offer.standing === 'asked') return false;
  return (offer.standing === 'open' && !offer.isDisputed) !== turned.has(keyOf(offer));
}

function keyOf({ region, asks, length, plus, minus }: JudgedOffer): string {
  return [region, asks, length, plus, minus].join(' ');
}

/** A stage's mark as a short piece of line, in the colour of the words around it. */
import { tickPlaces } from '#plan/stage-mark.ts';

/** Ticks shrink together rather than leave the ladder. */
const WIDEST = 44;
const PITCH = 5;
const HEIGHT = 9;

export function StageMark({ stage }: { readonly stage: number }) {
  const places = tickPlaces(stage);
  const last = places.at(-1) ?? 0;
  const pitch = Math.min(PITCH, (WIDEST - 8) / Math.max(1, last));
  const width = last * pitch + 8;
  return (
    <svg
      className="stage-mark"
      width={width}
      height={HEIGHT}
      fill="none"
      stroke="currentColor"
      strokeWidth={1.5}
      aria-hidden="true"
    >
      <path d={`M0 ${HEIGHT / 2}H${width}`} />
      {places.map((place) => (
        <path key={place} d={`M${4 + place * pitch} 0.5V${HEIGHT - 0.5}`} />
      ))}
    </svg>
  );
}

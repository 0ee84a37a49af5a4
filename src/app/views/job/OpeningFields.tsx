/** An opening in a coupon's maskant: how wide it was and how wide the metal is now, and the depth etched there. Emptied, it goes. */
import { isWholeOpening } from '#app/state/edits/edit-coupons.ts';
import { WIDTH_GAUGE } from '#bath/coupon.ts';
import { above, below, ReadingField, type ReadingsProps } from './ReadingField.tsx';

export function OpeningFields(props: ReadingsProps) {
  const { before, openingBefore, openingAfter } = props.readings;
  return (
    <div className="fields">
      <ReadingField {...props} name="openingBefore" within={below(openingAfter)} isOpen />
      <ReadingField {...props} name="openingAfter" within={above(openingBefore)} isOpen />
      <ReadingField {...props} name="openingDepth" within={below(before)} isOpen />
      <ReadingField {...props} name="openingGauge" gauge={WIDTH_GAUGE.value} />
      <p>
        {isWholeOpening(props.readings) ? (
          `Undercut / depth ${openingFactor(props.readings)}.`
        ) : (
          <span className="aside">Counts in place of the etch factor when widths and depth are there.</span>
        )}
      </p>
    </div>
  );
}

/** It widens on both sides. */
function openingFactor({
  openingBefore,
  openingAfter,
  openingDepth,
}: Readonly<Record<'openingBefore' | 'openingAfter' | 'openingDepth', number>>): number {
  return Number(((openingAfter - openingBefore) / (2 * openingDepth)).toPrecision(4));
}

/** A length in a figure: a line with a tick at each end and its words, level or upright. In px of the figure. */
interface DimensionLineProps {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly words: string;
  /** Where the words stand from the middle of the line. */
  readonly aside?: readonly [number, number];
}

export function DimensionLine({ from, to, words, aside = [0, -4] }: DimensionLineProps) {
  const [x1, y1] = from;
  const [x2, y2] = to;
  const isLevel = y1 === y2;
  const tick = (x: number, y: number) => (isLevel ? `M${x} ${y - 4}V${y + 4}` : `M${x - 4} ${y}H${x + 4}`);
  return (
    <g className="dimension">
      <path d={`M${x1} ${y1}L${x2} ${y2}${tick(x1, y1)}${tick(x2, y2)}`} />
      <text
        x={(x1 + x2) / 2 + aside[0]}
        y={(y1 + y2) / 2 + aside[1]}
        textAnchor={isLevel ? 'middle' : 'start'}
      >
        {words}
      </text>
    </g>
  );
}

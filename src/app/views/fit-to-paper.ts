/**
 * Before a page is printed the window's own sizes are written down for the print style: what is drawn keeps its layout, and
 * all of it is brought down to the width of the paper.
 */

/** Width that pages are laid out for, px of 1/96 in: A4 lying, less its margins, of which A3 and letter hold no less. */
const PAPER_WIDTH = 1000;

export function fitToPaper(bench: HTMLElement): void {
  const width = bench.clientWidth;
  const sizes = {
    '--bench-width': `${width}px`,
    '--middle-height': `${heightOf(bench, '.middle')}px`,
    '--ladder-height': `${heightOf(bench, '.ladder')}px`,
    '--paper-zoom': `${Math.min(1, PAPER_WIDTH / width)}`,
  };
  for (const [name, value] of Object.entries(sizes)) bench.style.setProperty(name, value);
}

function heightOf(bench: HTMLElement, selector: string): number {
  return bench.querySelector(selector)?.clientHeight ?? 0;
}

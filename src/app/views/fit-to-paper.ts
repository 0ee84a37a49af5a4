/**
 * Before a page is printed the window's own sizes are written down for the print style: what is drawn keeps its layout, and
 * all of it is brought down to the width of the paper.
 */

/** Width that pages are laid out for, px of 1/96 in: A4 lying, less its margins, of which A3 and letter hold no less. */
const PAPER_WIDTH = 1000;

export function fitToPaper(workbench: HTMLElement): void {
  const width = workbench.clientWidth;
  const sizes = {
    '--workbench-width': `${width}px`,
    '--middle-height': `${heightOf(workbench, '.middle')}px`,
    '--ladder-height': `${heightOf(workbench, '.ladder')}px`,
    '--paper-zoom': `${Math.min(1, PAPER_WIDTH / width)}`,
  };
  for (const [name, value] of Object.entries(sizes)) workbench.style.setProperty(name, value);
}

function heightOf(workbench: HTMLElement, selector: string): number {
  return workbench.querySelector(selector)?.clientHeight ?? 0;
}

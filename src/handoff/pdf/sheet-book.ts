/** Blocks of a page, set one below the other and broken between blocks. */
import type { Pen } from './pen.ts';

export interface Area {
  readonly left: number;
  readonly right: number;
  /** y of its upper edge. */
  readonly top: number;
}

export interface Block {
  /** mm */
  readonly height: number;
  /** mm of what follows that must stand on the same page. */
  readonly keepsWith?: number;
  /** Stands above the block once more where it begins a page: the head of a table. */
  readonly again?: Block | undefined;
  readonly draw: (pen: Pen, area: Area) => void;
}

/** Blocks by page. One taller than a page has a page of its own, and runs out of it: no block is made so tall. */
export function paged(blocks: readonly Block[], height: number): Block[][] {
  const pages: Block[][] = [];
  let room = 0;
  for (const block of blocks) {
    const page = pages.at(-1);
    const isFull = block.height + (block.keepsWith ?? 0) > room && block.height < height;
    if (page === undefined || isFull) {
      const start = block.again === undefined ? [block] : [block.again, block];
      pages.push(start);
      room = start.reduce((left, each) => left - each.height, height);
    } else {
      page.push(block);
      room -= block.height;
    }
  }
  return pages;
}

export function gap(height: number): Block {
  return { height, draw: () => undefined };
}

/** Blocks that stay on one page, as long as one holds them. */
export function together([first, ...others]: readonly Block[]): Block[] {
  if (first === undefined) return [];
  const last = others.at(-1)?.keepsWith ?? 0;
  return [{ ...first, keepsWith: others.reduce((sum, { height }) => sum + height, last) }, ...others];
}

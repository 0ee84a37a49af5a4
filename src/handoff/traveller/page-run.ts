/** Pages of the book in words: `page 3`, `pages 1 and 2`, `pages 4 to 19`. */
export interface PageRun {
  readonly from: number;
  readonly count: number;
}

export function pageWords({ from, count }: PageRun): string {
  if (count <= 1) return `page ${from}`;
  return `pages ${from} ${count === 2 ? 'and' : 'to'} ${from + count - 1}`;
}

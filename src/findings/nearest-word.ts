/** "Did you mean": the known word that a mistyped one comes nearest to. */

/** The nearest candidate, or nothing when none is near enough to be meant. Letter case does not count as a difference. */
export function nearestWord(word: string, candidates: Iterable<string>): string | undefined {
  const typed = word.toLowerCase();
  let best = Number.POSITIVE_INFINITY;
  let nearest: string | undefined;
  for (const candidate of candidates) {
    // A third of the letters wrong is a slip of the hand; more is another word. Of one or two letters none can be wrong.
    const most = Math.floor(Math.min(typed.length, candidate.length) / 3);
    const steps = editSteps(typed, candidate.toLowerCase());
    if (steps <= most && steps < best) {
      best = steps;
      nearest = candidate;
    }
  }
  return nearest;
}

/** Fewest letters added, dropped, changed or swapped with a neighbour that turn one word into the other. */
function editSteps(from: string, to: string): number {
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row++) {
    const next = [row];
    for (let column = 1; column <= to.length; column++) {
      const same = from[row - 1] === to[column - 1];
      let steps = Math.min(
        (last[column] ?? 0) + 1,
        (next[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + (same ? 0 : 1),
      );
      const swapped =
        row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1];
      if (swapped) steps = Math.min(steps, (before[column - 2] ?? 0) + 1);
      next.push(steps);
    }
    before = last;
    last = next;
  }
  return last[to.length] ?? from.length;
}

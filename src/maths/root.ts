/**
 * The root of a positive number, right to within two units in the last place, by Newton's steps: from above they only fall,
 * until rounding stops them. Cost: a step for each doubling between 1 and the number, and five more.
 */
export function root(value: number, degree: number): number {
  let estimate = Math.max(1, value);
  for (;;) {
    let power = estimate;
    for (let i = 2; i < degree; i++) power *= estimate;
    const next = estimate - (estimate - value / power) / degree;
    if (!(next < estimate)) return estimate;
    estimate = next;
  }
}

/** How many cases a property test tries: its own number, or with `TRIALS=10` in the environment ten times as many. */
export function trials(count: number): number {
  return count * Number(process.env['TRIALS'] ?? 1);
}

/** The seed of all random tests of a run: `SEED`, or the usual one. */
export const PROPERTY_SEED = seedFrom(process.env['SEED']);

function seedFrom(text: string | undefined): number {
  const seed = Number(text ?? 20_261_125);
  if (!Number.isInteger(seed) || text === '') throw new Error(`SEED is '${text}', which is no whole number`);
  return seed;
}

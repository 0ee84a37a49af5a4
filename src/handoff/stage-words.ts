/** Stages in words, for sentences: `stage 2`, `stages 2 and 5`, `stages 2 to 9`. Numbers rise. */
export function stageWords(numbers: readonly number[]): string {
  const [first, ...others] = numbers;
  const last = others.at(-1);
  if (first === undefined || last === undefined) return `stage ${first ?? '–'}`;
  const isRun = last - first === others.length;
  if (isRun && others.length > 1) return `stages ${first} to ${last}`;
  return `stages ${[first, ...others.slice(0, -1)].join(', ')} and ${last}`;
}

/** What is still sealed while a stage is in the bath. */
export function sealedWords(sealed: readonly number[]): string {
  if (sealed.length === 0) return 'nothing is sealed any more';
  return `${stageWords(sealed)} ${sealed.length === 1 ? 'stays' : 'stay'} sealed`;
}

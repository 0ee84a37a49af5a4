/** Reads places as people type them: "12.5 40; 300 40", also a place a line. Undefined where one of them is no place. */

export function readPlaces(text: string): [x: number, y: number][] | undefined {
  const places = text
    .split(/[;\n]/)
    .map((each) => each.trim())
    .filter((each) => each !== '')
    .map((each) => each.split(/[\s/]+/).map(Number));
  if (
    !places.every((place): place is [number, number] => place.length === 2 && place.every(Number.isFinite))
  ) {
    return undefined;
  }
  return places;
}

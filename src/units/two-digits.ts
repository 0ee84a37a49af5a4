/** A count or an hour in two digits: 7 is 07, so that names sort as they count. */
export function twoDigits(number: number): string {
  return String(number).padStart(2, '0');
}

/** Id of the region that a strip of a taper belongs to: a strip's id is that of its region with a number after a dot. */
export function wholeId(id: string): string {
  return id.replace(/\..*$/, '');
}

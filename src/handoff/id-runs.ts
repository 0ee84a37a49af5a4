/** Ids in few words: three or more in a row as the first and the last, `R01–R04 R07`. */

export function idRuns(ids: readonly string[], between = ' '): string {
  const said: string[] = [];
  for (let first = 0; first < ids.length; ) {
    let last = first;
    while (isNext(ids[last], ids[last + 1])) last++;
    if (last - first < 2) last = first;
    said.push(last === first ? (ids[first] ?? '') : `${ids[first]}–${ids[last]}`);
    first = last + 1;
  }
  return said.join(between);
}

/** Whether only the number at the end is one higher; strips (`R07.1`) count within their region. */
function isNext(id: string | undefined, next: string | undefined): boolean {
  const [a, b] = [id, next].map((each) => /^(.*?)(\d+)$/.exec(each ?? ''));
  return a?.[1] !== undefined && a[1] === b?.[1] && Number(b[2]) === Number(a[2]) + 1;
}

/** A count with its word, in the singular where it is one: "1 gap", "3 gaps". */
export function counted(count: number, one: string, more = `${one}s`): string {
  return `${count} ${count === 1 ? one : more}`;
}

/** The words in a layer's name, in lower case: "A-DIMS 2" has "a" and "dims". */
export function layerWords(name: string): string[] {
  return name.toLowerCase().split(/[^a-zß-ÿ]+/);
}

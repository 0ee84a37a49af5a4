/** Black or white, whichever stands out more on a colour: the better of the two always reaches 4.5 : 1 (WCAG 2.2, 1.4.3). */
export function inkOn(color: string): string {
  const [red, green, blue] = [1, 3, 5].map((at) => {
    const share = Number.parseInt(color.slice(at, at + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  const luminance = 0.2126 * (red ?? 0) + 0.7152 * (green ?? 0) + 0.0722 * (blue ?? 0);
  return luminance > 0.179 ? '#000000' : '#ffffff';
}

/**
 * The 255 colour numbers of the DXF format, and the one nearest to a given colour. The format's reference prints no red,
 * green and blue; the rule here reproduces the table that readers share (checked in the tests against one of them):
 * 1 to 6 are the pure colours, 10 to 249 are 24 hues of 15° in five brightnesses, each full (even) and pale (odd).
 */
type Rgb = readonly [red: number, green: number, blue: number];

/** Brightness of the five pairs of a hue, of 255. */
const BRIGHTNESS = [255, 189, 129, 104, 79] as const;
/** A pale colour's weakest channel, as a share of its brightness. */
const PALE = 2 / 3;

const FIRST_HUE = 10;
const LAST_HUE = 249;

/** Red, green and blue of a colour number from 10 to 249. */
export function rgbOfColorNumber(number: number): Rgb {
  const hueDeg = (Math.floor(number / 10) - 1) * 15;
  const top = BRIGHTNESS[Math.floor((number % 10) / 2)] ?? 0;
  const floor = number % 2 === 0 ? 0 : PALE;
  const channel = (peakDeg: number): number => {
    const away = Math.abs(((hueDeg - peakDeg + 540) % 360) - 180);
    const share = Math.min(1, Math.max(0, 2 - away / 60));
    return Math.round(top * (floor + (1 - floor) * share));
  };
  return [channel(0), channel(120), channel(240)];
}

/** The colour number (10 to 249) nearest to an sRGB colour `#rrggbb`, none of those taken. */
export function nearestColorNumber(color: string, taken: ReadonlySet<number> = new Set()): number {
  const wanted = rgbOfHex(color);
  let best = FIRST_HUE;
  let least = Number.POSITIVE_INFINITY;
  for (let number = FIRST_HUE; number <= LAST_HUE; number++) {
    if (taken.has(number)) continue;
    const away = colorGap(wanted, rgbOfColorNumber(number));
    if (away < least) {
      least = away;
      best = number;
    }
  }
  return best;
}

function rgbOfHex(color: string): Rgb {
  const value = Number.parseInt(color.slice(1), 16);
  return [(value >> 16) & 255, (value >> 8) & 255, value & 255];
}

/** Squared distance, channels weighted as the eye does (weights 2 : 4 : 3, common practice for nearest-colour search). */
function colorGap(a: Rgb, b: Rgb): number {
  const [red, green, blue] = [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
  return 2 * red * red + 4 * green * green + 3 * blue * blue;
}

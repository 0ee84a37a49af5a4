/**
 * The colour key: a stage's colour is computed from the number of stages, never picked by hand. Lightness falls and hue
 * turns evenly from shallow to deep, so that the order reads without a legend, also in grey and with a colour deficiency.
 * Up to eight stages two neighbours differ by 12 or more in CIEDE2000; past that the stage mark carries the difference.
 */
import { hexOfOklch } from './oklch-color.ts';

/** Ends of the key in OKLCH (hue in degrees), measured in the test to keep eight steps apart for every kind of sight. */
const SHALLOW = { l: 0.92, h: 180 };
const DEEP = { l: 0.26, h: -30 };
const CHROMA = 0.12;
/** Stage count from which the whole range of lightness is used; fewer stages stay off its ends, near white and black. */
const FULL_AT = 8;

/** Colours by stage, `#rrggbb`: item 0 is stage 1, the deepest. */
export function stageColors(count: number): string[] {
  const used = Math.min(1, (count + 4) / (FULL_AT + 4));
  return Array.from({ length: count }, (_, index) => {
    const share = count === 1 ? 0.5 : 1 - index / (count - 1);
    return colorAt({ lightness: 0.5 + used * (share - 0.5), hue: share });
  });
}

/** Colour at shares of the key, 0 the shallow end, 1 the deep one; chroma is given up where sRGB cannot show it. */
function colorAt(share: { readonly lightness: number; readonly hue: number }): string {
  return hexOfOklch({
    lightness: SHALLOW.l + (DEEP.l - SHALLOW.l) * share.lightness,
    chroma: CHROMA,
    hueDeg: SHALLOW.h + (DEEP.h - SHALLOW.h) * share.hue,
  });
}

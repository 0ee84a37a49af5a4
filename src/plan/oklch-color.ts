/**
 * An OKLCH colour as sRGB `#rrggbb`. Chroma is given up where sRGB cannot show it, to less than a ten-thousandth.
 * B. Ottosson, A perceptual color space for image processing (2020, matrices of 2021-01-25); IEC 61966-2-1 for sRGB.
 */
import { root } from '#maths/root.ts';
import { cos, sin } from '#maths/sine.ts';

export interface OklchColor {
  /** 0 to 1. */
  readonly lightness: number;
  readonly chroma: number;
  readonly hueDeg: number;
}

type Linear = readonly [red: number, green: number, blue: number];

const HALVINGS = 13;

export function hexOfOklch(color: OklchColor): string {
  const value = shownOf(color).reduce((all, channel) => all * 256 + byteOf(channel), 0);
  return `#${value.toString(16).padStart(6, '0')}`;
}

function shownOf(color: OklchColor): Linear {
  const wanted = linearOf(color);
  if (isShown(wanted)) return wanted;
  let shown = linearOf({ ...color, chroma: 0 });
  let [low, high] = [0, color.chroma];
  for (let halving = 0; halving < HALVINGS; halving++) {
    const chroma = (low + high) / 2;
    const candidate = linearOf({ ...color, chroma });
    if (isShown(candidate)) {
      shown = candidate;
      low = chroma;
    } else high = chroma;
  }
  return shown;
}

function linearOf({ lightness, chroma, hueDeg }: OklchColor): Linear {
  const hue = (hueDeg * Math.PI) / 180;
  const a = chroma * cos(hue);
  const b = chroma * sin(hue);
  const long = cube(lightness + 0.3963377774 * a + 0.2158037573 * b);
  const middle = cube(lightness - 0.1055613458 * a - 0.0638541728 * b);
  const short = cube(lightness - 0.0894841775 * a - 1.291485548 * b);
  return [
    4.0767416621 * long - 3.3077115913 * middle + 0.2309699292 * short,
    -1.2684380046 * long + 2.6097574011 * middle - 0.3413193965 * short,
    -0.0041960863 * long - 0.7034186147 * middle + 1.707614701 * short,
  ];
}

function cube(value: number): number {
  return value * value * value;
}

function isShown(color: Linear): boolean {
  return color.every((channel) => channel >= 0 && channel <= 1);
}

/** The byte of a linear channel: to the power of 1 / 2.4, which is 5 / 12. */
function byteOf(channel: number): number {
  if (channel <= 0.0031308) return Math.round(255 * 12.92 * Math.max(0, channel));
  const squared = channel * channel;
  const power = Math.sqrt(Math.sqrt(root(squared * squared * channel, 3)));
  return Math.round(255 * (1.055 * Math.min(1, power) - 0.055));
}

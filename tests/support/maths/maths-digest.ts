/**
 * Results of the portable functions at many places, as bytes: the same on every engine, or not the same functions. Places
 * come from whole numbers (Park and Miller, Communications of the ACM 31 (1988)). Also run in the browser, bundled.
 */
import { acos } from '#maths/arc-cosine.ts';
import { atan, atan2 } from '#maths/arc-tangent.ts';
import { exp } from '#maths/exponential.ts';
import { hypot } from '#maths/hypot.ts';
import { root } from '#maths/root.ts';
import { cos, sin } from '#maths/sine.ts';
import { tan } from '#maths/tangent.ts';

const PLACES = 50_000;

export function portableResults(): Float64Array {
  let state = 20_270_401;
  /** Below 1 either way. */
  const share = () => {
    state = (state * 16_807) % 2_147_483_647;
    return state / 1_073_741_824 - 1;
  };
  const results = new Float64Array(10 * PLACES);
  for (let i = 0; i < results.length; ) {
    const [a, b] = [share(), share()];
    const far = a / (b * b * b);
    results[i++] = sin(13 * a);
    results[i++] = cos(13 * a);
    results[i++] = sin(far);
    results[i++] = tan(3 * a);
    results[i++] = atan(far);
    results[i++] = atan2(a, b);
    results[i++] = acos(a);
    results[i++] = exp(20 * a);
    results[i++] = hypot(a, far);
    results[i++] = root(1 + 1000 * b * b, 3);
  }
  return results;
}

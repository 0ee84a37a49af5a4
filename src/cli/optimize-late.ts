/**
 * When V8 begins to optimize. Node 20 does so once a function has run through 66 kB of its bytecode, which most functions of a plan come by
 * before they have seen what they will work on: they are optimized, thrown back and optimized again. At eight times as much a small
 * plan takes a tenth less processor time, a middling one half, a large one no more. Later V8 counts otherwise, and waits by itself.
 */
import { setFlagsFromString } from 'node:v8';

const V8_OF_NODE_20 = '11.';
const BUDGET = 8 * 66 * 1024;

/** For this process from now on. What was compiled before is taken only as long as V8 has the flags it was compiled with: to be called after. */
export function optimizeLate(): void {
  if (process.versions.v8.startsWith(V8_OF_NODE_20)) setFlagsFromString(`--interrupt-budget=${BUDGET}`);
}

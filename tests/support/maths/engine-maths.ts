/** Watches who asks the engine for a function that engines differ in. */

/** All that ECMA-262 (15th edition, 21.3.2) leaves to the implementation, and chance. */
const FUNCTIONS = [
  ...[
    'sin',
    'cos',
    'tan',
    'asin',
    'acos',
    'atan',
    'atan2',
    'sinh',
    'cosh',
    'tanh',
    'asinh',
    'acosh',
    'atanh',
  ],
  ...['exp', 'expm1', 'log', 'log10', 'log2', 'log1p', 'pow', 'cbrt', 'hypot', 'random'],
];

export interface EngineWatch {
  /** Package, or file of ours, and function. */
  readonly asked: Set<string>;
  readonly stop: () => void;
}

export function watchEngineMaths(): EngineWatch {
  const asked = new Set<string>();
  const maths = Math as unknown as Record<string, (...figures: number[]) => number>;
  const own = FUNCTIONS.map((name) => [name, maths[name]] as const);
  for (const [name, each] of own) {
    maths[name] = (...figures) => {
      asked.add(`${callerOf(new Error().stack ?? '')} ${name}`);
      return each?.(...figures) ?? Number.NaN;
    };
  }
  const stop = () => {
    for (const [name, each] of own) if (each !== undefined) maths[name] = each;
  };
  return { asked, stop };
}

/** Two calls up. */
function callerOf(stack: string): string {
  const line = stack.split('\n')[2] ?? '';
  const inPackage = /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(line)?.[1];
  return inPackage ?? line.replace(/.*\/(?:src|tests)\//, '').replace(/:\d.*/, '');
}

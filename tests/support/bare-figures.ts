/** Constants of a module that hold a number without saying where it is from: no `source` beside it. Functions are not looked at. */

const DECLARED = /^(?:export )?const (\w+)(?:: [^=]+?)? =\s([\s\S]*?);$/gm;
const COMMENTS = /\/\*[\s\S]*?\*\/|\/\/.*$/gm;
const TEXTS = /(['"`])(?:\\.|(?!\1)[^\\])*\1/g;
const IS_FUNCTION = /^(?:async )?(?:\([\s\S]*?\)|\w+)(?:: [^=]+)? =>/;
/** `{ value: 4, source: … }`, makers of such, limits of a schema, the version of a format. */
const SOURCED = [
  /\{[^{}]*\bsource:[^{}]*\}/g,
  /\b(?:fromMemory|ownChoice)\([^()]*\)/g,
  /\bz\.\w+\([\s\d_.,e-]*\)/g,
  /\bversion: 1\b/g,
];
const NUMBER = /(?<![\w.$])\d/;

export function bareFigures(source: string): string[] {
  return [...source.matchAll(DECLARED)].flatMap(([, name = '', value = '']) => {
    const bare = value.replace(COMMENTS, '').replace(TEXTS, "''");
    if (IS_FUNCTION.test(bare)) return [];
    return NUMBER.test(SOURCED.reduce((left, each) => left.replace(each, ''), bare)) ? [name] : [];
  });
}

/** Names of the hand-off files that metal or maskant could be cut from: kept back while the plan has a `stop`. */
export const CUT_FILES: readonly string[] = ['scribe.dxf'];

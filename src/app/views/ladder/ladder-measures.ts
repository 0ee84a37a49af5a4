/** Where the ladder's parts stand from left to right, in pixels. */
export const BAND = { left: 36, right: 98, leadersEnd: 118 } as const;

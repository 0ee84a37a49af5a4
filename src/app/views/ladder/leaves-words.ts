/** What a level leaves, in words: where both faces are etched, of the sheet that the other face has yet to be taken off. */
export function leavesWords(
  left: string,
  { isCut, isTwoFaced }: { readonly isCut: boolean; readonly isTwoFaced: boolean },
): string {
  if (isCut) return 'cut through, leaves nothing';
  return isTwoFaced ? `leaves ${left} less what the other face takes` : `leaves ${left}`;
}

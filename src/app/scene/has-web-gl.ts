/** Whether this browser can draw with WebGL 2, in the page and from a worker's canvas: the sheet's canvas needs both. */
export function hasWebGl(): boolean {
  if (typeof HTMLCanvasElement.prototype.transferControlToOffscreen !== 'function') return false;
  const context = document.createElement('canvas').getContext('webgl2');
  // Browsers keep only a few contexts: this one is given back at once.
  context?.getExtension('WEBGL_lose_context')?.loseContext();
  return context !== null;
}

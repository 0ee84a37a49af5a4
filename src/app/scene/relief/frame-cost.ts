/** How long a frame takes until it is really drawn: handing it over is quick, whatever it costs. */
import type { WebGLRenderer } from 'three';

/** ms between two looks. */
const LOOK_AGAIN = 20;

/** @param begun when the frame was begun, by the clock of `performance` @returns ms, once all that was handed over is drawn */
export function frameCost(gl: WebGLRenderer, begun: number): Promise<number> {
  const context = gl.getContext() as WebGL2RenderingContext;
  const drawn = context.fenceSync(context.SYNC_GPU_COMMANDS_COMPLETE, 0);
  context.flush();
  return new Promise((resolve) => {
    const look = () => {
      const isOpen = drawn !== null && !context.isContextLost();
      if (isOpen && context.getSyncParameter(drawn, context.SYNC_STATUS) !== context.SIGNALED) {
        setTimeout(look, LOOK_AGAIN);
        return;
      }
      context.deleteSync(drawn);
      resolve(performance.now() - begun);
    };
    setTimeout(look);
  });
}

/**
 * Draws a frame without smoothing its edges and with half the pixels each way, for a heavy view that moves: where there is no
 * graphics processor smoothing takes three quarters of a frame, and pixels most of the rest. The canvas itself always smooths, so that the frame is drawn beside it and laid on whole.
 */
import {
  type Camera,
  MeshBasicMaterial,
  type Scene,
  Vector2,
  type WebGLRenderer,
  WebGLRenderTarget,
} from 'three';
import { FullScreenQuad } from 'three/examples/jsm/postprocessing/Pass.js';

/** Times fewer pixels each way. */
const COARSER = 2;

export interface QuickFrame {
  readonly draw: (gl: WebGLRenderer, scene: Scene, camera: Camera) => void;
  readonly dispose: () => void;
}

export function quickFrame(): QuickFrame {
  const target = new WebGLRenderTarget(1, 1, { samples: 0 });
  const material = new MeshBasicMaterial({ map: target.texture, depthTest: false, depthWrite: false });
  const quad = new FullScreenQuad(material);
  const size = new Vector2();
  return {
    draw: (gl, scene, camera) => {
      gl.getDrawingBufferSize(size);
      target.setSize(Math.ceil(size.x / COARSER), Math.ceil(size.y / COARSER));
      gl.setRenderTarget(target);
      gl.render(scene, camera);
      gl.setRenderTarget(null);
      quad.render(gl);
    },
    dispose: () => {
      target.dispose();
      material.dispose();
      quad.dispose();
    },
  };
}

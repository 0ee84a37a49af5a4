/**
 * Draws a frame without smoothing its edges, for a view that moves: where there is no graphics processor smoothing takes three
 * quarters of a frame. The canvas itself always smooths, so that the frame is drawn beside it and laid on whole.
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
      target.setSize(size.x, size.y);
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

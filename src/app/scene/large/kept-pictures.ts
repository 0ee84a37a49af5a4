/**
 * Pictures of the sheet, kept as they were drawn and shown as cards on the sheet while the view moves: a frame then costs the
 * same however much there is on the sheet. Kept are the last one, and under it the one that shows most of the sheet.
 */
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  FramebufferTexture,
  Group,
  LinearFilter,
  Mesh,
  ShaderMaterial,
  Vector2,
  type WebGLRenderer,
} from 'three';
import { pointSeenAt, type ViewPose, type ViewSize } from '#app/scene/view-pose.ts';

const VERTEX = `
  varying vec2 vPlace;
  void main() {
    vPlace = uv;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(position, 1.0);
  }
`;
/** As it was on screen: its colours are not turned once more into what a screen shows. */
const FRAGMENT = `
  uniform sampler2D picture;
  varying vec2 vPlace;
  void main() {
    gl_FragColor = vec4(texture2D(picture, vPlace).rgb, 1.0);
  }
`;

interface Card {
  readonly mesh: Mesh<BufferGeometry, ShaderMaterial>;
  texture: FramebufferTexture;
  /** Undefined while it shows nothing. */
  pixelsPerMm: number | undefined;
}

export class KeptPictures {
  readonly group = new Group();
  readonly #whole = makeCard(-2);
  readonly #last = makeCard(-1);

  constructor() {
    this.group.add(this.#whole.mesh, this.#last.mesh);
  }

  /** Whether there is one to show. */
  get isAny(): boolean {
    return this.#last.pixelsPerMm !== undefined;
  }

  /** Nothing of what was kept is true any more. */
  forget(): void {
    for (const card of [this.#whole, this.#last]) {
      card.pixelsPerMm = undefined;
      card.mesh.visible = false;
    }
  }

  /** Keeps what has just been drawn. */
  keep(renderer: WebGLRenderer, pose: ViewPose, size: ViewSize): void {
    takePicture(this.#last, { renderer, pose, size });
    const { pixelsPerMm } = this.#whole;
    if (pixelsPerMm === undefined || pose.pixelsPerMm <= pixelsPerMm)
      takePicture(this.#whole, { renderer, pose, size });
  }

  dispose(): void {
    for (const { mesh, texture } of [this.#whole, this.#last]) {
      mesh.geometry.dispose();
      mesh.material.dispose();
      texture.dispose();
    }
  }
}

function makeCard(order: number): Card {
  const geometry = new BufferGeometry();
  geometry.setAttribute('position', new BufferAttribute(new Float32Array(12), 3));
  geometry.setAttribute('uv', new BufferAttribute(Float32Array.of(0, 0, 1, 0, 1, 1, 0, 1), 2));
  geometry.setIndex([0, 1, 2, 0, 2, 3]);
  const material = new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { picture: { value: null } },
    depthTest: false,
    depthWrite: false,
    side: DoubleSide,
  });
  const mesh = new Mesh(geometry, material);
  mesh.frustumCulled = false;
  mesh.renderOrder = order;
  mesh.visible = false;
  return { mesh, texture: new FramebufferTexture(1, 1), pixelsPerMm: undefined };
}

interface Shown {
  readonly renderer: WebGLRenderer;
  readonly pose: ViewPose;
  readonly size: ViewSize;
}

function takePicture(card: Card, { renderer, pose, size }: Shown): void {
  const { x: width, y: height } = renderer.getDrawingBufferSize(new Vector2());
  const { image } = card.texture;
  if (image.width !== width || image.height !== height) {
    card.texture.dispose();
    card.texture = new FramebufferTexture(width, height);
    card.texture.minFilter = LinearFilter;
    card.texture.magFilter = LinearFilter;
    const { picture } = card.mesh.material.uniforms;
    if (picture !== undefined) picture.value = card.texture;
  }
  renderer.copyFramebufferToTexture(card.texture);
  const places = card.mesh.geometry.getAttribute('position');
  // On the surface, on which the view looks.
  [
    { x: 0, y: size.height },
    { x: size.width, y: size.height },
    { x: size.width, y: 0 },
    { x: 0, y: 0 },
  ].forEach((pixel, corner) => {
    const { x, y } = pointSeenAt(pose, size, pixel);
    places.setXYZ(corner, x, y, 0);
  });
  places.needsUpdate = true;
  card.mesh.visible = true;
  card.pixelsPerMm = pose.pixelsPerMm;
}

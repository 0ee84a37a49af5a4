/**
 * How the relief is shaded: floors in their own colour, walls darker by their slope, light from the upper left of the viewer, a soft
 * shadow at the foot of walls, and all before the cut left out. Its own few lines of shader: cheaper than any lamp, and flat faces stay flat.
 */
import { Color, DoubleSide, FrontSide, ShaderMaterial, Vector2, Vector4 } from 'three';

/** What all materials of the relief share; changed in place from frame to frame. */
export interface ReliefLight {
  /** Unit way that light travels over the sheet, as seen from above. */
  readonly travel: { readonly value: Vector2 };
  /** Of the cut: unit normal towards the viewer, its distance along it, and 1 where there is a cut; mm about the mesh's own origin. */
  readonly cut: { readonly value: Vector4 };
  /** Reach of the foot's shadow, mm. */
  readonly reach: { value: number };
}

export function reliefLight(): ReliefLight {
  return {
    travel: { value: new Vector2(0.8, -0.6) },
    cut: { value: new Vector4(0, 0, 0, 0) },
    reach: { value: 1 },
  };
}

/** Only where there is a cut: what may be left out is shaded before it is known to be hidden. */
const CUT_AWAY = `
  uniform vec4 cut;
  varying vec3 vPlace;
  void leaveOut() {
    #ifdef IS_CUT
      if (dot(cut.xy, vPlace.xy) > cut.z) discard;
    #endif
  }
`;

function cutDefines(isCut: boolean): Record<string, string> {
  return isCut ? { IS_CUT: '' } : {};
}

const PLACE_VERTEX = `
  varying vec3 vPlace;
  void main() {
    vPlace = (modelMatrix * vec4(position, 1.0)).xyz;
    gl_Position = projectionMatrix * (viewMatrix * vec4(vPlace, 1.0));
  }
`;

/** A wall keeps 60 to 86 % of its floor's colour; a face is a floor that leans by less than 10°. */
const SOLID_FRAGMENT = `
  uniform vec3 color;
  uniform vec2 travel;
  ${CUT_AWAY}
  void main() {
    leaveOut();
    vec3 normal = normalize(cross(dFdx(vPlace), dFdy(vPlace)));
    if (!gl_FrontFacing) normal = -normal;
    float wall = 1.0 - smoothstep(0.94, 0.985, abs(normal.z));
    float lit = 0.5 - 0.5 * dot(normal.xy, travel) + 0.1 * normal.z;
    float kept = mix(0.60, 0.86, clamp(lit, 0.0, 1.0));
    // Shares as the eye sees them: squared, they are nearly so of light.
    float share = mix(1.0, kept, wall);
    gl_FragColor = vec4(color * share * share, 1.0);
    #include <colorspace_fragment>
  }
`;

export function solidMaterial(color: string, { travel, cut }: ReliefLight, isCut: boolean): ShaderMaterial {
  return new ShaderMaterial({
    defines: cutDefines(isCut),
    vertexShader: PLACE_VERTEX,
    fragmentShader: SOLID_FRAGMENT,
    uniforms: { color: { value: new Color(color) }, travel, cut },
    side: FrontSide,
    // Edges and shadows that lie on it are seen.
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}

const LINE_FRAGMENT = `
  uniform vec3 color;
  uniform float opacity;
  ${CUT_AWAY}
  void main() {
    leaveOut();
    gl_FragColor = vec4(color, opacity);
    #include <colorspace_fragment>
  }
`;

export function edgeMaterial(
  { color, opacity }: { readonly color: string; readonly opacity: number },
  { cut }: ReliefLight,
  isCut: boolean,
): ShaderMaterial {
  return new ShaderMaterial({
    defines: cutDefines(isCut),
    vertexShader: PLACE_VERTEX,
    fragmentShader: LINE_FRAGMENT,
    uniforms: { color: { value: new Color(color) }, opacity: { value: opacity }, cut },
    transparent: true,
    depthWrite: false,
  });
}

const SHADOW_VERTEX = `
  attribute vec3 inward;
  uniform float reach;
  uniform vec2 travel;
  varying vec3 vPlace;
  varying float vShadow;
  void main() {
    vec3 place = (modelMatrix * vec4(position, 1.0)).xyz;
    place.xy += inward.xy * inward.z * reach;
    vPlace = place;
    float share = 0.55 + 0.45 * dot(inward.xy, travel);
    vShadow = (1.0 - inward.z) * share;
    gl_Position = projectionMatrix * (viewMatrix * vec4(place, 1.0));
  }
`;
const SHADOW_FRAGMENT = `
  varying float vShadow;
  ${CUT_AWAY}
  void main() {
    leaveOut();
    gl_FragColor = vec4(0.0, 0.0, 0.0, 0.36 * vShadow * vShadow);
  }
`;

export function shadowMaterial({ cut, travel, reach }: ReliefLight, isCut: boolean): ShaderMaterial {
  return new ShaderMaterial({
    defines: cutDefines(isCut),
    vertexShader: SHADOW_VERTEX,
    fragmentShader: SHADOW_FRAGMENT,
    uniforms: { cut, travel, reach },
    transparent: true,
    depthWrite: false,
    side: DoubleSide,
  });
}

const FACE_VERTEX = `
  attribute vec4 color;
  varying vec4 vColor;
  void main() {
    vColor = color;
    gl_Position = projectionMatrix * (modelViewMatrix * vec4(position, 1.0));
  }
`;
/** Cut metal is hatched, a line every seven pixels. */
const FACE_FRAGMENT = `
  uniform float hatch;
  varying vec4 vColor;
  void main() {
    float line = abs(mod(gl_FragCoord.x + gl_FragCoord.y, 7.0) - 3.5);
    float ink = vColor.a * hatch * (1.0 - smoothstep(0.3, 1.1, line));
    gl_FragColor = vec4(vColor.rgb * (1.0 - ink), 1.0);
    #include <colorspace_fragment>
  }
`;

export function cutFaceMaterial(): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: FACE_VERTEX,
    fragmentShader: FACE_FRAGMENT,
    uniforms: { hatch: { value: 0.3 } },
    side: DoubleSide,
  });
}

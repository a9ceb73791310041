import { Color, MeshLambertMaterial, Vector3 } from 'three';
import type { Spotlight, ThreadPart } from '../thread/thread-line.js';

/** How many yarns a thread is laid of. */
const PLIES = 4;
/** Length of one full turn of the lay, in diameters. */
const LAY = 3.6;

/**
 * How a marked yarn shows which string is which without colour: all along in the tying string,
 * in dashes in a lead that is being put aside, not at all in the others.
 */
const MARKS: Readonly<Record<ThreadPart, { strength: number; dash: number }>> = {
  tying: { strength: 1, dash: 0 },
  'old-lead': { strength: 1, dash: 1 },
  held: { strength: 0, dash: 0 },
  resting: { strength: 0, dash: 0 },
  other: { strength: 0, dash: 0 },
  ghost: { strength: 0, dash: 0 },
};

interface ThreadUniforms {
  uRadius: { value: number };
  uMark: { value: number };
  uDash: { value: number };
  uMarkColour: { value: Color };
  uRim: { value: Color };
  uGround: { value: Color };
  /** Place across, half width and strength of the fading beside what is looked at. */
  uSpot: { value: Vector3 };
  /** Of a piece: time up to which threads are seen, in knots. */
  uNow: { value: number };
  /** Of a piece: how many knots are shown before they are tied; 0 for none. */
  uGhost: { value: number };
  /** Of a piece: over how many knots the way that the lead has come is marked; 0 for none. */
  uTrail: { value: number };
  /** Of a piece: the only string whose way is marked; below 0 for any. */
  uOnly: { value: number };
}

/** Cotton: dull, twisted from three yarns, one of which may be marked. */
export class ThreadMaterial extends MeshLambertMaterial {
  private readonly uniforms: ThreadUniforms = {
    uRadius: { value: 0.5 },
    uMark: { value: 0 },
    uDash: { value: 0 },
    uMarkColour: { value: new Color() },
    uRim: { value: new Color() },
    uGround: { value: new Color() },
    uSpot: { value: new Vector3() },
    uNow: { value: 0 },
    uGhost: { value: 0 },
    uTrail: { value: 0 },
    uOnly: { value: -1 },
  };

  /** @param piece whether it dresses many threads at once, each vertex with its colour and its time */
  constructor(piece = false) {
    super();
    this.vertexColors = piece;
    if (piece) this.defines = { THREAD_PIECE: '' };
    this.customProgramCacheKey = () => (piece ? 'halfhitch-piece' : 'halfhitch-thread');
    this.onBeforeCompile = (shader) => {
      Object.assign(shader.uniforms, this.uniforms);
      shader.vertexShader = vertexShader(shader.vertexShader);
      shader.fragmentShader = fragmentShader(shader.fragmentShader);
    };
  }

  /**
   * Shows threads of a piece as they are at a time.
   *
   * @param time `now`, and how much is shown of what comes and marked of what was; in knots
   */
  showUpTo(
    time: {
      readonly now: number;
      readonly ghost: number;
      readonly trail: number;
      readonly only: number;
    },
    radius: number,
    ground: Color,
  ): void {
    this.uniforms.uNow.value = time.now;
    this.uniforms.uGhost.value = time.ghost;
    this.uniforms.uTrail.value = time.trail;
    this.uniforms.uOnly.value = time.only;
    this.uniforms.uRadius.value = radius;
    this.uniforms.uGround.value.copy(ground);
    this.uniforms.uSpot.value.set(0, 1, 0);
    this.uniforms.uRim.value.copy(ground).multiplyScalar(luminance(ground) > 0.25 ? 0.22 : 1.6);
  }

  wear(look: {
    part: ThreadPart;
    colour: string;
    radius: number;
    ground: Color;
    spotlight: Spotlight | null;
  }): void {
    const { spotlight } = look;
    this.uniforms.uGround.value.copy(look.ground);
    if (spotlight === null) this.uniforms.uSpot.value.set(0, 1, 0);
    else this.uniforms.uSpot.value.set(spotlight.at[0], spotlight.radius, 0.55);
    this.color.set(look.colour);
    const bright = luminance(this.color);
    const mark = MARKS[look.part];
    this.uniforms.uRadius.value = look.radius;
    this.uniforms.uMark.value = mark.strength;
    this.uniforms.uDash.value = mark.dash;
    // A marked yarn must stand out from its own thread, whatever the colour of that.
    this.uniforms.uMarkColour.value.set(bright > 0.3 ? '#1d2a38' : '#f4efe2');
    // The rim parts a thread from a ground of nearly its own colour.
    this.uniforms.uRim.value
      .copy(this.color)
      .multiplyScalar(luminance(look.ground) > 0.25 ? 0.3 : 1)
      .lerp(new Color('#ffffff'), luminance(look.ground) > 0.25 ? 0 : 0.38);
  }
}

function luminance(colour: Color): number {
  return 0.2126 * colour.r + 0.7152 * colour.g + 0.0722 * colour.b;
}

function vertexShader(source: string): string {
  return source
    .replace(
      '#include <common>',
      `#include <common>
attribute vec3 threadTangent;
attribute vec2 threadAlong;
attribute float threadShade;
#ifdef THREAD_PIECE
attribute float threadWhen;
attribute float threadString;
varying float vThreadWhen;
varying float vThreadString;
#endif
uniform float uRadius;
varying vec3 vThreadTangent;
varying vec2 vThreadAlong;
varying float vThreadShade;
varying float vThreadX;
${PLY}`,
    )
    .replace(
      '#include <begin_vertex>',
      `#include <begin_vertex>
vThreadTangent = normalize(normalMatrix * threadTangent);
vThreadAlong = threadAlong;
vThreadShade = threadShade;
vThreadX = transformed.x;
#ifdef THREAD_PIECE
vThreadWhen = threadWhen;
vThreadString = threadString;
#endif
transformed += objectNormal * uRadius * 0.13 * (plyHeight(plyPhase(threadAlong)) - 0.72);`,
    );
}

function fragmentShader(source: string): string {
  return source
    .replace(
      '#include <common>',
      `#include <common>
uniform float uRadius;
uniform float uMark;
uniform float uDash;
uniform vec3 uMarkColour;
uniform vec3 uRim;
uniform vec3 uGround;
uniform vec3 uSpot;
varying float vThreadX;
#ifdef THREAD_PIECE
uniform float uNow;
uniform float uGhost;
uniform float uTrail;
uniform float uOnly;
varying float vThreadWhen;
varying float vThreadString;
#endif
varying vec3 vThreadTangent;
varying vec2 vThreadAlong;
varying float vThreadShade;
${PLY}`,
    )
    .replace(
      '#include <color_fragment>',
      `#include <color_fragment>
float mark = uMark;
vec3 markColour = uMarkColour;
#ifdef THREAD_PIECE
if (vThreadWhen > uNow + uGhost) discard;
if (vThreadWhen > uNow) {
  // What is still to come is a veil: every other square of the picture's grid is left open.
  vec2 cell = floor(gl_FragCoord.xy / 2.0);
  if (mod(cell.x + cell.y, 2.0) > 0.5) discard;
}
if (uTrail > 0.0 && vThreadWhen >= 0.0 && vThreadWhen <= uNow
  && (uOnly < -0.5 || abs(vThreadString - uOnly) < 0.5)) {
  mark = 1.0 - smoothstep(0.75, 1.0, (uNow - vThreadWhen) / uTrail);
  float bright = dot(diffuseColor.rgb, vec3(0.2126, 0.7152, 0.0722));
  markColour = bright > 0.3 ? vec3(0.012, 0.023, 0.042) : vec3(0.9, 0.86, 0.76);
}
#endif
float phase = plyPhase(vThreadAlong);
// Seen from far, the yarns are finer than a pixel: fade them instead of letting them flicker.
float plyFade = 1.0 - smoothstep(0.3, 0.8, fwidth(phase));
float across = 2.0 * fract(phase) - 1.0;
float groove = smoothstep(0.0, 0.42, 1.0 - abs(across));
float turn = vThreadAlong.x / uRadius;
float fibre = sin(across * 19.0 + turn * 2.3) * 0.5 + sin(across * 43.0 - turn * 5.1) * 0.5;
float yarn = mod(floor(phase), ${PLIES}.0);
float dashed = uDash > 0.5 ? step(0.5, fract(turn / 3.2)) : 1.0;
float marked = mark * dashed * (yarn < 0.5 ? 1.0 : 0.0) * smoothstep(0.05, 0.2, 1.0 - abs(across));
diffuseColor.rgb = mix(diffuseColor.rgb, markColour, marked * 0.8);
diffuseColor.rgb *= mix(1.0, mix(0.5, 1.0, groove) * (1.0 + 0.055 * fibre), plyFade);
diffuseColor.rgb *= vThreadShade;`,
    )
    .replace(
      '#include <normal_fragment_maps>',
      `#include <normal_fragment_maps>
{
  vec3 t = normalize(vThreadTangent);
  vec3 e = cross(t, normal);
  vec3 climb = normalize(e * ${(PLIES / (2 * Math.PI)).toFixed(5)} + t * ${(PLIES / (2 * LAY)).toFixed(5)});
  float slope = -0.72 * across / sqrt(1.0 - 0.72 * across * across);
  float ripple = 0.16 * cos(across * 19.0 + turn * 2.3);
  normal = normalize(normal - climb * (slope * 0.62 + ripple) * plyFade);
}`,
    )
    .replace(
      '#include <opaque_fragment>',
      `float edge = 1.0 - abs(dot(normalize(vNormal), normalize(vViewPosition)));
outgoingLight = mix(outgoingLight, uRim, 0.75 * smoothstep(0.62, 0.98, edge));
outgoingLight = mix(outgoingLight, uGround, uSpot.z * smoothstep(uSpot.y, 1.7 * uSpot.y, abs(vThreadX - uSpot.x)));
#include <opaque_fragment>`,
    );
}

const PLY = `
// Counts yarns round and along the thread: each whole number is the next yarn.
float plyPhase(vec2 along) {
  return ${PLIES}.0 * (along.y / 6.283185307 + along.x / (uRadius * ${(2 * LAY).toFixed(2)}));
}
float plyHeight(float phase) {
  float c = 2.0 * fract(phase) - 1.0;
  return sqrt(1.0 - 0.72 * c * c);
}
`;

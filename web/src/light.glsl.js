// How light falls in the room, worked out and not baked. By day: a window to the left of the
// viewer, plaster, a pale ceiling and an oak floor; by evening a lamp beside the viewer and
// one in the room behind the wall, which then glows through glass. All in metres, Y up, +Z
// towards the viewer; the wall's face is z = 0.
import { GRAIN, NOISE } from './grain.glsl.js';
import scene, { f, vec } from './scene.js';
import { STANCES } from './stances.js';

const { grain, mirrored, pattern, pool, lamp, reading_lamp: reading, standing_lamp: standing } = scene;
const byHour = ([day, evening]) => `mix(${vec(day)}, ${vec(evening)}, evening)`;
const [near, far] = mirrored.left_windows;

export const ROOM = /* glsl */ `
uniform vec3 middle;        // the middle of the opening, on the floor
uniform float wall;         // how thick the wall is
uniform float evening;      // 0 by day, 1 by lamplight
uniform float deep;         // how deep a niche is that stands in the wall's place; 0 where none is
uniform vec3 standing;      // the shade of the lamp beside the doors, from their middle

float between(float a, float lo, float hi, float soft) {
  return smoothstep(lo - soft, lo + soft, a) * (1. - smoothstep(hi - soft, hi + soft, a));
}

// What a ray sees that leaves 'at' along 'd'; 'rough' blurs it. The room is a box with two
// tall windows in its left wall and two behind the viewer.
vec3 seenFrom(vec3 at, vec3 d, float rough) {
  vec3 p = at - middle;
  vec3 low = ${vec(mirrored.low)}, high = ${vec(mirrored.high)};
  vec3 inv = 1. / (d + vec3(1e-5));
  vec3 away = max((low - p) * inv, (high - p) * inv);
  float far = clamp(min(away.x, min(away.y, away.z)), 0., 12.);
  vec3 hit = p + d * far;
  float soft = .012 + rough * rough * 2.2 + rough * far * .22;
  vec3 c = ${byHour(mirrored.walls)};
  c = mix(c, ${byHour(mirrored.ceiling)}, smoothstep(high.y - soft, high.y, hit.y));
  c = mix(c, ${byHour(mirrored.floor)}, 1. - smoothstep(low.y, low.y + soft, hit.y));
  float left = 1. - smoothstep(low.x, low.x + soft * 1.5, hit.x);
  float panes = between(hit.z, ${near.map(f)}, soft) + between(hit.z, ${far.map(f)}, soft);
  float bars = 1. - .8 * between(mod(hit.z, 2.5), 1.62, 1.68, soft) / (1. + 40. * soft);
  vec3 sky = ${byHour(mirrored.left_sky)};
  c = mix(c, sky * bars, left * panes * between(hit.y, ${mirrored.left_sill_head.map(f)}, soft));
  float behind = smoothstep(high.z - soft * 1.5, high.z, hit.z);
  panes = between(abs(hit.x), ${mirrored.behind_windows.map(f)}, soft) * between(hit.y, ${mirrored.behind_sill_head.map(f)}, soft);
  bars = between(abs(abs(hit.x) - 1.4), -1., .035, soft) + between(abs(hit.y - 1.75), -1., .03, soft);
  sky = ${byHour(mirrored.behind_sky)};
  c = mix(c, sky * (1. - .8 * min(1., bars) / (1. + 12. * soft)), behind * panes);
  // the lamp beside the viewer, a shade of linen
  if (evening < .5) return c;
  vec3 lamp = ${vec(reading.at)} - p;
  float off = length(cross(normalize(lamp), d)) * length(lamp);
  c += ${vec(reading.colour)} * step(0., dot(lamp, d)) * (1. - smoothstep(${f(reading.radius)} - soft * .3, ${f(reading.radius)} + .02 + soft * 1.6, off)) / (1. + 9. * soft);
  return c;
}

// Light from everywhere at once, before anything stands in its way.
vec3 lightAt(vec3 at, vec3 n) {
  vec3 p = at - middle;
  vec3 here = mix(vec3(.165, .142, .115), vec3(.235, .24, .245), n.y * .5 + .5);
  here += vec3(.10, .105, .11) * max(0., dot(n, vec3(-.80, .10, .59)));
  here *= 1. - .22 * smoothstep(-1.6, 3.6, p.x) - .10 * smoothstep(1.8, 2.9, p.y);
  vec3 dusk = mix(vec3(.055, .047, .037), vec3(.108, .092, .070), n.y * .5 + .5);
  dusk += vec3(.070, .058, .040) * max(0., dot(n, vec3(.52, .10, .85)));
  dusk *= .66;
  if (evening > .5) {
    vec3 lamp = standing - p;
    float d2 = dot(lamp, lamp);
    dusk += ${vec(standing.colour)} * (.2 + .8 * max(0., dot(n, lamp) / sqrt(d2))) / (d2 + .45);
  }
  here = mix(here, dusk, evening);
  // the far room has its own window, out of sight to the left, and its own lamp
  float fall = mix(1.18, .58, smoothstep(-1.7, 1.9, p.x)) * mix(.88, 1.04, smoothstep(-.3, -2.4, p.z));
  vec3 there = mix(vec3(.23, .205, .17), vec3(.36, .37, .375), n.y * .5 + .5);
  there += vec3(.50, .495, .47) * max(0., dot(n, vec3(-.70, .42, .58)));
  there += vec3(.52, .52, .50) * max(0., dot(n, vec3(-.36, .22, -.90)));
  there *= fall;
  if (evening > .5) {
    vec3 lamp = ${vec(lamp.at)} - p;
    float d2 = dot(lamp, lamp);
    there = vec3(.16, .125, .082) * mix(.7, 1.1, n.y * .5 + .5);
    there += 1.85 * ${vec(lamp.colour)} * (.18 + .82 * max(0., dot(n, lamp) / sqrt(d2))) / (d2 + .55);
  }
  // in the thickness of the wall each side lights the other
  float depth = between(p.z, -wall, 0., .004);
  vec3 both = mix(vec3(.13, .13, .125), vec3(.055, .045, .03), evening);
  // the backs of doors that hang before the wall look into the far room
  float far = max(smoothstep(.0, -wall - .02, p.z), smoothstep(-.2, -.9, n.z) * step(p.z, .2));
  // a niche has no room behind it: the farther in, the less of this one gets there
  if (deep > 0.) return here * mix(1., .58, smoothstep(.02, -deep, p.z));
  return mix(here, there * .9, far) + both * depth * abs(n.x);
}

// The pattern that a window with bars throws along its own light, with soft edges; a lamp
// throws a pool instead.
float window(vec3 at, vec3 from) {
  vec3 across = normalize(cross(vec3(0., 1., 0.), from)), up = cross(from, across);
  vec3 p = at - middle - vec3(0., ${f(pattern.middle)}, 0.);
  float a = dot(p, across), b = dot(p, up);
  float w = between(a, ${pattern.across.map(f)}, ${f(pattern.across_soft)}) * between(b, ${pattern.up.map(f)}, ${f(pattern.up_soft)});
  w *= 1. - ${f(pattern.upright_bar[2])} * between(a, ${pattern.upright_bar.slice(0, 2).map(f)}, ${f(pattern.bar_soft)});
  w *= 1. - ${f(pattern.level_bar[2])} * between(b, ${pattern.level_bar.slice(0, 2).map(f)}, ${f(pattern.bar_soft)});
  if (evening < .5) return mix(${f(pattern.least)}, ${f(pattern.most)}, w);
  vec2 off = vec2(a, b) - ${vec(pool.middle)};
  return ${f(pool.least)} + ${f(pool.most)} * exp(-dot(off * off, ${vec(pool.fall)}));
}
`;

export const SURFACE_VERTEX = /* glsl */ `
#ifdef PIECES
attribute vec4 wood, piece;
varying vec4 own, body;
#endif
#ifdef STANCES
${STANCES}
#endif
#ifdef HOLLOW
varying mat3 turned;
#endif
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
void main() {
  mat4 frame = modelMatrix;
  #ifdef STANCES
  frame *= stood();
  #endif
  #ifdef HOLLOW
  turned = mat3(frame);
  #endif
  vec4 p = frame * vec4(position, 1.);
  at = p.xyz;
  facing = mat3(frame) * normal;
  #ifdef BOARDS
  boardAt = uv;
  #endif
  #ifdef PIECES
  own = wood;
  body = piece;
  #endif
  gl_Position = projectionMatrix * viewMatrix * p;
}
`;

export const SURFACE_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float rough, metal, mottle, glow;
uniform vec3 keyFrom, keyColour, skyFrom, skyColour;
uniform mat4 keyMatrix, skyMatrix;
uniform highp sampler2DShadow keyDepth, skyDepth;
uniform float soft;         // half width of the shadow's edge while things move, texels
#ifdef BOARDS
uniform sampler2D boards;
#endif
#ifdef CLIPPED
uniform float cutAt;        // where the doors are cut through
#endif
#ifdef PIECES
varying vec4 own, body;
#endif
#ifdef TIMBER
uniform vec3 early, late;
uniform vec4 rings;         // width of a year mm, contrast, pores, fleck
uniform float clear;        // 1 under varnish, 0 under paint
#endif
#ifdef HOLLOW
varying mat3 turned;
#endif
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
${ROOM}
${NOISE}
#ifdef TIMBER
${GRAIN}
#endif

float reached(sampler2DShadow map, mat4 m, vec3 p) {
  vec3 c = (m * vec4(p, 1.)).xyz * .5 + .5;
  if (any(greaterThan(abs(c - .5), vec3(.5)))) return 1.;
  if (soft <= 0.) return texture(map, c);
  float s = soft / float(textureSize(map, 0).x);
  return .25 * (texture(map, c + vec3(s, s * .4, 0.)) + texture(map, c + vec3(-s * .4, s, 0.))
    + texture(map, c + vec3(-s, -s * .4, 0.)) + texture(map, c + vec3(s * .4, -s, 0.)));
}

void main() {
  #ifdef CLIPPED
  if (at.x > cutAt) discard;
  #endif
  vec3 n = normalize(facing), v = normalize(cameraPosition - at);
  vec3 base = colour;
  float r = rough;
  #ifdef BOARDS
  vec3 t = texture2D(boards, boardAt).rgb;
  base *= t;
  r += (t.g - .55) * -.12;
  #endif
  #ifdef TIMBER
  if (clear > .5) {
    vec4 w = clearWood(own.xyz, own.w, body.y, early, late, rings);
    base = w.rgb;
    r += w.a;
  } else {
    base *= 1. + ${f(grain.paint[0])} * (cloud(vec3(own.x * ${f(grain.paint[1])}, own.yz * ${f(grain.paint[2])})) - .5);
    r += (cloud(own.xyz * .7) - .5) * .05;
    // paint over a joint shows it as a soft line, where rail meets stile
    float px = max(fwidth(own.x), .3);
    float near = 9e9;
    if (mod(body.z, 2.) > .5) near = own.x;
    if (body.z > 1.5) near = min(near, body.x - own.x);
    base *= 1. - ${f(grain.joint)} * (1. - smoothstep(0., px * 1.3, near)) * min(1., .9 / px);
  }
  #endif
  if (mottle > 0.) base *= 1. + mottle * (cloud(at * 2.3) - .5 + .6 * (cloud(at * 21.) - .5));

  vec3 lifted = at + n * .005;
  vec3 light = lightAt(at, n);
  float k = max(0., dot(n, keyFrom));
  vec3 key = vec3(0.);
  if (k > 0.) key = keyColour * (k * reached(keyDepth, keyMatrix, lifted) * window(at, keyFrom));
  light += key;
  float s = max(0., dot(n, skyFrom));
  if (s > 0.) light += skyColour * (s * reached(skyDepth, skyMatrix, lifted));

  // a dielectric's or a metal's sheen: the window's own glint, and the room mirrored
  vec3 f0 = mix(vec3(.04), base, metal);
  float nv = max(.02, dot(n, v)), a = max(.02, r * r);
  vec3 h = normalize(v + keyFrom);
  float nh = max(0., dot(n, h)), vh = max(0., dot(v, h)), d = nh * nh * (a * a - 1.) + 1.;
  vec3 fresnel = f0 + (1. - f0) * pow(1. - vh, 5.);
  float nl = max(.02, k), g = .25 / (mix(nl, 1., a * .5) * mix(nv, 1., a * .5) + 1e-3);
  vec3 glint = k > 0. ? key * fresnel * min(6., a * a / (d * d) * g * .32) : vec3(0.);
  vec4 q = r * vec4(-1., -.0275, -.572, .022) + vec4(1., .0425, 1.04, -.04);
  float e = min(q.x * q.x, exp2(-9.28 * nv)) * q.x + q.y;
  vec2 ab = vec2(-1.04, 1.04) * e + q.zw;
  float inside = deep > 0. ? 1. : smoothstep(-wall * .6, .02, at.z - middle.z);
  #ifdef HOLLOW
  // inside the hollow of a pull a ray gets out only through its mouth
  vec3 away = transpose(turned) * reflect(-v, n);
  float deep = max(0., -own.z), rise = away.z * body.z;
  vec2 leaves = own.xy + away.xy * deep / max(rise, .04);
  float open = 1.;
  if (deep > .4) {
    vec2 out_ = abs(leaves) / max(body.xy, vec2(1.));
    open = rise <= 0. ? 0. : 1. - smoothstep(.82, 1.12, max(out_.x, out_.y));
    light *= mix(1., .32, smoothstep(1., 11., deep));
  }
  r += .10 * (cloud(vec3(own.x * 5., own.y * .12, own.z * 5.)) - .5);
  #endif
  vec3 mirrored = seenFrom(at, reflect(-v, n), max(r, .04)) * mix(.35, 1., inside) * (f0 * ab.x + ab.y);
  #ifdef HOLLOW
  // the floor of a hollow sees less of the room than its rim does
  mirrored *= mix(.16, mix(1., .5, smoothstep(2., 9., deep)), open);
  glint *= mix(.3, 1., open);
  #endif
  // glow less than 0 is a lamp's: by evening only
  float own_ = glow < 0. ? -glow * evening : glow * mix(1., .03, evening);
  // how far away it is goes along, for glass that must tell what stands behind it
  float away_ = -(viewMatrix * vec4(at, 1.)).z;
  gl_FragColor = vec4(base * ((1. - metal * .74) * light + own_) + mirrored + glint, away_);
}
`;

// Glass is what it mirrors, plus a breath of its own colour. What lies behind clear glass is
// there already; behind a veil it is drawn again, smaller, and spread by reeds or by satin.
export const GLASS_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float body_;
uniform float cutAt;
#ifdef VEILED
uniform sampler2D behind;
uniform vec2 screen;
uniform float blur, reed, phase;
uniform mat4 projectionMatrix;
#endif
varying vec4 own, body;
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
${ROOM}
void main() {
  if (at.x > cutAt) discard;
  vec3 n = normalize(facing), v = normalize(cameraPosition - at);
  float c = abs(dot(n, v));
  float mirror = .042 + .958 * pow(1. - c, 5.);
  vec3 tint = colour * lightAt(at, n);
  #ifdef VEILED
  vec2 here = gl_FragCoord.xy / screen;
  float away = length(cameraPosition - at);
  vec2 metre = vec2(projectionMatrix[0][0], projectionMatrix[1][1]) * .5 / away;
  float slope = 0.;
  if (reed > 0.) {
    float t = fract(own.x / reed) * 2. - 1.;
    float fine = 1. - smoothstep(.35, 1.1, fwidth(own.x) / reed);
    slope = t * mix(.45, 1., fine);
    tint *= 1. - .28 * fine * t * t;
    mirror *= mix(1., .35 + 1.3 * (1. - t * t), fine);
  }
  vec3 through = vec3(0.);
  float turn = fract(sin(dot(gl_FragCoord.xy, vec2(12.9898, 78.233))) * 43758.5453) * 6.2832 + phase * 2.399;
  // only what stands behind the pane is spread over it, never the frame it is held in
  vec3 own_ = (viewMatrix * vec4(at, 1.)).xyz, out_ = mat3(viewMatrix) * n;
  if (dot(out_, own_) > 0.) out_ = -out_;
  float found = 1e-4;
  for (int i = 0; i < 8; i += 1) {
    float k = float(i) * 2.399 + turn, far = sqrt((float(i) + .5) / 8.);
    vec2 spread = vec2(cos(k), sin(k)) * far * .085 * blur + vec2(slope * .085, 0.);
    vec2 there = clamp(here + spread * metre, vec2(.002), vec2(.998));
    vec4 seen = textureLod(behind, there, 1.1 * blur + .3);
    vec2 ray = (there * 2. - 1. + vec2(projectionMatrix[2][0], projectionMatrix[2][1])) / vec2(projectionMatrix[0][0], projectionMatrix[1][1]);
    float weight = 1. - smoothstep(-.012, -.002, dot(vec3(ray, -1.) * seen.a - own_, out_));
    through += seen.rgb * weight;
    found += weight;
  }
  through = found > .01 ? through / found : textureLod(behind, here, 0.).rgb;
  vec3 seen = seenFrom(at, reflect(-v, n), .05 + .4 * blur) * mirror * mix(1.1, .7, blur);
  gl_FragColor = vec4(mix(through * .93, tint * 1.9, body_) + seen, 1.);
  #else
  float keep = clamp(body_ + mirror * .75, 0., 1.);
  vec3 seen = seenFrom(at, reflect(-v, n), 0.) * mirror * mix(1.15, .85, evening);
  gl_FragColor = vec4(tint * body_ + seen, keep);
  #endif
}
`;

// What hides something that is looked for: a breath of its own tone, so that it is there and
// seen through.
export const GHOST_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float body_, cutAt;
varying vec3 at;
varying vec3 facing;
${ROOM}
void main() {
  if (at.x > cutAt) discard;
  gl_FragColor = vec4(colour * lightAt(at, normalize(facing)) * body_, body_);
}
`;

// Its edges, as thin as the screen draws.
export const EDGE_VERTEX = /* glsl */ `
${STANCES}
varying float across;
void main() {
  vec4 p = modelMatrix * stood() * vec4(position, 1.);
  across = p.x;
  gl_Position = projectionMatrix * viewMatrix * p;
}
`;
export const EDGE_FRAGMENT = /* glsl */ `
uniform vec4 day, dusk;
uniform float evening, cutAt;
varying float across;
void main() {
  if (across > cutAt) discard;
  vec4 line = mix(day, dusk, evening);
  gl_FragColor = vec4(line.rgb * line.a, line.a);
}
`;

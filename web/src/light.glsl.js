// How light falls in the room, worked out and not baked: a window to the left of the
// viewer, plaster, a pale ceiling and an oak floor; a second room behind the wall.
// All in metres, Y up, +Z towards the viewer; the wall's face is z = 0.

export const ROOM = /* glsl */ `
uniform vec3 middle;        // the middle of the opening, on the floor
uniform float wall;         // how thick the wall is

float between(float a, float lo, float hi, float soft) {
  return smoothstep(lo - soft, lo + soft, a) * (1. - smoothstep(hi - soft, hi + soft, a));
}

// What a ray sees that leaves 'at' along 'd'; 'rough' blurs it. The room is a box with two
// tall windows in its left wall and two behind the viewer.
vec3 seenFrom(vec3 at, vec3 d, float rough) {
  vec3 p = at - middle;
  vec3 low = vec3(-4.2, -.01, 0.), high = vec3(4.2, 3.2, 6.6);
  vec3 inv = 1. / (d + vec3(1e-5));
  vec3 away = max((low - p) * inv, (high - p) * inv);
  float far = clamp(min(away.x, min(away.y, away.z)), 0., 12.);
  vec3 hit = p + d * far;
  float soft = .012 + rough * rough * 2.2 + rough * far * .22;
  vec3 c = vec3(.50, .51, .495);
  c = mix(c, vec3(.80, .81, .80), smoothstep(high.y - soft, high.y, hit.y));
  c = mix(c, vec3(.235, .175, .115), 1. - smoothstep(low.y, low.y + soft, hit.y));
  float left = 1. - smoothstep(low.x, low.x + soft * 1.5, hit.x);
  float panes = between(hit.z, 1.1, 2.2, soft) + between(hit.z, 3.6, 4.7, soft);
  float bars = 1. - .8 * between(mod(hit.z, 2.5), 1.62, 1.68, soft) / (1. + 40. * soft);
  c = mix(c, vec3(5.6, 5.9, 6.2) * bars, left * panes * between(hit.y, .55, 2.45, soft));
  float behind = smoothstep(high.z - soft * 1.5, high.z, hit.z);
  panes = between(abs(hit.x), .85, 1.95, soft) * between(hit.y, .8, 2.35, soft);
  bars = between(abs(abs(hit.x) - 1.4), -1., .035, soft) + between(abs(hit.y - 1.75), -1., .03, soft);
  c = mix(c, vec3(2.1, 2.2, 2.35) * (1. - .8 * min(1., bars) / (1. + 12. * soft)), behind * panes);
  return c;
}

// Light from everywhere at once, before anything stands in its way.
vec3 lightAt(vec3 at, vec3 n) {
  vec3 p = at - middle;
  vec3 here = mix(vec3(.165, .142, .115), vec3(.235, .24, .245), n.y * .5 + .5);
  here += vec3(.10, .105, .11) * max(0., dot(n, vec3(-.80, .10, .59)));
  here *= 1. - .22 * smoothstep(-1.6, 3.6, p.x) - .10 * smoothstep(1.8, 2.9, p.y);
  // the far room has its own window, out of sight to the left
  float fall = mix(1.18, .58, smoothstep(-1.7, 1.9, p.x)) * mix(.70, 1.04, smoothstep(-.3, -2.4, p.z));
  vec3 there = mix(vec3(.23, .205, .17), vec3(.36, .37, .375), n.y * .5 + .5);
  there += vec3(.50, .495, .47) * max(0., dot(n, vec3(-.70, .42, .58)));
  // in the thickness of the wall each side lights the other
  float depth = between(p.z, -wall, 0., .004);
  return mix(here, there * fall * .9, smoothstep(.0, -wall - .02, p.z)) + vec3(.13, .13, .125) * depth * abs(n.x);
}

// The pattern that a window with bars throws along its own light, with soft edges.
float window(vec3 at, vec3 from) {
  vec3 across = normalize(cross(vec3(0., 1., 0.), from)), up = cross(from, across);
  vec3 p = at - middle - vec3(0., 1.05, 0.);
  float a = dot(p, across), b = dot(p, up);
  float w = between(a, -1.62, .98, .40) * between(b, -1.70, 1.16, .32);
  w *= 1. - .26 * between(a, -.40, -.26, .12);
  w *= 1. - .20 * between(b, -.16, -.03, .12);
  return mix(.24, 1.08, w);
}
`;

export const SURFACE_VERTEX = /* glsl */ `
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
void main() {
  vec4 p = modelMatrix * vec4(position, 1.);
  at = p.xyz;
  facing = mat3(modelMatrix) * normal;
  #ifdef BOARDS
  boardAt = uv;
  #endif
  gl_Position = projectionMatrix * viewMatrix * p;
}
`;

export const SURFACE_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float rough, metal, mottle;
uniform vec3 keyFrom, keyColour, skyFrom, skyColour;
uniform mat4 keyMatrix, skyMatrix;
uniform highp sampler2DShadow keyDepth, skyDepth;
uniform float soft;         // half width of the shadow's edge while things move, texels
#ifdef BOARDS
uniform sampler2D boards;
#endif
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
${ROOM}

float hash(vec3 p) { p = fract(p * .1031); p += dot(p, p.zyx + 31.32); return fract((p.x + p.y) * p.z); }
float cloud(vec3 p) {
  vec3 i = floor(p), f = fract(p);
  f = f * f * (3. - 2. * f);
  return mix(
    mix(mix(hash(i), hash(i + vec3(1, 0, 0)), f.x), mix(hash(i + vec3(0, 1, 0)), hash(i + vec3(1, 1, 0)), f.x), f.y),
    mix(mix(hash(i + vec3(0, 0, 1)), hash(i + vec3(1, 0, 1)), f.x), mix(hash(i + vec3(0, 1, 1)), hash(i + vec3(1, 1, 1)), f.x), f.y),
    f.z);
}

float reached(sampler2DShadow map, mat4 m, vec3 p) {
  vec3 c = (m * vec4(p, 1.)).xyz * .5 + .5;
  if (any(greaterThan(abs(c - .5), vec3(.5)))) return 1.;
  if (soft <= 0.) return texture(map, c);
  float s = soft / float(textureSize(map, 0).x);
  return .25 * (texture(map, c + vec3(s, s * .4, 0.)) + texture(map, c + vec3(-s * .4, s, 0.))
    + texture(map, c + vec3(-s, -s * .4, 0.)) + texture(map, c + vec3(s * .4, -s, 0.)));
}

void main() {
  vec3 n = normalize(facing), v = normalize(cameraPosition - at);
  vec3 base = colour;
  float r = rough;
  #ifdef BOARDS
  vec3 t = texture2D(boards, boardAt).rgb;
  base *= t;
  r += (t.g - .55) * -.12;
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
  float inside = smoothstep(-wall * .6, .02, at.z - middle.z);
  vec3 mirrored = seenFrom(at, reflect(-v, n), r) * mix(.35, 1., inside) * (f0 * ab.x + ab.y);
  gl_FragColor = vec4(base * (1. - metal) * light + mirrored + glint, 1.);
}
`;

// Glass is what it mirrors, plus a breath of its own colour; what lies behind is not redrawn.
export const GLASS_FRAGMENT = /* glsl */ `
uniform vec3 colour;
uniform float body;
varying vec3 at;
varying vec3 facing;
varying vec2 boardAt;
${ROOM}
void main() {
  vec3 n = normalize(facing), v = normalize(cameraPosition - at);
  float c = abs(dot(n, v));
  float mirror = .042 + .958 * pow(1. - c, 5.);
  float keep = clamp(body + mirror * .75, 0., 1.);
  vec3 seen = seenFrom(at, reflect(-v, n), 0.) * mirror * 1.15;
  gl_FragColor = vec4(colour * lightAt(at, n) * body + seen, keep);
}
`;

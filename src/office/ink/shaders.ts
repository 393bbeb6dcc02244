/** GLSL of the three passes of the ink view. Lengths are device pixels unless the name says mm. */

const PRECISION = 'precision highp float; precision highp int;\n';

/** One texel a part and row: 0 grain and own number, 1 picked, gone, material; 2 offset when taken apart, mm. */
export const PART_ROWS = 3;

export const FACE_VERTEX = `${PRECISION}
in vec3 position; in vec2 uv; in vec2 aux; in vec4 ids;
uniform mat4 uViewProjection; uniform highp sampler2D uPart;
out vec2 vUV; flat out vec2 vAux; flat out vec4 vIds; flat out vec4 vAxis; flat out vec4 vState;
void main() {
  int part = int(ids.y + .5);
  vUV = uv; vAux = aux; vIds = ids;
  vAxis = texelFetch(uPart, ivec2(part, 0), 0);
  vState = texelFetch(uPart, ivec2(part, 1), 0);
  vec3 offset = texelFetch(uPart, ivec2(part, 2), 0).xyz;
  gl_Position = vState.y > .5 ? vec4(2., 2., 2., 1.) : uViewProjection * vec4(position + offset, 1.);
}`;

export const FACE_FRAGMENT = `${PRECISION}
in vec2 vUV; flat in vec2 vAux; flat in vec4 vIds; flat in vec4 vAxis; flat in vec4 vState;
layout(location = 0) out vec4 oColour; layout(location = 1) out vec4 oId;
uniform float uRatio, uWeight, uMmPx; uniform vec3 uView, uWash[5], uHatch[4], uPickWash;

// Whole-number hash, the same on every card: line K of a face with this seed.
float hash(float k, float seed, float salt) {
  uint x = uint(int(k)) * 747796405u + uint(int(seed)) * 2891336453u + uint(int(salt)) * 277803737u;
  x = ((x >> ((x >> 28u) + 4u)) ^ x) * 277803737u;
  x = (x >> 22u) ^ x;
  return float(x >> 8u) / 16777216.;
}
// Coverage of a line of width w at distance d.
float cover(float d, float w) { return clamp(w * .5 + .5 - d, 0., min(1., w)); }
float slope(float x) { return length(vec2(dFdx(x), dFdy(x))); }

// Lines across v (mm), T pixels apart: single lines fade in and out, none moves. Broken along u where cell > 0.
float lines(float v, float u, float T, float W, float seed, float mmPx, float cell, float slopeU) {
  float gv = max(slope(v), 1e-5);
  float S = max(T * mmPx, 1e-4), s0 = .125, level = floor(log2(S / s0)), s = s0 * exp2(level);
  float stay = 2. * s / S - 1.;
  float i = floor(v / s + .5), d = abs(v - i * s) / gv;
  float K = i * exp2(level);
  float odd = mod(abs(i), 2.);
  float a = odd > .5
    ? (cell > 0. ? clamp((stay - hash(K, seed, 3.) * .9) / .1, 0., 1.) : smoothstep(.3, .7, stay))
    : 1.;
  a *= smoothstep(1.6 * uRatio, 3. * uRatio, S / gv);
  if (cell > 0.) {
    float C = cell * (.7 + .9 * hash(K, seed, 0.)), x = u / C + hash(K, seed, 7.) * 17., j = floor(x), f = x - j;
    float gap = .05 + .30 * pow(hash(K, seed, 11. + j * 31.), 2.);
    float g = hash(K, seed, 19. + j * 37.) > .86 ? .55 : gap;
    float px = max(slopeU / C, 1e-5);
    a *= clamp((f - g) / px, 0., 1.) * clamp((1. - f) / px, 0., 1.);
  }
  return cover(d, W) * a;
}

float longGrain(float kind, float seed, float W, float gu, float gv) {
  float u = vUV.x, v = vUV.y, sd = seed * .61803;
  // A warp that never folds crowds and thins the lines, and waves them hardly.
  float w = v + .9 * sin(v / 7.3 + sd) + 1.9 * sin(v / 23. + sd * 1.7)
    + .55 * sin(u / 61. + sd + 1.3 * sin(v / 31.)) + .35 * sin(u / 23. + v / 11. + sd * 2.3);
  float T = (kind < .5 ? 4.2 : 8.) * uRatio * mix(.8, 1., uWeight);
  float h = lines(w, u, T, W, seed, gv, kind < .5 ? 190. : 120., gu);
  float border = min(v - vAux.x, vAux.y - v) / max(gv, 1e-5);
  return h * smoothstep(.9 * uRatio, 1.6 * uRatio, border);
}

float endGrain(float seed, float W, float mmPx) {
  float r = length(vUV), sd = seed * .61803, turn = atan(vUV.y, vUV.x);
  float w = r + 1.1 * sin(r / 5.1 + sd) + .8 * sin(r / 13. + sd * 2.) + .25 * sin(turn * 9. + sd);
  return lines(w, turn * r, 3.2 * uRatio * mix(.85, 1., uWeight), W, seed, mmPx, 160., mmPx);
}

// Layers of a sheet's edge, odd in number, every second one ticked.
float layers(float W, float gv) {
  float n = floor(min(vAux.y, vAux.x / (3. * uRatio * uMmPx)));
  n = max(3., n - 1. + mod(n, 2.));
  float t = vUV.y / vAux.x * n, i = floor(t + .5), gt = max(gv / vAux.x * n, 1e-5), h = 0.;
  if (i > .5 && i < n - .5) h = cover(abs(t - i) / gt, W);
  if (mod(floor(t), 2.) > .5) {
    float pitch = 4. * uRatio * uMmPx, x = (vUV.x + (fract(t) - .5) * 1.5 * uRatio * uMmPx) / pitch;
    float gx = max(slope(x), 1e-5);
    h = max(h, cover(abs(x - floor(x + .5)) / gx, W) * smoothstep(1.3 * uRatio, 2.6 * uRatio, 1. / gx));
  }
  return h * smoothstep(1.2 * uRatio, 2.4 * uRatio, 1. / gt);
}

// A round bar: four lines laid by how the surface turns away, so that they stand still on the drawing.
float roundBar(float W) {
  vec3 a = vAxis.xyz, e1 = normalize(cross(a, abs(a.z) < .9 ? vec3(0, 0, 1) : vec3(1, 0, 0))), e2 = cross(a, e1);
  vec3 side = cross(a, uView);
  float l = length(side);
  if (l <= .15) return 0.;
  vec3 r = e1 * vUV.x + e2 * vUV.y;
  float k = dot(r, side / l) / max(length(r), 1e-4), g = max(slope(k), 1e-5);
  float h = max(max(cover(abs(k + .62) / g, W), cover(abs(k + .38) / g, W)),
    max(cover(abs(k - .55) / g, W), cover(abs(k - .75) / g, W)));
  return h * smoothstep(2. * uRatio, 4. * uRatio, 1. / g);
}

void main() {
  float kind = vIds.z, seed = vIds.w, W = .5 * uWeight * uRatio, h = 0.;
  int material = int(vState.z + .5);
  vec2 dx = dFdx(vUV), dy = dFdy(vUV);
  float mmPx = sqrt(max(abs(dx.x * dy.y - dx.y * dy.x), 1e-9));
  float gu = length(vec2(dx.x, dy.x)), gv = length(vec2(dx.y, dy.y));
  vec3 wash = uWash[material == 0 ? 0 : material + 1], ink = uHatch[material];
  if (kind < .5 || (kind > 1.5 && kind < 2.5)) h = longGrain(kind, seed, W, gu, gv);
  else if (kind < 1.5) { wash = uWash[1]; h = endGrain(seed, W, mmPx); }
  else if (kind < 3.5) h = layers(W, gv);
  else if (kind < 4.5) { float v = (vUV.x + vUV.y) * .70710678; h = lines(v, 0., 5. * uRatio, W, seed, slope(v), 0., 1.); }
  else h = roundBar(W);
  oColour = vec4(mix(vState.x > .5 ? uPickWash : wash, ink, clamp(h, 0., 1.)), 1.);
  float f = vIds.x, p = vIds.y + 1.;
  oId = vec4(mod(f, 256.), floor(f / 256.), mod(p, 256.), floor(p / 256.)) / 255.;
}`;

export const LINE_VERTEX = `${PRECISION}
in vec3 position; in vec3 ea, eb; in vec4 eid; in float flags;
uniform mat4 uViewProjection; uniform vec2 uSize; uniform float uHalf; uniform highp sampler2D uPart;
out vec2 vP; flat out float vHalf; flat out vec2 vA, vB, vZ; flat out vec4 vId; flat out vec3 vState;
void main() {
  int part = int(eid.z + .5);
  vec4 state = texelFetch(uPart, ivec2(part, 1), 0);
  vec3 offset = texelFetch(uPart, ivec2(part, 2), 0).xyz;
  bool f0 = mod(flags, 2.) > .5, f1 = flags > 1.5;
  vHalf = eid.w > 1.5 && f0 && f1 ? uHalf * .64 : uHalf;
  if (state.y > .5) { gl_Position = vec4(2., 2., 2., 1.); return; }
  vec4 a = uViewProjection * vec4(ea + offset, 1.), b = uViewProjection * vec4(eb + offset, 1.);
  vec2 A = (a.xy * .5 + .5) * uSize, B = (b.xy * .5 + .5) * uSize, d = B - A;
  float l = length(d), r = uHalf + 1.;
  d = l > 1e-4 ? d / l : vec2(1., 0.);
  vec2 n = vec2(-d.y, d.x), P = (position.x < .5 ? A - d * r : B + d * r) + n * position.y * r;
  vP = P; vA = A; vB = B; vZ = vec2(a.z, b.z) * .5 + .5;
  vId = vec4(f0 ? eid.x : -1., f1 ? eid.y : -1., eid.z, eid.w);
  vState = state.xyw;
  gl_Position = vec4(P / uSize * 2. - 1., 0., 1.);
}`;

export const LINE_FRAGMENT = `${PRECISION}
in vec2 vP; flat in float vHalf; flat in vec2 vA, vB, vZ; flat in vec4 vId; flat in vec3 vState;
uniform float uRatio, uDepthMm, uMmPx; uniform bool uOutline; uniform vec2 uSize;
uniform sampler2D uIds; uniform highp sampler2D uDepth;
out vec4 oLine;

ivec2 pixel(vec2 p) { return clamp(ivec2(floor(p)), ivec2(0), ivec2(uSize) - 1); }
// 2: one of the edge's own faces; 1: its own part; 0: another part or the ground.
int owner(vec2 p) {
  vec4 c = floor(texelFetch(uIds, pixel(p), 0) * 255. + .5);
  float f = c.r + 256. * c.g;
  if (abs(f - vId.x) < .5 || abs(f - vId.y) < .5) return 2;
  return abs(c.b + 256. * c.a - vId.z - 1.) < .5 ? 1 : 0;
}
float depthAt(vec2 p) { return texelFetch(uDepth, pixel(p), 0).r; }
bool level(vec2 p, float z) { return abs(depthAt(p) - z) < uDepthMm * (2. + 4. * uMmPx); }

void main() {
  vec2 ab = vB - vA;
  float l2 = dot(ab, ab), t = l2 > 1e-6 ? clamp(dot(vP - vA, ab) / l2, 0., 1.) : 0.;
  float d = distance(vP, vA + ab * t), k = clamp(vHalf + .5 - d, 0., min(1., 2. * vHalf));
  if (k <= 0.) discard;
  if (uOutline) { oLine = vec4(0., 0., k, 0.); return; }
  // An edge shows where one of its own two faces shows beside it: no depth bias, so nothing leaks or fights.
  float l = sqrt(l2);
  vec2 n = l > 1e-3 ? vec2(-ab.y, ab.x) / l : vec2(1., 0.);
  vec2 e = l > 3. ? vA + ab * clamp(t, 1. / l, 1. - 1. / l) : vA + ab * .5;
  int a0 = owner(e + n * .8), a1 = owner(e - n * .8), a2 = owner(e + n * 1.7), a3 = owner(e - n * 1.7);
  bool rim = (vId.x < 0.) != (vId.y < 0.);
  bool seen = (a0 > 1 && a2 > 1) || (a1 > 1 && a3 > 1) || (a0 > 1 && a1 > 1);
  // A face thinner than a pixel may own none: its rim still shows where its part ends.
  if (!seen && rim) {
    float z = mix(vZ.x, vZ.y, t);
    seen = (a0 > 0 && a2 > 0 && a3 == 0 && level(e + n * .8, z)) || (a1 > 0 && a3 > 0 && a2 == 0 && level(e - n * .8, z));
  }
  // Hidden by less than two pixels of another part: the middle pixel tells.
  if (seen && owner(e) == 0 && depthAt(e) < mix(vZ.x, vZ.y, t) - uDepthMm * (.5 + 2.5 * uMmPx * uRatio)) seen = false;
  if (seen) { oLine = vState.x > .5 ? vec4(0., k, 0., 0.) : vec4(k, 0., 0., 0.); return; }
  if (vState.x > .5 && vId.w < .5) {
    float dash = mod(t * l, 8. * uRatio) < 5. * uRatio ? 1. : 0.;
    oLine = vec4(0., 0., 0., min(k, .8) * dash);
    return;
  }
  discard;
}`;

export const SHEET_VERTEX = `in vec3 position; void main() { gl_Position = vec4(position.xy, 0., 1.); }`;

export const SHEET_FRAGMENT = `${PRECISION}
uniform sampler2D uColour, uIds, uLines; uniform vec3 uInk, uPencil; uniform float uHidden;
out vec4 oSheet;
void main() {
  ivec2 p = ivec2(gl_FragCoord.xy);
  vec4 id = texelFetch(uIds, p, 0), l = texelFetch(uLines, p, 0);
  float mask = id.b + id.a > 0. ? 1. : 0., ink = max(l.r, l.b * (1. - mask)), pencil = max(l.g, l.a * uHidden);
  vec3 c = mask > .5 ? mix(texelFetch(uColour, p, 0).rgb, uInk, ink) : uInk;
  float a = max(max(mask, ink), pencil);
  oSheet = vec4(mix(c, uPencil, pencil) * a, a);
}`;

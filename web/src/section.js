// The doors cut through upright, with what the saw would show: every piece a face of its own,
// end grain where it is cut across, edged in chalk.
import * as THREE from 'three';
import { surface, timber, wear } from './dress.js';

const ASIDE = 1.37e-5; // m, so that no corner of the model lies exactly in the cut
const SAME = 1e-5; // m, within which two ends of a cut are one
const FACE = 0.34; // light of its own, so that a cut face is read in the shade of the doors too
const CAPS = 'caps'; // the name of what a group's cut faces hang on
const CHALK = { day: '#2340b8', evening: '#8f9ff0' };

/** The edges of a part's triangles in the plane x, in order round the wood: [[y, z, wood…], …]. */
function crossed({ position, wood, index, there }, { from, to }, x) {
  const edges = [];
  const v = new THREE.Vector3();
  const p = (i) => {
    v.fromBufferAttribute(position, i);
    if (there) v.applyMatrix4(there);
    return v.toArray();
  };
  for (let t = from; t < to; t += 1) {
    const corners = [0, 1, 2].map((k) => index.getX(3 * t + k));
    const [a, b, c] = corners.map(p);
    if ((a[0] < x) === (b[0] < x) && (b[0] < x) === (c[0] < x)) continue;
    const cut = [];
    for (const [i, j] of [[0, 1], [1, 2], [2, 0]]) {
      const [one, two] = [[a, b, c][i], [a, b, c][j]];
      if ((one[0] < x) === (two[0] < x)) continue;
      const share = (x - one[0]) / (two[0] - one[0]);
      const at = [1, 2].map((k) => one[k] + (two[k] - one[k]) * share);
      const w = ['getX', 'getY', 'getZ', 'getW'].map((get) => {
        const [v0, v1] = [wood[get](corners[i]), wood[get](corners[j])];
        return v0 + (v1 - v0) * share;
      });
      cut.push([...at, ...w]);
    }
    if (cut.length !== 2) continue;
    // outward normal of the triangle, in the plane of the cut
    const ny = (b[2] - a[2]) * (c[0] - a[0]) - (b[0] - a[0]) * (c[2] - a[2]);
    const nz = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
    const along = -(cut[1][0] - cut[0][0]) * nz + (cut[1][1] - cut[0][1]) * ny;
    edges.push(along > 0 ? cut : [cut[1], cut[0]]);
  }
  return edges;
}

/** Edges joined end to end into closed rounds. */
function rounds(edges) {
  const key = ([y, z]) => `${Math.round(y / SAME)},${Math.round(z / SAME)}`;
  const next = new Map();
  for (const edge of edges) {
    if (key(edge[0]) === key(edge[1])) continue;
    const at = key(edge[0]);
    if (!next.has(at)) next.set(at, []);
    next.get(at).push(edge);
  }
  const found = [];
  for (const start of next.values()) {
    while (start.length) {
      const round = [];
      let edge = start.pop();
      while (edge) {
        round.push(edge[0]);
        edge = next.get(key(edge[1]))?.pop();
      }
      if (round.length > 2) found.push(round);
    }
  }
  return found;
}

const isTurned = ({ x, y, z }) => Math.abs(x) + Math.abs(y) + Math.abs(z) > 1e-9;

const flat = (round) => round.map(([y, z]) => new THREE.Vector2(y, z));

function inside(point, ring) {
  let odd = false;
  for (let i = 0, j = ring.length - 1; i < ring.length; j = i, i += 1) {
    const [a, b] = [ring[i], ring[j]];
    if (a.y > point.y !== b.y > point.y && point.x < ((b.x - a.x) * (point.y - a.y)) / (b.y - a.y) + a.x) odd = !odd;
  }
  return odd;
}

/** Faces of the rounds: outer ones with the holes that lie in them. */
function faces(found) {
  const all = found.map((round) => ({ round, ring: flat(round) })).map((one) => ({ ...one, area: THREE.ShapeUtils.area(one.ring) }));
  const outer = all.filter((one) => one.area > 0).sort((a, b) => a.area - b.area);
  const holes = new Map(outer.map((one) => [one, []]));
  for (const hole of all.filter((one) => one.area < 0)) {
    const home = outer.find((one) => inside(hole.ring[0], one.ring));
    if (home) holes.get(home).push(hole);
  }
  return outer.map((one) => ({
    corners: [one, ...holes.get(one)].flatMap(({ round }) => round),
    triangles: THREE.ShapeUtils.triangulateShape(one.ring, holes.get(one).map(({ ring }) => ring)),
  }));
}

export class Section {
  /** `groups` as they are dressed; `changed` is called when there is something new to draw. */
  constructor({ shared, groups, raw, glass, changed }) {
    Object.assign(this, { shared, changed });
    const cut = timber(shared, { clipped: false });
    wear(cut, raw);
    cut.uniforms.glow.value = FACE;
    this.materials = {
      timber: cut,
      board: cut,
      carcass: cut,
      glass: surface(shared, glass, { rough: 0.2, glow: 0.7 }),
      pull: surface(shared, '#8d8a80', { rough: 0.4, metal: 0.5 }),
      metal: surface(shared, '#6d7274', { rough: 0.5, metal: 0.4 }),
      tape: surface(shared, '#4a4e4c', { rough: 0.9 }),
    };
    this.line = new THREE.LineBasicMaterial({ color: CHALK.day });
    this.at = null;
    this.hold(groups);
  }

  /** The groups to cut from now on. */
  hold(groups) {
    this.groups = groups;
    this.holders = new Map([...groups.values()].map((group) => {
      const holder = group.object.getObjectByName(CAPS) ?? new THREE.Group();
      holder.name = CAPS;
      group.object.add(holder);
      return [group, holder];
    }));
    for (const group of groups.values()) this.#cap(group);
  }

  get on() {
    return this.at !== null;
  }

  /** Cut at x mm, or not at all. */
  set(x) {
    this.at = x;
    this.shared.cutAt.value = this.on ? x / 1000 : 1e9;
    for (const group of this.groups.values()) this.#cap(group);
    this.changed();
  }

  /** Where the cut faces of each group are in the scene, metres: a box by its name. */
  spans() {
    const found = {};
    for (const [{ object }, holder] of this.holders) {
      const box = new THREE.Box3();
      for (const cap of holder.children) if (cap.userData.cap) box.expandByObject(cap, true);
      if (!box.isEmpty()) found[object.name] = { min: box.min.toArray(), max: box.max.toArray(), turned: isTurned(object.quaternion) };
    }
    return found;
  }

  /** How far before the wall the cut faces of leaves that stand turned are, metres; null where none is. */
  get before() {
    const turned = Object.values(this.spans()).filter((span) => span.turned);
    return turned.length ? (Math.min(...turned.map(({ min }) => min[2])) + Math.max(...turned.map(({ max }) => max[2]))) / 2 : null;
  }

  /** A leaf has moved: cut it where it now stands. */
  moved(group) {
    if (this.on) this.#cap(group);
  }

  evening(on) {
    this.line.color.set(on ? CHALK.evening : CHALK.day);
  }

  #cap(group) {
    const holder = this.holders.get(group);
    for (const old of holder.children) old.geometry.dispose();
    holder.clear();
    if (!this.on) return;
    const { position: at, quaternion } = group.object;
    const x = this.at / 1000 - at.x + ASIDE;
    // a leaf that stands turned is cut as it stands, and its cut faces turn with it
    const there = isTurned(quaternion) ? new THREE.Matrix4().makeRotationFromQuaternion(quaternion) : null;
    const back = there?.clone().transpose();
    const lines = [];
    for (const { look, geometry, ranges } of group.pieces) {
      const all = { position: [], normal: [], wood: [], piece: [], index: [] };
      const { position, wood, piece } = geometry.attributes;
      const source = { position, wood, index: geometry.index, there };
      for (const range of ranges) {
        const box = there ? range.part.box.clone().applyMatrix4(there) : range.part.box;
        if (box.min.x > x || box.max.x < x) continue;
        const of = source.index.getX(3 * range.from);
        const body = [piece.getX(of), piece.getY(of), 0, 0];
        const found = rounds(crossed(source, range, x));
        for (const round of found) {
          round.forEach(([y, z], i) => {
            const [y1, z1] = round[(i + 1) % round.length];
            lines.push(x + 4e-4, y, z, x + 4e-4, y1, z1);
          });
        }
        for (const { corners, triangles } of faces(found)) {
          const start = all.position.length / 3;
          for (const [y, z, ...own] of corners) {
            all.position.push(x, y, z);
            all.normal.push(1, 0, 0);
            all.wood.push(...own);
            all.piece.push(...body);
          }
          for (const triangle of triangles) all.index.push(...triangle.map((i) => start + i));
        }
      }
      if (!all.index.length) continue;
      const shape = new THREE.BufferGeometry();
      for (const [name, size] of [['position', 3], ['normal', 3], ['wood', 4], ['piece', 4]]) {
        shape.setAttribute(name, new THREE.Float32BufferAttribute(all[name], size));
      }
      shape.setIndex(all.index);
      if (back) shape.applyMatrix4(back);
      const cap = new THREE.Mesh(shape, this.materials[look]);
      cap.userData.cap = look;
      holder.add(cap);
    }
    if (!lines.length) return;
    const edge = new THREE.BufferGeometry();
    edge.setAttribute('position', new THREE.Float32BufferAttribute(lines, 3));
    if (back) edge.applyMatrix4(back);
    holder.add(new THREE.LineSegments(edge, this.line));
  }
}

// The maker's own model, as it came: read it, dress it, and join the many parts of each
// leaf into one piece a look, so that a pair of doors is a dozen pieces to draw. What each
// point is in its own part goes with it: grain, joints and sections are worked out from that.
import * as THREE from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { lookOf } from './dress.js';

const TOUCHING = 0.0005; // m beyond an end in which a piece that it meets is looked for

/** Bytes of a base64 text. */
export function decoded(text) {
  return Uint8Array.from(atob(text.trim()), (c) => c.charCodeAt(0)).buffer;
}

/** Read a GLB: resolves to its root. Nothing is fetched; the model carries all it needs. */
export function readModel(bytes) {
  return new Promise((done, failed) => new GLTFLoader().parse(bytes, '', (g) => done(g.scene), failed));
}

const nameOf = (object) => object.userData.name ?? object.name;

/** A number from 0 to 1 that a name always gives, the same in every build. */
function seedOf(text) {
  let h = 2166136261;
  for (const c of text) h = Math.imul(h ^ c.codePointAt(0), 16777619);
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b);
  return ((h ^ (h >>> 13)) >>> 0) / 4294967296;
}

/** Every part of a group with its box in the group's frame and in its own, metres. */
function partsOf(group) {
  const home = new THREE.Matrix4().copy(group.matrixWorld).invert();
  const parts = [];
  group.traverse((mesh) => {
    if (!mesh.isMesh) return;
    const place = new THREE.Matrix4().multiplyMatrices(home, mesh.matrixWorld);
    mesh.geometry.computeBoundingBox();
    const node = mesh.userData.mark ? mesh : mesh.parent;
    parts.push({
      mesh,
      place,
      name: nameOf(node),
      mark: node.userData.mark,
      look: lookOf(mesh, `${nameOf(mesh)} ${nameOf(mesh.parent)}`),
      own: mesh.geometry.boundingBox.clone(),
      box: mesh.geometry.boundingBox.clone().applyMatrix4(place),
    });
  });
  return parts;
}

/** Which of a part's two ends stands against another piece of timber: 1 low, 2 high, 3 both. */
function joints(part, all) {
  const v = new THREE.Vector3();
  const { min, max } = part.own;
  let found = 0;
  for (const [bit, x] of [[1, min.x - TOUCHING], [2, max.x + TOUCHING]]) {
    v.set(x, (min.y + max.y) / 2, (min.z + max.z) / 2).applyMatrix4(part.place);
    if (all.some((other) => other !== part && other.look === 'timber' && other.box.containsPoint(v))) found |= bit;
  }
  return found;
}

/** Half the mouth of a hollow, mm: how far its inward walls stand from the middle. */
function mouth(position, normal, place, turned, middle, sign, face) {
  const [p, n] = [new THREE.Vector3(), new THREE.Vector3()];
  let [w, h] = [0, 0];
  for (let i = 0; i < position.count; i += 1) {
    p.fromBufferAttribute(position, i).applyMatrix4(place).sub(middle).multiplyScalar(1000);
    n.fromBufferAttribute(normal, i).applyMatrix3(turned).normalize();
    if ((p.z - face) * sign > -3) continue;
    if (n.x * p.x < -0.5) w = Math.max(w, Math.abs(p.x));
    if (n.y * p.y < -0.5) h = Math.max(h, Math.abs(p.y));
  }
  return [w || 1, h || 1];
}

function gathered(parts, glued) {
  const looks = new Map();
  const turned = new THREE.Matrix3();
  const v = new THREE.Vector3();
  for (const part of parts) {
    const { mesh, look, place, own } = part;
    if (!looks.has(look)) looks.set(look, { position: [], normal: [], wood: [], piece: [], index: [], ranges: [] });
    const all = looks.get(look);
    const { position, normal } = mesh.geometry.attributes;
    const start = all.position.length / 3;
    turned.getNormalMatrix(place);
    const seed = seedOf(part.name);
    const middle = part.box.getCenter(new THREE.Vector3());
    const sign = middle.z > -0.02 ? 1 : -1; // which face of the leaf a pull is let into
    const face = ((sign > 0 ? part.box.max.z : part.box.min.z) - middle.z) * 1000;
    const piece = look === 'pull'
      ? [...mouth(position, normal, place, turned, middle, sign, face), sign, 0]
      : [(own.max.x - own.min.x) * 1000, glued[part.mark] ?? 0, look === 'timber' ? joints(part, parts) : 0, 0];
    for (let i = 0; i < position.count; i += 1) {
      v.fromBufferAttribute(position, i);
      if (look === 'timber') all.wood.push((v.x - own.min.x) * 1000, v.y * 1000, v.z * 1000, seed);
      v.applyMatrix4(place);
      if (look === 'pull') {
        all.wood.push((v.x - middle.x) * 1000, (v.y - middle.y) * 1000, ((v.z - middle.z) * 1000 - face) * sign, seed);
      } else if (look !== 'timber') all.wood.push(v.x * 1000, v.y * 1000, v.z * 1000, seed);
      all.position.push(v.x, v.y, v.z);
      all.piece.push(...piece);
      v.fromBufferAttribute(normal, i).applyMatrix3(turned).normalize();
      all.normal.push(v.x, v.y, v.z);
    }
    const { index } = mesh.geometry;
    const count = index ? index.count : position.count;
    all.ranges.push({ part, from: all.index.length / 3, to: all.index.length / 3 + count / 3 });
    for (let i = 0; i < count; i += 1) all.index.push(start + (index ? index.getX(i) : i));
  }
  return looks;
}

/**
 * The groups of the model (a leaf each, and what is fixed), joined and dressed.
 * Returns a Map from a group's name to its object, which moves it, its parts and meshes.
 */
export function dressed(scene, wardrobe, casts, glued) {
  scene.updateMatrixWorld(true);
  const groups = new Map();
  for (const group of scene.children[0].children) {
    const object = new THREE.Group();
    object.name = nameOf(group);
    group.matrixWorld.decompose(object.position, object.quaternion, object.scale);
    const parts = partsOf(group);
    const meshes = [];
    for (const [look, all] of gathered(parts, glued)) {
      const shape = new THREE.BufferGeometry();
      for (const [name, size] of [['position', 3], ['normal', 3], ['wood', 4], ['piece', 4]]) {
        shape.setAttribute(name, new THREE.Float32BufferAttribute(all[name], size));
      }
      shape.setIndex(all.index);
      const material = wardrobe.looks[look];
      if (!material) throw new Error(`the model has a look that is not known here: ${look}`);
      const mesh = new THREE.Mesh(shape, material);
      Object.assign(mesh.userData, { look, ranges: all.ranges });
      if (look === 'glass') wardrobe.panes.push(mesh);
      else casts(mesh);
      object.add(mesh);
      meshes.push(mesh);
    }
    groups.set(object.name, { object, parts, meshes, leaf: group.userData.role === 'leaf' });
  }
  return groups;
}

// The maker's own model, as it came: read it, dress it, and join all parts of one look, so that a
// pair of doors or a run of cases is a dozen pieces to draw. Which group a point belongs to goes
// with it, for where that stands, and what it is in its own part: grain, joints and sections are
// worked out from that.
import * as THREE from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { lookOf } from './dress.js';

const GROWN = new Set(['timber', 'board', 'carcass']); // looks with a grain of their own, along the piece
const DRAWER = / \/ drawer( \d+)? \//; // in the name of each piece of a drawer's box
const FRONT = /^leaf /; // a front, though it be fixed
const FINISHED = /\bfinished\b/;
const HIDES = ' that hides';
const CREASE = 25; // degrees from which two faces meet in an edge that is drawn
const BOX = 12 * 6; // numbers that a box's edges are told by, at least
const ON = 1e-5; // m from a face of a piece's box, within which an edge lies on it
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

/** Whether a part is a board of a case or of a drawer's box, and none that is finished to be seen. */
const boxed = (group, { noun }, name) => DRAWER.test(name) || (Boolean(group.userData.seeThrough) && group.userData.role === 'fixed' && !FRONT.test(nameOf(group)) && !FINISHED.test(noun));

/** Every part of a group with its box in the group's frame and in its own, metres. */
function partsOf(group) {
  const home = new THREE.Matrix4().copy(group.matrixWorld).invert();
  const parts = [];
  group.traverse((mesh) => {
    if (!mesh.isMesh) return;
    const place = new THREE.Matrix4().multiplyMatrices(home, mesh.matrixWorld);
    mesh.geometry.computeBoundingBox();
    const node = mesh.userData.mark ? mesh : mesh.parent;
    const name = nameOf(node);
    parts.push({
      mesh,
      place,
      name,
      mark: node.userData.mark,
      hides: Boolean(node.userData.seeThrough),
      look: lookOf(mesh, `${nameOf(mesh)} ${nameOf(mesh.parent)}`, boxed(group, node.userData, name)),
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

/** Numbers of all parts that are drawn at once: `size` of them a point. */
class Gathered {
  constructor(parts) {
    const points = parts.reduce((sum, { part }) => sum + part.mesh.geometry.attributes.position.count, 0);
    const corners = parts.reduce((sum, { part }) => sum + cornersOf(part.mesh.geometry), 0);
    this.attributes = { position: 3, normal: 3, wood: 4, piece: 4, stance: 1 };
    for (const [name, size] of Object.entries(this.attributes)) this[name] = new Float32Array(points * size);
    this.index = new Uint32Array(corners);
    this.points = 0;
    this.corners = 0;
  }

  get geometry() {
    const shape = new THREE.BufferGeometry();
    for (const [name, size] of Object.entries(this.attributes)) shape.setAttribute(name, new THREE.BufferAttribute(this[name], size));
    shape.setIndex(new THREE.BufferAttribute(this.index, 1));
    return shape;
  }
}

const cornersOf = ({ index, attributes }) => (index ? index.count : attributes.position.count);

/** Put a part with the others of its look; which of their triangles are its own. */
function gather(all, { part, beside, stance }, glued) {
  const { mesh, look, place, own } = part;
  const turned = new THREE.Matrix3().getNormalMatrix(place);
  const v = new THREE.Vector3();
  const { position, normal } = mesh.geometry.attributes;
  const start = all.points;
  const seed = seedOf(part.name);
  const middle = part.box.getCenter(new THREE.Vector3());
  const sign = middle.z > -0.02 ? 1 : -1; // which face of the leaf a pull is let into
  const face = ((sign > 0 ? part.box.max.z : part.box.min.z) - middle.z) * 1000;
  const piece = look === 'pull'
    ? [...mouth(position, normal, place, turned, middle, sign, face), sign, 0]
    : [(own.max.x - own.min.x) * 1000, glued[part.mark] ?? 0, look === 'timber' ? joints(part, beside) : 0, 0];
  for (let i = 0; i < position.count; i += 1) {
    const at = start + i;
    v.fromBufferAttribute(position, i);
    const grown = [(v.x - own.min.x) * 1000, v.y * 1000, v.z * 1000, seed];
    v.applyMatrix4(place);
    v.toArray(all.position, 3 * at);
    if (look === 'pull') all.wood.set([(v.x - middle.x) * 1000, (v.y - middle.y) * 1000, ((v.z - middle.z) * 1000 - face) * sign, seed], 4 * at);
    else all.wood.set(GROWN.has(look) ? grown : [v.x * 1000, v.y * 1000, v.z * 1000, seed], 4 * at);
    all.piece.set(piece, 4 * at);
    v.fromBufferAttribute(normal, i).applyMatrix3(turned).normalize().toArray(all.normal, 3 * at);
    all.stance[at] = stance;
  }
  const { index } = mesh.geometry;
  const from = all.corners;
  const count = cornersOf(mesh.geometry);
  for (let i = 0; i < count; i += 1) all.index[from + i] = start + (index ? index.getX(i) : i);
  all.points += position.count;
  all.corners += count;
  return { part, from: from / 3, to: all.corners / 3 };
}

/** The edges of a part that may be ghosted: of a board its outline, and none of what is cut into it. */
function edgesOf(geometry) {
  const { position } = new THREE.EdgesGeometry(geometry, CREASE).attributes;
  const { min, max } = geometry.boundingBox;
  const [a, b] = [new THREE.Vector3(), new THREE.Vector3()];
  const on = (k) => [min, max].some((end) => Math.abs(a[k] - end[k]) < ON && Math.abs(b[k] - end[k]) < ON);
  const [outline, broad] = [[], []];
  for (let i = 0; i < position.count; i += 2) {
    a.fromBufferAttribute(position, i);
    b.fromBufferAttribute(position, i + 1);
    const edge = [...a.toArray(), ...b.toArray()];
    if (['x', 'y', 'z'].filter(on).length > 1) outline.push(...edge);
    if (on('z')) broad.push(...edge);
  }
  // what is sawn to a curve has its outline on its broad faces
  return outline.length < BOX ? [...outline, ...broad] : outline;
}

function outlined(parts) {
  const known = new Map();
  const [position, stances] = [[], []];
  const v = new THREE.Vector3();
  for (const { part, stance } of parts) {
    const { geometry } = part.mesh;
    if (!known.has(geometry)) known.set(geometry, edgesOf(geometry));
    const own = known.get(geometry);
    for (let i = 0; i < own.length; i += 3) {
      v.fromArray(own, i).applyMatrix4(part.place);
      position.push(v.x, v.y, v.z);
      stances.push(stance);
    }
  }
  const shape = new THREE.BufferGeometry();
  shape.setAttribute('position', new THREE.Float32BufferAttribute(position, 3));
  shape.setAttribute('stance', new THREE.Float32BufferAttribute(stances, 1));
  return shape;
}

/** A mesh of many groups, drawn wherever they are. */
function everywhere(object) {
  object.frustumCulled = false;
  return object;
}

/**
 * The groups of the model (a leaf each, a case each, and what is fixed), dressed, with all that is
 * of one look joined into one mesh. Returns a Map from a group's name to its object, which stands
 * where it stands, and its parts; what is drawn of them; and how to hide what hides.
 */
export function dressed(scene, wardrobe, { casts, pane, glued, stances }) {
  scene.updateMatrixWorld(true);
  const groups = new Map();
  const looks = new Map();
  for (const group of scene.children[0].children) {
    const object = new THREE.Group();
    object.name = nameOf(group);
    group.matrixWorld.decompose(object.position, object.quaternion, object.scale);
    const parts = partsOf(group);
    const stance = stances.take();
    const held = { object, parts, pieces: [], stance, leaf: group.userData.role === 'leaf' };
    groups.set(object.name, held);
    for (const part of parts) {
      const key = `${part.look}${part.hides ? HIDES : ''}`;
      if (!looks.has(key)) looks.set(key, []);
      looks.get(key).push({ part, beside: parts, stance, held });
    }
  }
  const drawn = new THREE.Group();
  const [solid, ghosts] = [[], []];
  for (const [key, parts] of looks) {
    const { look, hides } = parts[0].part;
    const material = wardrobe.looks[look];
    if (!material) throw new Error(`the model has a look that is not known here: ${look}`);
    const all = new Gathered(parts);
    const ranges = new Map();
    for (const one of parts) {
      if (!ranges.has(one.held)) ranges.set(one.held, []);
      ranges.get(one.held).push(gather(all, one, glued));
    }
    const { geometry } = all;
    for (const [held, own] of ranges) held.pieces.push({ look, geometry, ranges: own });
    const mesh = everywhere(new THREE.Mesh(geometry, material));
    mesh.name = key;
    if (look === 'glass') {
      wardrobe.panes.push(mesh);
      pane(mesh);
    } else casts(mesh);
    drawn.add(mesh);
    if (!hides) continue;
    solid.push(mesh);
    ghosts.push(
      everywhere(new THREE.Mesh(geometry, wardrobe.ghost)),
      everywhere(new THREE.LineSegments(outlined(parts), wardrobe.edges)),
    );
  }
  for (const one of ghosts) {
    pane(one);
    drawn.add(one);
  }
  const ghosted = (on) => {
    for (const one of solid) one.visible = !on;
    for (const one of ghosts) one.visible = on;
  };
  ghosted(false);
  return { groups, drawn, ghosted, hides: solid.length > 0 };
}

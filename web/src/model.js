// The maker's own model, as it came: read it, dress it, and join the many parts of each
// leaf into one piece a look, so that a pair of doors is a dozen pieces to draw.
import * as THREE from 'three';
import { GLTFLoader } from 'three/examples/jsm/loaders/GLTFLoader.js';
import { lookOf } from './dress.js';

/** Bytes of a base64 text. */
export function decoded(text) {
  return Uint8Array.from(atob(text.trim()), (c) => c.charCodeAt(0)).buffer;
}

/** Read a GLB: resolves to its root. Nothing is fetched; the model carries all it needs. */
export function readModel(bytes) {
  return new Promise((done, failed) => new GLTFLoader().parse(bytes, '', (g) => done(g.scene), failed));
}

const nameOf = (object) => object.userData.name ?? object.name;

function gathered(group) {
  const looks = new Map();
  const home = new THREE.Matrix4().copy(group.matrixWorld).invert();
  const place = new THREE.Matrix4();
  const turned = new THREE.Matrix3();
  const v = new THREE.Vector3();
  group.traverse((mesh) => {
    if (!mesh.isMesh) return;
    const look = lookOf(mesh, `${nameOf(mesh)} ${nameOf(mesh.parent)}`);
    if (!looks.has(look)) looks.set(look, { position: [], normal: [], index: [] });
    const all = looks.get(look);
    const { position, normal } = mesh.geometry.attributes;
    const start = all.position.length / 3;
    place.multiplyMatrices(home, mesh.matrixWorld);
    turned.getNormalMatrix(place);
    for (let i = 0; i < position.count; i += 1) {
      all.position.push(...v.fromBufferAttribute(position, i).applyMatrix4(place));
      all.normal.push(...v.fromBufferAttribute(normal, i).applyMatrix3(turned).normalize());
    }
    const { index } = mesh.geometry;
    const count = index ? index.count : position.count;
    for (let i = 0; i < count; i += 1) all.index.push(start + (index ? index.getX(i) : i));
  });
  return looks;
}

/**
 * The groups of the model (a leaf each, and what is fixed), joined and dressed.
 * Returns a Map from a group's name to its object; a leaf is moved by its object.
 */
export function dressed(scene, wardrobe, casts) {
  scene.updateMatrixWorld(true);
  const groups = new Map();
  const root = scene.children[0];
  for (const group of root.children) {
    const object = new THREE.Group();
    object.name = nameOf(group);
    group.matrixWorld.decompose(object.position, object.quaternion, object.scale);
    for (const [look, all] of gathered(group)) {
      const shape = new THREE.BufferGeometry();
      shape.setAttribute('position', new THREE.Float32BufferAttribute(all.position, 3));
      shape.setAttribute('normal', new THREE.Float32BufferAttribute(all.normal, 3));
      shape.setIndex(all.index);
      const material = wardrobe[look];
      if (!material) throw new Error(`the model has a look that is not known here: ${look}`);
      const mesh = new THREE.Mesh(shape, material);
      if (look !== 'glass') casts(mesh);
      object.add(mesh);
    }
    groups.set(object.name, object);
  }
  return groups;
}

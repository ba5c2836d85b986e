// Many shapes as one, so that they are drawn at once.
import * as THREE from 'three';

export function joined(shapes) {
  const [position, normal, index] = [[], [], []];
  for (const shape of shapes) {
    const start = position.length / 3;
    position.push(...shape.attributes.position.array);
    normal.push(...shape.attributes.normal.array);
    if (shape.index) for (const i of shape.index.array) index.push(start + i);
    else for (let i = start; i < position.length / 3; i += 1) index.push(i);
    shape.dispose();
  }
  const all = new THREE.BufferGeometry();
  all.setAttribute('position', new THREE.Float32BufferAttribute(position, 3));
  all.setAttribute('normal', new THREE.Float32BufferAttribute(normal, 3));
  all.setIndex(index);
  return all;
}

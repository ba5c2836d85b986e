// Room, light, grain and places to stand, as the tool wrote them into the page: the same
// tables that its pictures are made from. Metres, Y up.
const { scene } = JSON.parse(document.getElementById('job').textContent);

export default scene;

/** A number as a shader writes it. */
export const f = (v) => (Number.isInteger(v) ? `${v}.` : String(v));

/** Numbers as a vector of a shader. */
export const vec = (v) => `vec${v.length}(${v.map(f).join(',')})`;

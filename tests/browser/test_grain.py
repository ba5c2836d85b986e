"""The wood of the pictures is the wood of the page: both worked out from the same points."""

from __future__ import annotations

import json
from pathlib import Path

import numpy as np
import pytest

from parametric.catalog.finishes import CLEAR_TIMBERS
from parametric.writers.grain import clear_wood, linear, seed_of
from parametric.writers.room_facts import room_facts
from tests.browser.conftest import DRAWN_BY_PROCESSOR

WEB = Path(__file__).resolve().parents[2] / "web" / "src"
COUNT = 64

PAGE = """<!doctype html><script id="job" type="application/json">%s</script>
<canvas width="64" height="64"></canvas><script type="module">%s
window.grown = (points, seed, wide, early, late, rings) => {
  const gl = document.querySelector('canvas').getContext('webgl2');
  gl.getExtension('EXT_color_buffer_float');
  const make = (kind, text) => {
    const shader = gl.createShader(kind);
    gl.shaderSource(shader, text);
    gl.compileShader(shader);
    if (!gl.getShaderParameter(shader, gl.COMPILE_STATUS)) throw new Error(gl.getShaderInfoLog(shader));
    return shader;
  };
  const program = gl.createProgram();
  gl.attachShader(program, make(gl.VERTEX_SHADER, `#version 300 es
    void main() { gl_Position = vec4(ivec2(gl_VertexID & 1, gl_VertexID >> 1) * 4 - 1, 0., 1.); }`));
  gl.attachShader(program, make(gl.FRAGMENT_SHADER, `#version 300 es
    precision highp float;
    #define fwidth(v) 0.
    uniform highp sampler2D points;
    uniform float seed, wide;
    uniform vec3 early, late;
    uniform vec4 rings;
    out vec4 shown;
    ${NOISE} ${GRAIN}
    void main() {
      shown = clearWood(texelFetch(points, ivec2(gl_FragCoord.xy), 0).xyz, seed, wide, early, late, rings);
    }`));
  gl.linkProgram(program);
  gl.useProgram(program);
  const texture = (unit, data) => {
    const t = gl.createTexture();
    gl.activeTexture(gl.TEXTURE0 + unit);
    gl.bindTexture(gl.TEXTURE_2D, t);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGBA32F, 64, 64, 0, gl.RGBA, gl.FLOAT, data);
    for (const p of [gl.TEXTURE_MIN_FILTER, gl.TEXTURE_MAG_FILTER]) gl.texParameteri(gl.TEXTURE_2D, p, gl.NEAREST);
    return t;
  };
  const target = texture(1, null);
  texture(0, new Float32Array(points));
  gl.bindFramebuffer(gl.FRAMEBUFFER, gl.createFramebuffer());
  gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, target, 0);
  const at = (name) => gl.getUniformLocation(program, name);
  gl.uniform1i(at('points'), 0);
  gl.uniform1f(at('seed'), seed);
  gl.uniform1f(at('wide'), wide);
  gl.uniform3fv(at('early'), early);
  gl.uniform3fv(at('late'), late);
  gl.uniform4fv(at('rings'), rings);
  gl.viewport(0, 0, 64, 64);
  gl.drawArrays(gl.TRIANGLES, 0, 3);
  const out = new Float32Array(64 * 64 * 4);
  gl.readPixels(0, 0, 64, 64, gl.RGBA, gl.FLOAT, out);
  return [...out];
};
</script>"""


@pytest.fixture(scope="module")
def grown(browsers):
    """The page's own shader, run on points."""
    shader = (WEB / "grain.glsl.js").read_text().replace("export const", "const")
    table = (WEB / "scene.js").read_text().replace("export default scene;", "")
    script = table.replace("export const", "const") + "\n".join(
        line for line in shader.splitlines() if not line.startswith("import ")
    )
    facts = json.dumps({"scene": room_facts()})
    page = browsers(DRAWN_BY_PROCESSOR).new_page()
    page.set_content(PAGE % (facts, script))
    yield lambda *given: np.array(
        page.evaluate("(given) => grown(...given)", list(given)), np.float32
    ).reshape(-1, 4)
    page.close()


@pytest.mark.browser
@pytest.mark.parametrize("wide", [0.0, 134.9], ids=["one board", "glued"])
@pytest.mark.parametrize("wood", CLEAR_TIMBERS, ids=lambda wood: wood.key)
def test_numpy_grows_the_wood_that_the_shader_grows(grown, wood, wide):
    seed = seed_of("leaf A / left stile")
    points = np.random.default_rng(7).uniform((0, 0, 0), (2102, 500, 40), (COUNT * COUNT, 3))
    points = points.astype(np.float32)
    four = np.column_stack([points, np.zeros(len(points))])
    rings = [wood.ring, wood.contrast, wood.pore, wood.fleck]
    shown = grown(four.ravel().tolist(), seed, wide, linear(wood.early), linear(wood.late), rings)
    colour, rough = clear_wood(points, seed, wood, wide=wide)
    off = np.abs(np.column_stack([colour, rough]) - shown).max(axis=1)
    # Both work in single precision but round in their own order; a point on the very edge of
    # a year, which ends at once, may fall on either side of it.
    assert np.quantile(off, 0.99) < 0.004
    assert np.mean(off > 0.02) < 0.002
    # and it is wood, not one tone: the spread of its light is more than its darkest error
    assert colour.std(axis=0).max() > 0.01


def test_a_seed_is_a_published_hash_of_the_name_stirred():
    """FNV-1a, 32 bits, of "foobar" is 0xbf9cf968 (the authors' list of test vectors, from memory)."""
    h = 0xBF9CF968
    h = ((h ^ (h >> 15)) * 0x85EBCA6B) & 0xFFFFFFFF
    assert seed_of("foobar") == (h ^ (h >> 13)) / 4294967296
    assert seed_of("leaf A / left stile") != seed_of("leaf A / right stile")

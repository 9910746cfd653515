// Stitches and marks, drawn by the script as by Go.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { shapes } from "../../static/js/chart/knit.js";
import { basting, frame, needle, notches, pin } from "../../static/js/chart/marks.js";
import { loop } from "../../static/js/chart/needle.js";

const drawnByGo = (name) => JSON.parse(readFileSync(new URL(`../chart/${name}.json`, import.meta.url), "utf8"));
const cases = drawnByGo("fabric");

// numbers returns path data with absolute coordinates as a list of letters and
// numbers.
function numbers(path) {
  const out = [];
  let [x, y, letter, i] = [0, 0, "", 0];
  for (const [word] of path.matchAll(/[a-zA-Z]|-?[\d.]+/g)) {
    if (/[a-zA-Z]/.test(word)) {
      if (out.length > 1 && letter !== "z" && letter !== "Z") [x, y] = out.slice(-2);
      [letter, i] = [word, 0];
      out.push(word.toUpperCase());
    } else {
      const relative = letter !== letter.toUpperCase();
      out.push(Number(word) + (relative ? (i % 2 === 0 ? x : y) : 0));
      i++;
    }
  }
  return out;
}

function alike(got, want, what, within = 0.006) {
  const [a, b] = [numbers(got), numbers(want)];
  assert.equal(a.length, b.length, what);
  a.forEach((n, i) => (typeof n === "string" ? assert.equal(n, b[i], what) : assert.ok(Math.abs(n - b[i]) < within, `${what}: ${n} for ${b[i]}`)));
}

test("stitches and marks lie where Go draws them", () => {
  for (const c of cases) {
    const of = shapes(c);
    const box = (y, x) => ({ x: c.left + x * c.cell_width, y: c.bottom - y * c.cell_height, w: c.cell_width, h: c.cell_height });
    for (const { x, y, shape, path } of c.stitches) {
      const b = box(y, x);
      alike(of[shape].map((p) => `M${b.x + p.x} ${b.y + p.y}${p.rest}`).join(""), path, shape);
    }
    alike(basting(box(2, 3)), c.basting, "basting");
    alike(frame({ ...box(2, 1), w: 5 * c.cell_width }, c.cell_width / 8), c.frame, "frame");
    const drawn = pin(c.left + 2 * c.cell_width, c.bottom - 2 * c.cell_height, -1, Math.min(c.cell_width, c.cell_height));
    alike(drawn.flag, c.flag, "flag");
    alike(drawn.pin, c.pin, "pin");
    alike(needle(box(2, 1), box(2, 5)), c.needle, "needle");
  }
});

// The needle under the chart is written in tenths of a pixel.
test("loops lie on the needle as Go draws them", () => {
  const loops = drawnByGo("loops");
  assert.ok(loops.length > 0);
  for (const { x, half, top, foot, path } of loops) alike(loop(x, half, top, foot), path, `a loop at ${x}`, 0.051);
});

// A rectangle has four corners, an L six, two cells that touch at a corner eight
// less the one they share.
test("what is marked off has a notch at each of its corners", () => {
  const box = (y, x) => ({ x: 10 * x, y: -10 * y, w: 10, h: 10 });
  const legs = (runs) => (notches(runs, box).match(/Z/g) ?? []).length;
  assert.equal(legs([]), 0);
  assert.equal(legs([{ y: 1, from: 2, to: 5 }, { y: 2, from: 2, to: 5 }]), 4 * 2);
  assert.equal(legs([{ y: 1, from: 2, to: 5 }, { y: 2, from: 2, to: 3 }]), 6 * 2);
  assert.equal(legs([{ y: 1, from: 2, to: 2 }, { y: 2, from: 3, to: 3 }]), 7 * 2);
  const [first] = notches([{ y: 3, from: 4, to: 4 }], box).split(" Z");
  assert.match(first, /^M/);
});

import assert from "node:assert/strict";
import test from "node:test";
import { apply, layers, marksOf } from "../../static/js/chart/edits.js";
import { Model, born } from "../../static/js/chart/model.js";
import { cases } from "./cases.mjs";

assert.ok(cases.length >= 5, "the shared cases are there");

for (const c of cases) {
  test(`${c.name}: edits, inverse, faults and symbols as in Go`, () => {
    const model = new Model(c.page);
    assert.deepEqual(model.apply(c.edits), c.inverse);
    assert.deepEqual(model.marks, marksOf(c.after));
    assert.deepEqual(model.faults().map((f) => f.words), c.faults);
    assert.deepEqual(model.row(3).cells.map((cell) => model.op(3, cell).code), c.shown);
    model.apply(c.inverse);
    assert.deepEqual(model.marks, marksOf(c.page.marks));
  });
}

test("any edits, taken back, leave what was there", () => {
  let seed = 7;
  const random = (n) => (seed = (seed * 48271) % 2147483647) % n;
  const marks = new Map();
  for (let i = 0; i < 300; i++) {
    const before = structuredClone(marks);
    const edits = Array.from({ length: 1 + random(9) }, () => ({
      section: "gusset", round: 1 + random(4), column: `${"ABZH"[random(4)]}${1 + random(3)}`,
      layer: layers[random(2)], value: ["", "p", "b", "yo"][random(4)],
    }));
    const inverse = apply(marks, edits);
    const after = structuredClone(marks);
    const again = apply(marks, inverse);
    assert.deepEqual(marks, before);
    apply(marks, again);
    assert.deepEqual(marks, after);
  }
});

test("a cell is read out", () => {
  const model = new Model(cases.find((c) => c.name === "nothing.json").page);
  const x = model.row(3).cells[1].x;
  assert.equal(model.describe(3, x), "round 3, stitch 2, make one leaning left, 2nd made at the first edge, main colour");
  assert.equal(model.describe(3, 99), "");
  assert.equal(born("Z11"), "11th made at the other edge");
});

test("painting what is there is no edit, and the plan's own stitch takes a mark back", () => {
  const model = new Model(cases.find((c) => c.name === "nothing.json").page);
  const cell = model.row(2).cells.find((c) => c.column === "B2");
  assert.equal(model.edit(2, cell, "stitch", "p"), undefined);
  assert.equal(model.edit(2, cell, "stitch", "k").value, "");
  assert.equal(model.edit(2, cell, "colour", "a"), undefined);
});

test("on the left hand a stored stitch is the right hand's", () => {
  const model = new Model(cases.find((c) => c.name === "left-hand.json").page);
  const cell = model.row(3).cells.find((c) => c.column === "B2");
  assert.equal(model.edit(3, cell, "stitch", "k2tog").value, "ssk");
});

import assert from "node:assert/strict";
import test from "node:test";
import { apply, layers, marksOf } from "../../static/js/chart/edits.js";
import { floats, mean, meant, yarnsOf } from "../../static/js/chart/float.js";
import { faults } from "../../static/js/chart/ledger.js";
import { Model, born } from "../../static/js/chart/model.js";
import { cases, page, runs } from "./cases.mjs";

assert.ok(cases.length >= 7 && runs.length === 3, "the shared cases are there");

// floatSentences says in Go's sentences which strands are too long, and which
// rounds have too many yarns.
function floatSentences(model) {
  const { float: every, colours } = model.data.rules;
  const out = floats(model).map((f) => `${model.part(f.y)}${model.name(f.y)}: ${model.yarns.get(f.yarn).name} is carried over ${f.length} stitches; catch it every ${every}`);
  for (const { y } of model.rows) {
    const n = yarnsOf(model.totals(y));
    if (colours > 0 && n > colours) out.push(`${model.part(y)}${model.name(y)}: ${n} yarns, where ${colours} are the most`);
  }
  return out;
}

for (const c of cases) {
  test(`${c.name}: edits, inverse, faults, floats and symbols as in Go`, () => {
    const model = new Model(c.page);
    faults(model); // what is known of the rows must give way to the edits
    floats(model);
    assert.deepEqual(model.apply(c.edits), c.inverse);
    assert.deepEqual(model.marks, marksOf(c.after));
    assert.deepEqual(faults(model).map((f) => f.words), c.faults);
    assert.deepEqual(floatSentences(model), c.floats);
    assert.deepEqual(model.row(3).cells.map((cell) => model.op(3, cell).code), c.shown);
    model.apply(c.inverse);
    assert.deepEqual(model.marks, marksOf(c.page.marks));
  });
}

// The minimal standard generator, as the Go test throws it.
function dice(seed) {
  let state = seed;
  return (n) => (state = (state * 48271) % 2147483647) % n;
}

function random(d) {
  const edit = { section: ["gusset", "hand"][d(2)], round: 1 + d(6), column: "ABZH"[d(4)] + (1 + d(5)) };
  const layer = d(3);
  if (layer === 0) return { ...edit, layer: "stitch", value: ["", "p", "yo", "k2tog", "m1l"][d(5)] };
  if (layer === 1) return { ...edit, layer: "colour", value: ["", "b", "c", "h"][d(4)] };
  return { ...edit, layer: "note", value: ["", "look", "ü ½ “x”"][d(3)] };
}

// listed is marks as Go lists them: by section, round, column and layer.
function listed(marks) {
  const order = (c) => [c.length, c];
  const list = [...marks].flatMap(([key, mark]) => {
    const [section, round, column] = key.split(" ");
    return layers.filter((l) => mark[l] !== "").map((layer) => ({ section, round: Number(round), column, layer, value: mark[layer] }));
  });
  return list.sort((a, b) => compare(a.section, b.section) || a.round - b.round || order(a.column)[0] - order(b.column)[0]
    || compare(a.column, b.column) || layers.indexOf(a.layer) - layers.indexOf(b.layer));
}

const compare = (a, b) => (a < b ? -1 : Number(a > b));

for (const run of runs) {
  test(`${run.name}: ten thousand random edits come to the same as in Go, and undone to the start`, () => {
    const d = dice(run.seed);
    const marks = new Map();
    for (let i = 0; i < 40; i++) apply(marks, [random(d)]);
    assert.deepEqual(listed(marks), run.start);
    const before = JSON.stringify(listed(marks));
    const back = [];
    for (let edits = 0; edits < 10_000;) {
      const stroke = Array.from({ length: 1 + d(9) }, () => 0).map(() => random(d));
      edits += stroke.length;
      back.push(apply(marks, stroke));
    }
    assert.equal(back.length, run.strokes);
    assert.deepEqual(listed(marks), run.end);
    for (const inverse of back.reverse()) apply(marks, inverse);
    assert.equal(JSON.stringify(listed(marks)), before);
  });
}

test("a cell is read out", () => {
  const model = new Model(page("nothing"));
  const { x } = model.row(3).cells[1];
  assert.equal(model.describe(3, x), "round 3, stitch 2, make one leaning left, 2nd made at the first edge, main colour");
  assert.equal(model.describe(3, 99), "");
  assert.equal(born("Z11"), "11th made at the other edge");
  const tube = new Model(page("tube"));
  tube.apply([{ section: "hand", round: 2, column: "C2", layer: "note", value: "here" }]);
  assert.equal(tube.describe(4, tube.row(4).column("C2").x), "round 2 of the hand, stitch 2, knit, 2nd of the bridge, main colour, painted, note: here");
});

test("painting what is there is no edit, and the plan's own stitch takes a mark back", () => {
  const model = new Model(page("nothing"));
  const cell = model.row(2).column("B2");
  assert.equal(model.edit(2, cell, "stitch", "p"), undefined);
  assert.equal(model.edit(2, cell, "stitch", "k").value, "");
  assert.equal(model.edit(2, cell, "colour", "a"), undefined);
});

test("on the left hand a stored stitch is the right hand's", () => {
  const model = new Model(page("left-hand"));
  assert.equal(model.edit(3, model.row(3).column("B2"), "stitch", "k2tog").value, "ssk");
});

// A strand that is meant is told no more, from one press, which the other takes back. The
// cases that Go writes say so of marks that are there already, on both hands.
for (const name of ["meant", "meant-on-a-left-tube"]) {
  test(`${name}: every strand can be meant, and taken back`, () => {
    const model = new Model(page(name));
    model.apply(cases.find((c) => c.name === `${name}.json`).edits);
    const before = [floats(model).length, meant(model).length];
    assert.ok(before[0] > 0 && before[1] > 0, String(before));
    const inverse = model.apply(floats(model).map((f) => mean(model, f, true)));
    assert.deepEqual([floats(model).length, meant(model).length], [0, before[0] + before[1]]);
    assert.equal(model.rows.some((row) => row.cells.some((c) => model.mark(row.y, c.column).strand && model.yarn(row.y, c) === "a" && model.painted(row.y, c))), false);
    const back = model.apply(meant(model).map((f) => mean(model, f, false)));
    assert.equal(meant(model).length, 0);
    model.apply(back);
    model.apply(inverse);
    assert.deepEqual([floats(model).length, meant(model).length], before);
  });
}

import assert from "node:assert/strict";
import test from "node:test";
import { borders, coverOf, extent } from "../../static/js/chart/borders.js";
import { bound, freed, taken } from "../../static/js/chart/bound.js";
import { Model } from "../../static/js/chart/model.js";
import { changed, drawing, field, follow, laidAnew, moved, removed, seen, stretched, swapped } from "../../static/js/chart/repeats.js";
import { page } from "./cases.mjs";

const dots = () => ({ at: 0, name: "dots", title: "“dots”", wide: 3, high: 2, yarns: ["..b", "b.."], given: { name: "dots", set: "multiple" }, across: 2, up: 3 });
const stripe = () => ({ at: 3, name: "", title: "motif 2", wide: 1, high: 2, stitches: ["p", "."], given: { over: "columns", columns: "H2/H4" }, across: 3, up: 1 });

// chart is the tube, with the cells of a row given what lies there.
function chart(repeats, lies) {
  const data = { ...page("tube"), marks: [], repeats, hand: { gusset: 0, hand: 20 } };
  data.rows.forEach((row) => Object.assign(row, lies?.(row)));
  return new Model(data);
}

const told = (edits) => edits.map((e) => `${e.column.slice("repeats[".length)}=${e.value}`).join(" ");

test("a field of a repeat is an edit of the sheet", () => {
  assert.deepEqual(field(2, "from", 3), { section: "", round: 0, column: "repeats[2].from", layer: "sheet", value: "3" });
});

test("a repeat is moved by rounds and stitches, and its last round goes with it", () => {
  const model = chart([dots(), stripe()]);
  const [one, between] = model.repeats;
  assert.equal(told(moved(model, one, 1, 0)), "0].from=2", "one up to the last stays so");
  assert.equal(told(moved(model, one, -1, 0)), "", "nothing lies below the first");
  assert.equal(told(moved(model, { ...one, given: { from: "4", to: "9" } }, -1, 0)), "0].from=3 0].to=8");
  assert.equal(told(moved(model, one, 0, 1)), "0].offset=1");
  assert.equal(told(moved(model, { ...one, given: { offset: "2" } }, 0, 1)), "0].offset=0", "round its motif");
  assert.equal(told(moved(model, between, 0, 1)), "3].columns=H3/H5");
});

test("it is stretched by whole motifs, or by a round where it may be cut off", () => {
  const model = chart([dots(), stripe()]);
  const [one, between] = model.repeats;
  assert.equal(told(stretched(model, one, -1, 0)), "0].to=4");
  assert.equal(told(stretched(model, { ...one, given: { cut: "true" } }, -1, 0)), "0].to=-2");
  assert.equal(told(stretched(model, { ...one, up: 1 }, -1, 0)), "", "none would be left");
  assert.equal(told(stretched(model, between, 0, 1)), "3].columns=H2/H5");
  follow(model, stretched(model, one, -1, 0));
  assert.equal(told(stretched(model, one, -1, 0)), "0].to=2", "a second press before the plan is there goes on from it");
});

test("what has no use any more goes with a change, and all goes with what is taken away", () => {
  const model = chart([dots(), stripe()]);
  assert.equal(told(changed(model.repeats[0], "over", "palm")), "0].over=palm 0].set=");
  assert.equal(told(changed(model.repeats[1], "over", "round")), "3].over=round 3].columns=");
  const grown = { at: 5, given: { gusset: "grow" } };
  for (const [key, value, gone] of [["over", "palm", true], ["section", "thumb", true], ["over", "gusset", false], ["section", "gusset", false], ["from", "3", false]]) {
    assert.equal(told(changed(grown, key, value)), `5].${key}=${value}${gone ? " 5].gusset=" : ""}`);
  }
  assert.equal(told(changed({ at: 5, given: { gusset: "out" } }, "over", "gusset")), "5].over=gusset 5].gusset=");
  assert.ok(removed(model.repeats[0]).every((e) => e.value === ""));
  assert.ok(removed(model.repeats[0]).length >= 15);
});

test("two that are swapped have each other's fields", () => {
  const model = chart([dots(), stripe()]);
  const [one, other] = structuredClone(model.repeats);
  follow(model, swapped(model, model.repeats[0], true));
  assert.deepEqual(model.repeats[1].given, one.given);
  assert.deepEqual(model.repeats[1].yarns, one.yarns);
  assert.deepEqual(model.repeats[0].given, other.given);
  assert.deepEqual(model.repeats[0].stitches, other.stitches);
  assert.deepEqual(swapped(model, model.repeats[1], true), [], "nothing lies over the uppermost");
});

test("cells become a motif as the right hand has it", () => {
  const cells = [{ left: 0, up: 0, stitch: "", colour: "b" }, { left: 2, up: 1, stitch: "p", colour: "" }, { left: 1, up: 0, stitch: "k2tog", colour: "" }];
  const model = chart([]);
  assert.deepEqual(drawing(model, cells), { wide: 3, high: 2, left: 1, motif: ".../..b", stitches: "p../..." });
  model.data.mirrored = true;
  assert.deepEqual(drawing(model, cells), { wide: 3, high: 2, left: 1, motif: ".../b..", stitches: "..p/..." });
  assert.match(laidAnew(model, [{ left: 0, up: 0, stitch: "", colour: "" }], "").why, /Nothing is painted/);
  assert.match(laidAnew(model, [{ left: 0, up: 0, stitch: "k2tog", colour: "" }], "").why, /There are none here/);
  assert.match(laidAnew(model, [{ left: 120, up: 0, stitch: "", colour: "b" }], "").why, /at most 120/);
});

test("it is laid over all others where it was drawn", () => {
  const model = chart([dots(), stripe()]);
  const row = model.row(3);
  const cell = row.shown.find((c) => c.column === "H2");
  const before = row.cells.filter((c) => !/^[AZS]/.test(c.column)).indexOf(cell);
  const { at, edits } = laidAnew(model, [{ left: 0, up: 0, stitch: "", colour: "b" }, { left: 3, up: 0, stitch: "", colour: "b" }], "birds", { row, cell });
  assert.equal(at, 4);
  const rest = before % 4;
  assert.equal(told(edits), `4].motif=b..b 4].name=birds 4].from=${model.data.hand[row.section] + row.round}${rest > 0 ? ` 4].offset=${rest}` : ""}`);
});

test("the borders go round each motif, and a cover is found where it leaves what lies under", () => {
  const lies = (row) => (row.section === "gusset" && row.round <= 2 ? { lies: [{ i: 0, n: 6, r: 0, x: 0, s: 1, y: row.round - 1 }] } : {});
  const model = chart([dots()], lies);
  const row = model.row(1);
  const { x } = row.cells[0];
  assert.deepEqual(coverOf(row, model, row.cells[4]), { repeat: 0, right: 1, up: 0 });
  assert.equal(coverOf(row, model, row.cells[6]), undefined);
  const shown = row.cells.slice(0, 6).map((c) => c.x);
  assert.deepEqual(extent(model, model.repeats[0]), { low: 1, high: 2, left: Math.min(...shown), right: Math.max(...shown) });
  const { left, bottom, cell_width: w, cell_height: h } = model.data;
  const lines = borders(model).split("M").slice(1).sort();
  const upright = [x + 1, x - 2, x - 5].map((at) => `${left + at * w} ${bottom}V${bottom - 2 * h}`);
  const level = [0, 2].map((y) => `${left + (x - 5) * w} ${bottom - y * h}H${left + (x + 1) * w}`);
  assert.deepEqual(lines, [...upright, ...level].sort());
});

test("what is seen on a block is what is painted there, or laid", () => {
  const model = chart([dots()], (row) => (row.section === "gusset" && row.round === 1 ? { laid: [{ i: 0, n: 3, r: 0, x: 0, s: 1, y: 1 }] } : {}));
  const { cells: [first, second] } = model.row(1);
  model.apply(model.edits(1, second, { stitch: "p" }));
  assert.deepEqual(seen(model, [[1, first.x], [1, second.x]]), [
    { left: 0, up: 0, stitch: "", colour: "b" },
    { left: 1, up: 0, stitch: "p", colour: "" },
  ]);
});

test("what is painted on a motif has its stitch there, goes along with it, or is left", () => {
  const lies = (row) => (row.section === "gusset" && row.round <= 2 ? { lies: [{ i: 0, n: 6, r: 0, x: 0, s: 1, y: row.round - 1 }] } : {});
  const model = chart([dots()], lies);
  const row = model.row(1);
  const [on, beside] = [row.cells[4], row.cells[6]].map(({ column }) => ({ section: row.section, round: 1, column }));
  const paint = (at, layer, value) => ({ ...at, layer, value });
  const stroke = bound(model, [paint(on, "colour", "c"), paint(on, "stitch", "p"), paint(beside, "colour", "c")]);
  assert.deepEqual(stroke.slice(3), [paint(on, "motif", "r3x2.1.0")]);
  model.apply(stroke);
  assert.deepEqual(bound(model, [paint(on, "colour", "")]), [paint(on, "colour", "")], "it is painted still");
  assert.deepEqual(bound(model, [paint(on, "colour", ""), paint(on, "stitch", "")]).slice(2), [paint(on, "motif", "")]);
  const to = { ...on, round: 2 };
  const along = taken(model, [{ at: on, to }, { at: beside }]);
  assert.deepEqual(bound(model, along), along, "it says its stitch itself");
  model.apply(along);
  assert.equal(model.mark(1, on.column).motif, "");
  assert.deepEqual(model.mark(2, on.column), { stitch: "p", colour: "c", note: "", needles: "", strand: "", motif: "r3x2.1.0" });
  assert.equal(model.mark(1, beside.column).colour, "c", "what lies nowhere stays");
  model.apply(freed([{ at: to }]));
  assert.equal(model.mark(2, on.column).motif, "");
  assert.equal(model.mark(2, on.column).colour, "c");
});

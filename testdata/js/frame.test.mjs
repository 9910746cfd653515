// What a frame of the chart does, and what it leaves.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Frame, changes } from "../../static/js/chart/frame.js";
import { Selection } from "../../static/js/chart/selection.js";
import { patch } from "../../static/js/chart/svg.js";
import { Brush } from "../../static/js/chart/tools.js";
import { Where } from "../../static/js/chart/where.js";
import { ok, setUp } from "./server.mjs";

test("a frame reads everything before it writes anything", () => {
  const frames = [];
  const done = [];
  const frame = new Frame((f) => frames.push(f));
  const job = (name, more) => frame.add({ read: () => done.push(`read ${name}`), write: () => { done.push(`write ${name}`); more?.(); } });
  let first;
  const rows = job("rows", () => first());
  first = job("knitting");
  const sight = job("sight");
  sight();
  rows();
  rows();
  assert.equal(frames.length, 1, "one frame, however often it is asked for");
  frames.shift()();
  assert.deepEqual(done, ["read rows", "read sight", "write rows", "write sight"]);
  done.length = 0;
  assert.equal(frames.length, 1, "what a write asks for is for the next frame");
  frames.shift()();
  assert.deepEqual(done, ["read knitting", "write knitting"]);
});

test("nothing that stayed as it was is drawn again", () => {
  const fresh = changes();
  const at = new Where({
    svg: { left: 10, top: 20, width: 200 }, frame: { left: 0, top: 0 }, width: 100, height: 50, view: { x: 0, y: 0, width: 100 },
    data: { left: 0, bottom: 30, cell_width: 5, cell_height: 4, rows: Array(7), width: 20 }, needle: { left: 3, width: 90 },
  });
  assert.deepEqual([at.x(1), at.y(1), at.low, at.high, at.from, at.to], [20, 72, 4, 7, 0, 9]);
  assert.ok(fresh(at, 1));
  assert.ok(!fresh(at, 1));
  assert.ok(fresh(at, 2));
  assert.ok(at.same(Object.assign(Object.create(Where.prototype), at)));
});

// sheet is a place for drawings that counts what is done to it.
function sheet() {
  const counts = { created: 0, set: 0 };
  globalThis.document = {
    createElementNS: (_, name) => {
      counts.created++;
      const e = { name, attributes: {}, textContent: "" };
      e.setAttribute = (key, value) => { counts.set++; e.attributes[key] = value; };
      e.removeAttribute = (key) => { delete e.attributes[key]; };
      e.remove = () => place.children.splice(place.children.indexOf(e), 1);
      e.replaceWith = (other) => place.children.splice(place.children.indexOf(e), 1, other);
      return e;
    },
  };
  const place = { children: [], append: (e) => place.children.push(e) };
  return { place, counts };
}

test("a drawing is changed only where it differs", () => {
  const { place, counts } = sheet();
  const row = (words) => [["path", { class: "tick", d: "M0 0" }], ["text", { class: "number", x: 4 }, words], ["path", { d: "M1 1" }]];
  patch(place, row("1"));
  const before = { ...counts };
  patch(place, row("1"));
  assert.deepEqual(counts, before, "nothing changed");
  patch(place, [["path", { class: "tick", d: "M9 9" }], ["rect", { x: 1 }]]);
  assert.equal(counts.created, before.created + 1);
  assert.equal(counts.set, before.set + 2);
  assert.deepEqual(place.children.map((e) => [e.name, e.attributes]), [["path", { class: "tick", d: "M9 9" }], ["rect", { x: "1" }]]);
  patch(place, [["path", { d: "M9 9" }]]);
  assert.deepEqual(place.children.map((e) => e.attributes), [{ d: "M9 9" }]);
});

test("a move over a cell that is in the stroke already does nothing", () => {
  const t = setUp([ok(5)]);
  const brush = new Brush(t.model, t.history);
  brush.choose({ shape: "free", layer: "colour", value: "c" });
  const [a, b] = t.model.row(4).shown.map((c) => c.x);
  assert.deepEqual(brush.begin(4, a), [4]);
  assert.deepEqual(brush.move(4, b), [4]);
  const [totals, edits] = [t.model.totals(4), brush.stroke.edits.length];
  for (const x of [b, a, b]) assert.deepEqual(brush.move(4, x), [], "no row to draw");
  assert.equal(t.model.totals(4), totals, "its totals are not counted again");
  assert.equal(brush.stroke.edits.length, edits);
});

test("what is marked off is found once, in the rows that it lies in", () => {
  const { model } = setUp([]);
  const selection = new Selection();
  const [a, b] = model.row(4).shown.map((c) => c.x);
  const [low] = model.row(2).shown.map((c) => c.x);
  selection.set(model, [[4, b], [2, low], [4, a]]);
  const places = selection.places(model);
  assert.deepEqual(places, [[2, low], [4, a], [4, b]]);
  assert.equal(selection.places(model), places);
  selection.clear();
  assert.deepEqual(selection.places(model), []);
});

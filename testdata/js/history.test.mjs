import assert from "node:assert/strict";
import test from "node:test";
import { History } from "../../static/js/chart/history.js";
import { Model } from "../../static/js/chart/model.js";
import { Brush } from "../../static/js/chart/tools.js";
import { edit, ok, page, settle, setUp } from "./server.mjs";

const no = { status: 400, reply: { error: ["edits[0].value: no"] } };

test("a refused stroke leaves the strokes drawn over it", async () => {
  const t = setUp([no, ok(5)]);
  t.history.stroke([edit(1, "p")]);
  t.history.stroke([edit(1, "yo")]);
  await settle();
  assert.equal(t.model.mark(1, "B2").stitch, "yo");
  assert.deepEqual(t.sent.map((s) => s.edits[0].value), ["p", "yo"]);
});

test("a later stroke that is refused, too, leaves what was there before both", async () => {
  const t = setUp([no, no]);
  const before = structuredClone(t.model.marks);
  t.history.stroke([edit(1, "p")]);
  t.history.stroke([edit(1, "yo")]);
  await settle();
  assert.deepEqual(t.model.marks, before);
});

test("with the only stroke refused there is nothing to undo", async () => {
  const t = setUp([no]);
  t.history.stroke([edit(1, "p")]);
  assert.ok(t.history.canUndo);
  await settle();
  assert.ok(!t.history.canUndo);
});

test("what others painted comes beneath the stroke under the pointer", async () => {
  const t = setUp([ok(6, { between: [edit(3, "yo")] }), ok(7)]);
  const brush = new Brush(t.model, t.history);
  const { x } = t.model.row(3).cells.find((c) => c.column === "B2");
  t.history.stroke([edit(1, "p")]);
  brush.begin(3, x);
  await settle();
  assert.equal(t.model.mark(3, "B2").stitch, "p", "the pointer is not drawn over");
  brush.drop();
  assert.equal(t.model.mark(3, "B2").stitch, "yo", "dropped, it leaves what others painted");
});

test("a page that was under way while a stroke was saved is brought up to date", async () => {
  const t = setUp([ok(5), ok(6, { between: [edit(3, "yo")] }), undefined]);
  for (const [round, value] of [[1, "p"], [4, "ssk"], [4, "yo"]]) {
    t.history.stroke([edit(round, value)]);
    await settle();
  }
  for (const [revision, first] of [[4, "p"], [5, ""], [6, ""]]) {
    const model = new Model({ ...page, revision });
    const history = new History(model, t.line, () => {});
    history.takeUp();
    assert.equal(model.mark(1, "B2").stitch, first, `revision ${revision}`);
    assert.equal(model.mark(3, "B2").stitch, revision < 6 ? "yo" : "");
    assert.equal(model.mark(4, "B2").stitch, "yo", "the unsent stroke is on top");
    assert.ok(history.canUndo);
  }
});

test("a drag names each round that it changed once", async () => {
  const t = setUp([ok(5)]);
  const brush = new Brush(t.model, t.history);
  brush.choose({ layer: "colour", value: "d" });
  const xs = t.model.row(2).cells.map((c) => c.x).sort((a, b) => a - b);
  brush.begin(2, xs[0]);
  assert.deepEqual(brush.move(2, xs[4]), [2]);
  assert.deepEqual(brush.move(2, xs[4]), [], "a pointer at rest changes nothing");
  brush.end();
  await settle();
});

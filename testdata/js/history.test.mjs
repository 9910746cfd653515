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
  const { x } = t.model.row(3).column("B2");
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
    const history = new History(model, t.outbox, () => {});
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
  const xs = t.model.row(2).shown.map((c) => c.x);
  brush.begin(2, xs[0]);
  assert.deepEqual(brush.move(2, xs[4]), [2]);
  assert.deepEqual(brush.move(2, xs[4]), [], "a pointer at rest changes nothing");
  brush.end();
  await settle();
});

test("what others draw is seen at once, beneath what waits", async () => {
  const t = setUp([undefined]);
  t.history.stroke([edit(1, "p")]);
  await settle();
  const news = { revision: 6, decided: 1, strokes: [{ revision: 5, edits: [edit(1, "yo")] }, { revision: 6, edits: [edit(3, "yo")] }], can_undo: true, can_redo: false };
  t.outbox.hear(news);
  assert.equal(t.model.mark(1, "B2").stitch, "p", "ours will come after theirs");
  assert.equal(t.model.mark(3, "B2").stitch, "yo");
  t.outbox.hear(news);
  assert.equal(t.outbox.delivered.length, 2, "news that is known is passed over");
  assert.equal(t.outbox.revision, 6);
});

test("news that outran a reply keeps the order of the server", async () => {
  const t = setUp([]);
  let answer;
  t.outbox.send = () => new Promise((done) => { answer = done; });
  t.history.stroke([edit(1, "p")]);
  // Ours was drawn as revision 5, theirs over it as 6; the news comes first.
  t.outbox.hear({ revision: 6, decided: 1, strokes: [{ revision: 5, edits: [edit(1, "p")] }, { revision: 6, edits: [edit(1, "yo")] }], can_undo: true, can_redo: false });
  assert.equal(t.model.mark(1, "B2").stitch, "p", "as long as ours waits it is on top");
  answer(ok(5));
  await settle();
  assert.equal(t.model.mark(1, "B2").stitch, "yo", "theirs was the last on this cell");
  assert.equal(t.outbox.revision, 6);
});

test("shapes are drawn anew with every move, and the last stands", async () => {
  const t = setUp([ok(5)]);
  const brush = new Brush(t.model, t.history);
  brush.choose({ shape: "rectangle", layer: "colour", value: "b" });
  const xs = t.model.row(2).shown.map((c) => c.x);
  brush.begin(2, xs[0]);
  brush.move(4, xs[6]);
  brush.move(3, xs[1]);
  brush.end();
  await settle();
  assert.equal(t.sent[0].edits.length, 4);
  assert.equal(t.model.marks.size, 4);
});

test("the mirror brush paints both sides, each with its own lean", async () => {
  const t = setUp([ok(5)]);
  const brush = new Brush(t.model, t.history);
  brush.choose({ layer: "stitch", value: "k2tog", mirror: true });
  brush.begin(4, t.model.row(4).column("A1").x);
  brush.end();
  await settle();
  assert.deepEqual(t.sent[0].edits.map((e) => `${e.column} ${e.value}`), ["A1 k2tog", "Z1 ssk"]);
});

test("a stroke that is sent again lies beneath what came later", async () => {
  const t = setUp([ok(2, { later: [edit(1, "yo")] })]);
  t.history.stroke([edit(1, "p")]);
  await settle();
  assert.equal(t.model.mark(1, "B2").stitch, "yo");
  assert.equal(t.outbox.revision, 4);
});

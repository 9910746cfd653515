import assert from "node:assert/strict";
import test from "node:test";
import { Model } from "../../static/js/chart/model.js";
import { between } from "../../static/js/chart/cells.js";
import { Brush } from "../../static/js/chart/tools.js";
import { act, moved } from "../../static/js/chart/keys.js";
import { edit, ok, page, settle, setUp } from "./server.mjs";

test("strokes go one at a time, each after the revision of the one before", async () => {
  const t = setUp([ok(5), ok(6)]);
  t.history.stroke([edit(1, "p")]);
  t.history.stroke([edit(3, "yo")]);
  assert.equal(t.sent.length, 1, "the second waits");
  await settle();
  assert.deepEqual(t.sent, [{ after: 4, key: "k1", edits: [edit(1, "p")] }, { after: 5, key: "k2", edits: [edit(3, "yo")] }]);
  assert.equal(t.heard.at(-1), "saved");
  assert.deepEqual(t.store.value, [], "nothing is kept once it is delivered");
});

test("without a connection strokes are kept and tried again, later each time", async () => {
  const t = setUp([undefined, undefined, ok(5)]);
  t.history.stroke([edit(1, "p")]);
  await settle();
  assert.equal(t.heard.at(-1), "unsaved");
  assert.equal(t.store.value.length, 1);
  t.pauses.shift().f();
  await settle();
  const second = t.pauses.shift();
  assert.equal(second.ms, 2000);
  second.f();
  await settle();
  assert.equal(t.heard.at(-1), "saved");
  assert.equal(t.outbox.revision, 5);
});

test("a stroke that is refused is taken back", async () => {
  const t = setUp([{ status: 400, reply: { error: ["edits[0].value: no"] } }]);
  const before = structuredClone(t.model.marks);
  t.history.stroke([edit(1, "p")]);
  await settle();
  assert.deepEqual(t.model.marks, before);
  assert.ok(t.heard.includes("refused"));
});

test("what others painted comes beneath the strokes that wait", async () => {
  const t = setUp([ok(6, { between: [edit(1, "yo"), edit(3, "yo")] }), ok(7)]);
  t.history.stroke([edit(1, "p")]);
  t.history.stroke([edit(3, "ssk")]);
  await settle();
  assert.equal(t.model.mark(1, "B2").stitch, "p", "ours came after theirs");
  assert.equal(t.model.mark(3, "B2").stitch, "ssk");
  assert.equal(t.outbox.waiting.length, 0);
});

test("undo is asked of the server and what it did is shown", async () => {
  const t = setUp([ok(5), ok(6, { edits: [edit(1, "")], can_undo: false, can_redo: true })]);
  t.history.stroke([edit(1, "p")]);
  t.history.undo();
  await settle();
  assert.deepEqual(t.sent[1], { after: 5, key: "k2", undo: true });
  assert.equal(t.model.mark(1, "B2").stitch, "");
  assert.ok(t.history.canRedo && !t.history.canUndo);
});

test("an answer that is no chart's delivers nothing", async () => {
  const t = setUp([{ status: 200, reply: undefined }, ok(5)]);
  t.history.stroke([edit(1, "p")]);
  await settle();
  assert.equal(t.heard.at(-1), "unsaved");
  assert.equal(t.store.value.length, 1);
  t.pauses.shift().f();
  await settle();
  assert.equal(t.heard.at(-1), "saved");
});

test("what an earlier visit could not deliver is drawn, then sent", async () => {
  const before = setUp([undefined]);
  before.history.stroke([edit(1, "p")]);
  await settle();
  const t = setUp([ok(5)], before.store);
  t.history.takeUp();
  assert.equal(t.model.mark(1, "B2").stitch, "p");
  assert.ok(t.history.canUndo);
  await t.outbox.push();
  assert.deepEqual(t.sent, [{ after: 4, key: "k1", edits: [edit(1, "p")] }]);
  assert.deepEqual(t.store.value, []);
});

test("a drag is one stroke without holes; a dropped one leaves nothing", async () => {
  const t = setUp([ok(5)]);
  const brush = new Brush(t.model, t.history);
  brush.choose({ layer: "colour", value: "c" });
  const xs = t.model.row(4).shown.map((c) => c.x);
  brush.begin(4, xs[0]);
  brush.move(4, xs[5]);
  brush.end();
  assert.equal(t.sent[0].edits.length, 6);
  const before = structuredClone(t.model.marks);
  brush.begin(2, xs[3]);
  brush.drop();
  assert.deepEqual(t.model.marks, before);
  assert.deepEqual(between(1, 1, 3, 2).at(-1), [3, 2]);
  await settle();
});

test("keys move within the chart, over places without a stitch", () => {
  const model = new Model(page);
  const key = (name, more = {}) => act({ key: name, ctrlKey: false, metaKey: false, altKey: false, shiftKey: false, ...more });
  assert.deepEqual(key("ArrowUp"), { move: [1, 0] });
  assert.deepEqual(key("ArrowUp", { shiftKey: true }), { extend: [1, 0] });
  assert.deepEqual(key("ArrowLeft", { altKey: true }), { shift: [0, -1] });
  assert.deepEqual(key("z", { ctrlKey: true, shiftKey: true }), { run: "redo" });
  assert.deepEqual(key("?"), { run: "commands" });
  assert.equal(key("p", { ctrlKey: true }), undefined);
  assert.deepEqual(moved(model, { y: 4, x: 0 }, [-9, -9]), { y: 1, x: 1 });
  assert.deepEqual(moved(model, { y: 1, x: 5 }, [0, Infinity]), { y: 1, x: 11 });
  const runs = [{ x: 5, n: 2, column: "B1", step: 1, op: "k" }, { x: 1, n: 2, column: "H1", step: 1, op: "k" }];
  const columns = new Model({ ...page, rows: [{ ...page.rows[0], runs }] });
  assert.deepEqual(moved(columns, { y: 1, x: 1 }, [0, 1]), { y: 1, x: 4 });
  assert.deepEqual(moved(columns, { y: 1, x: 4 }, [0, -1]), { y: 1, x: 1 });
});

test("two windows that share what is kept lose nothing", async () => {
  const first = setUp([undefined]);
  first.history.stroke([edit(1, "p")]);
  await settle();
  const second = setUp([ok(5), ok(6)], first.store);
  second.outbox.key = () => "other";
  second.history.stroke([edit(3, "yo")]);
  await settle();
  assert.equal(second.sent[0].key, "k1", "it delivers what it found, too");
  await settle();
  assert.deepEqual(first.store.value, []);
});

test("a server that can't save now is asked again, and its reason is told", async () => {
  const t = setUp([{ status: 503, reply: { error: ["The disk is full."] } }, ok(5)]);
  const reasons = [];
  const on = t.outbox.on;
  t.outbox.on = (what, detail) => {
    if (what === "unsaved") reasons.push(detail.why);
    on(what, detail);
  };
  t.history.stroke([edit(1, "p")]);
  await settle();
  assert.deepEqual(reasons, ["The disk is full."]);
  assert.equal(t.store.value.length, 1, "kept until it is there");
  t.pauses.shift().f();
  await settle();
  assert.equal(t.heard.at(-1), "saved");
  assert.equal(t.sent.length, 2);
  assert.deepEqual(t.sent[0], t.sent[1], "the same stroke under the same key");
});

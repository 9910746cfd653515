import assert from "node:assert/strict";
import test from "node:test";
import { carry } from "../../static/js/chart/carry.js";
import { edit, ok, settle, setUp } from "./server.mjs";

const file = { mitt: "m1", restored: 7 };
const put = (restored, mitt = "m1") => ({ mitt, restored, revision: 2 });
const stale = { status: 409, reply: { error: ["A backup was put back."], stale: true } };
const names = (list) => list.map((r) => r.key).join("");

test("a stroke of a file that is gone waits for the new one and is drawn there once", async () => {
  const t = setUp([stale, ok(3), ok(4)], undefined, file);
  t.history.stroke([edit(1, "p")]);
  t.history.stroke([edit(3, "yo")]);
  await settle();
  assert.equal(t.heard.at(-1), "stale");
  assert.equal(t.sent.length, 1, "nothing more is sent to it");
  assert.equal(t.store.value.length, 2);
  assert.ok(t.outbox.apart(put(8)) && t.outbox.apart(put(7)));
  t.outbox.renew(put(8));
  await settle();
  assert.deepEqual(t.sent.slice(1), [
    { after: 2, restored: 8, key: "k1", edits: [edit(1, "p")] }, { after: 3, restored: 8, key: "k2", edits: [edit(3, "yo")] },
  ]);
  assert.deepEqual(t.store.value, []);
  assert.ok(!t.outbox.apart(put(8)) && t.outbox.older && t.outbox.late === 2);
});

test("the chart is asked for until it comes", async () => {
  const t = setUp([stale], undefined, file);
  t.history.stroke([edit(1, "p")]);
  await settle();
  t.pauses.shift().f();
  t.pauses.shift().f();
  assert.equal(t.heard.filter((what) => what === "stale").length, 3);
  assert.equal(t.sent.length, 1);
});

test("an answer that comes after the file has changed is no delivery", async () => {
  let answer;
  const t = setUp([ok(3)], undefined, file);
  const { send } = t.outbox;
  t.outbox.send = () => new Promise((done) => { answer = done; });
  t.history.stroke([edit(1, "p")]);
  t.outbox.send = send;
  t.outbox.renew(put(8));
  answer(ok(5));
  await settle();
  assert.equal(t.sent.length, 1);
  assert.deepEqual(t.store.value, []);
});

test("what waits outlives the page, and what can't be sent now is kept", async () => {
  for (const status of [401, 403, 404, 429]) {
    const first = setUp([{ status, reply: { error: ["There is no mitt 5."] } }], undefined, file);
    first.history.stroke([edit(1, "p")]);
    await settle();
    assert.equal(first.heard.at(-1), "unsaved", `${status}`);
    const second = setUp([ok(3)], first.store, put(8));
    second.history.takeUp();
    assert.equal(second.model.mark(1, "B2").stitch, "p");
    await second.outbox.push();
    assert.equal(second.sent.length, 1);
    assert.deepEqual(second.store.value, []);
  }
});

test("an undo is carried over only with the stroke that it takes back", () => {
  const r = (key, more) => ({ key, mitt: "m1", restored: 7, ...more });
  const [stroke, undo, redo] = [{ edits: [] }, { undo: true }, { redo: true }];
  const now = carry([r("a", undo), r("b", stroke), r("c", undo), r("d", redo), r("e", redo), r("f", undo), r("g", undo)], { mitt: "m1", restored: 8 });
  assert.equal(names(now.waiting), "bcdf");
  assert.equal(names(now.left), "aeg");
  const same = carry([r("a", undo), r("b", redo)], { mitt: "m1", restored: 7 });
  assert.equal(names(same.waiting), "ab", "in the same file all stand");
});

test("what was drawn on another mitt of the same number is not laid on this one", async () => {
  const first = setUp([undefined], undefined, file);
  first.history.stroke([edit(1, "p")]);
  await settle();
  const second = setUp([], first.store, put(8, "m2"));
  second.history.takeUp();
  await second.outbox.push();
  assert.equal(second.model.mark(1, "B2").stitch, "");
  assert.equal(second.sent.length, 0);
  assert.equal(second.outbox.strange.length, 1);
  assert.equal(second.store.value.length, 1, "kept until somebody decides");
  second.outbox.forget();
  assert.deepEqual(second.store.value, []);
});

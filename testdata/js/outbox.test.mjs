import assert from "node:assert/strict";
import test from "node:test";
import { Needles } from "../../static/js/needles.js";
import { Outbox } from "../../static/js/outbox.js";
import { outboxOf } from "../../static/js/try.js";

const settle = () => new Promise((done) => setImmediate(done));
const rounds = () => [1, 2, 3].map((round) => ({ section: "cuff", round, is_round: true, note: "" }));
const never = () => assert.fail("it is sent again by itself");
const ok = (revision) => ({ status: 200, reply: { revision } });
const refusals = (heard) => heard.filter(([what]) => what !== "saving").map(([what, { why, again } = {}]) => [what, why, again]);

// setUp has a server that answers as told (undefined: it is away) and no clock.
// make takes href and options.
function setUp(answers, make = (href, options) => new Outbox({ href, ...options }), more = {}) {
  const t = { sent: [], heard: [], pauses: [], store: [] };
  let n = 0;
  t.outbox = make("/there", {
    send: async (_, body) => {
      t.sent.push(body);
      const answer = answers.shift();
      if (!answer) throw new TypeError("away");
      return answer;
    },
    keep: {
      get: () => structuredClone(t.store), put: (r) => t.store.push(r), has: (key) => t.store.some((r) => r.key === key),
      drop: (key) => { t.store = t.store.filter((r) => r.key !== key); },
    },
    key: () => `k${++n}`, later: (f, ms) => t.pauses.push({ f, ms }), on: (...args) => t.heard.push(args), ...more,
  });
  return t;
}

test("counts and notes go out in order, each once, as they are", async () => {
  const t = setUp([undefined, ok(1), ok(2)]);
  const e = new Needles(rounds(), 0, "right");
  t.outbox.add(e.go(1));
  t.outbox.add(e.note("a slip"));
  await settle();
  assert.equal(t.store.length, 2, "both are kept");
  assert.ok(t.outbox.kept);
  t.pauses.shift().f();
  await settle();
  await settle();
  assert.deepEqual(t.sent.map((s) => s.key), ["k1", "k1", "k2"]);
  assert.deepEqual(t.sent[2], { side: "right", note: "a slip", section: "cuff", round: 2, key: "k2" });
  assert.equal(t.store.length, 0);
  assert.ok(!t.outbox.unsent);
});

test("what is added while the server is away is tried at once, and there is one next try", async () => {
  const t = setUp([undefined, undefined, undefined, undefined, ok(1), ok(2), ok(3), undefined]);
  for (let round = 1; round <= 3; round++) {
    t.outbox.add({ round });
    await settle();
  }
  assert.equal(t.sent.length, 3);
  assert.deepEqual(t.pauses.map((p) => p.ms), [1000]);
  t.pauses.shift().f();
  await settle();
  assert.deepEqual(t.pauses.map((p) => p.ms), [2000]);
  t.outbox.push(); // the connection is back
  for (let i = 0; i < 3; i++) await settle();
  assert.equal(t.store.length, 0);
  const stale = t.pauses.shift();
  t.outbox.add({ round: 4 });
  await settle();
  assert.deepEqual(t.pauses.map((p) => p.ms), [1000], "the pause is short again");
  stale.f();
  await settle();
  assert.equal(t.sent.length, 8, "the try of before does nothing any more");
});

test("pauses grow to half a minute", async () => {
  const t = setUp([]);
  t.outbox.add({});
  const pauses = [];
  for (let i = 0; i < 7; i++) {
    await settle();
    const { f, ms } = t.pauses.shift();
    pauses.push(ms);
    f();
  }
  assert.deepEqual(pauses, [1000, 2000, 4000, 8000, 16_000, 30_000, 30_000]);
});

test("a form is sent until it arrives; what is changed meanwhile goes instead", async () => {
  const answers = [undefined, { status: 502 }, { status: 200, reply: { to: "/there" } }];
  const t = setUp(answers, outboxOf);
  t.outbox.replace({ body: "first" });
  await settle();
  t.outbox.replace({ body: "second" });
  assert.equal(t.sent.length, 1, "not two at a time");
  t.pauses.shift().f();
  await settle();
  t.pauses.shift().f();
  await settle();
  assert.deepEqual(t.sent, ["first", "second", "second"]);
  const heard = t.heard.filter(([what]) => what !== "saving");
  assert.deepEqual(heard.map(([what, detail]) => [what, detail?.why ?? detail?.reply.to]), [
    ["unsaved", "no connection"], ["unsaved", "no connection"], ["delivered", "/there"], ["saved", undefined],
  ]);
  answers.push({ status: 400, reply: { error: ["round: is 99"] } });
  t.outbox.replace({ body: "third" });
  await settle();
  const [what, { status, lines }] = t.heard.at(-2);
  assert.deepEqual([what, status, lines], ["refused", 400, ["round: is 99"]]);
});

test("of a form that is sent twice before its answer, one arrives", async () => {
  const t = setUp([{ status: 200, reply: { to: "/there" } }], outboxOf);
  t.outbox.replace({ body: "first" });
  t.outbox.replace({ body: "again" });
  await settle();
  await settle();
  assert.deepEqual(t.sent, ["first"]);
  assert.ok(!t.outbox.unsent);
});

test("an answer that is not the server's own is no delivery", async () => {
  const t = setUp([{ status: 200 }, { status: 200, reply: { to: "/there" } }], outboxOf);
  t.outbox.replace({ body: "first" });
  await settle();
  assert.deepEqual(refusals(t.heard), [["unsaved", "no connection", true]]);
  t.pauses.shift().f();
  await settle();
  assert.equal(t.heard.at(-1)[0], "saved");
});

test("what is too slow to arrive is told and stays; it is not sent again by itself", async () => {
  const slow = { status: 413, reply: { error: ["Too slow."] } };
  const form = setUp([slow, { status: 413 }, { status: 200, reply: { to: "/there" } }], outboxOf, { later: never });
  for (let i = 0; i < 3; i++) {
    form.outbox.replace({ body: "a photograph" });
    await settle();
  }
  assert.deepEqual(refusals(form.heard).slice(0, 3), [
    ["unsaved", "Too slow.", false], ["unsaved", "this is too slow or too large to send", false], ["delivered", undefined, undefined],
  ]);

  const t = setUp([slow, { status: 403 }, ok(2), ok(3)], undefined, { later: never });
  t.outbox.add({ round: 1 });
  await settle();
  assert.deepEqual(t.heard.at(-1), ["unsaved", { why: "Too slow.", again: false }]);
  t.outbox.add({ round: 2 });
  await settle();
  assert.deepEqual(t.heard.at(-1), ["unsaved", { why: "this device is not let in", again: false }]);
  assert.equal(t.store.length, 2, "both are kept, also while this device is let out");
  t.outbox.push();
  await settle();
  await settle();
  assert.equal(t.heard.at(-1)[0], "saved");
  assert.equal(t.store.length, 0);
});

test("what an earlier page kept goes first; who waits for the answer is told", async () => {
  const earlier = setUp([undefined]);
  earlier.outbox.add({ round: 1 });
  await settle();
  const t = setUp([ok(1), ok(2)], undefined, { keep: { ...earlier.outbox.keep } });
  t.outbox.add({ round: 2 });
  await t.outbox.answered;
  assert.deepEqual(t.sent[0], { round: 1, key: "k1" });
  await settle();
  assert.deepEqual(t.sent.map((s) => s.round), [1, 2]);
});

import assert from "node:assert/strict";
import test from "node:test";
import { Line } from "../../static/js/chart/save.js";
import { Elbow, windowOf } from "../../static/js/needles.js";
import { knitted, Sender, topOf } from "../../static/js/tries.js";

const rounds = () => [1, 2, 3].map((round) => ({ section: "cuff", round, is_round: true, note: "" })).concat({ section: "gusset", round: 1, is_round: true, note: "" });
const mitt = () => [{ section: "cuff", round: 0, is_round: false, note: "" }, ...rounds(), { section: "gusset", round: 2000, is_round: false, note: "" }];
const settle = () => new Promise((done) => setImmediate(done));

test("a press counts a round, and none beyond either end", () => {
  const e = new Elbow(rounds(), 2, "left");
  assert.deepEqual(e.go(1), { side: "left", section: "cuff", round: 3 });
  assert.deepEqual(e.go(1), { side: "left", section: "gusset", round: 1 });
  assert.equal(e.go(1), undefined, "it is done");
  assert.equal(e.now, undefined);
  for (let i = 0; i < 3; i++) e.go(-1);
  assert.deepEqual(e.go(-1), { side: "left", section: "", round: 0 }, "the cast-on");
  assert.equal(e.go(-1), undefined);
});

test("casting on and binding off are counted by their own names, and have no notes", () => {
  const e = new Elbow(mitt(), 0, "left");
  assert.equal(e.note("x"), undefined);
  assert.deepEqual(e.go(1), { side: "left", section: "cuff", round: 0 });
  for (let i = 0; i < 4; i++) e.go(1);
  assert.equal(e.note("x"), undefined, "binding off is no round");
  assert.deepEqual(e.go(1), { side: "left", section: "gusset", round: 2000 });
  const again = new Elbow(mitt(), 0, "left");
  again.recall([{ side: "left", section: "cuff", round: 0 }, { side: "left", section: "gusset", round: 2000 }]);
  assert.equal(again.nth, 6);
  again.recall([{ side: "left", section: "cuff", round: 0 }]);
  assert.equal(again.nth, 1, "cast on, and no round knitted");
});

test("what could not be delivered is where the work stands", () => {
  const e = new Elbow(rounds(), 0, "right");
  e.recall([
    { side: "right", section: "cuff", round: 1 },
    { side: "right", section: "cuff", round: 2, note: "loose" },
    { side: "right", section: "cuff", round: 2 },
    { side: "left", section: "gusset", round: 1 },
  ]);
  assert.equal(e.nth, 2, "the other hand's counts are its own");
  assert.equal(e.tasks[1].note, "loose");
});

test("another device's counts and notes are followed, another plan is not", () => {
  const e = new Elbow(rounds(), 1, "right");
  const elsewhere = rounds();
  elsewhere[2].note = "from the tablet";
  assert.equal(e.follow({ nth: 2, tasks: elsewhere }), true);
  assert.equal(e.now.note, "from the tablet");
  assert.equal(e.follow({ nth: 3, tasks: elsewhere.slice(1) }), false);
  assert.equal(e.nth, 2);
});

test("counts and notes go out in order, each once, as they are", async () => {
  const sent = [];
  const answers = [undefined, { status: 200, reply: { revision: 1 } }, { status: 200, reply: { revision: 2 } }];
  const pauses = [];
  const store = [];
  let n = 0;
  const line = new Line({
    href: "/needles", revision: 0, keep: { get: () => [], put: (r) => store.push(r), drop: (key) => store.splice(store.findIndex((r) => r.key === key), 1) },
    send: async (_, body) => {
      sent.push(body);
      const answer = answers.shift();
      if (!answer) throw new Error("no connection");
      return answer;
    },
    later: (f) => pauses.push(f), on: () => {}, wire: (request) => request, key: () => `k${++n}`,
  });
  const e = new Elbow(rounds(), 0, "right");
  line.add(e.go(1));
  line.add(e.note("a slip"));
  await settle();
  assert.equal(store.length, 2, "both are kept");
  pauses.shift()();
  await settle();
  await settle();
  assert.deepEqual(sent.map((s) => s.key), ["k1", "k1", "k2"]);
  assert.deepEqual(sent[2], { side: "right", note: "a slip", section: "cuff", round: 2, key: "k2" });
  assert.equal(store.length, 0);
});

test("a strip shows two rows on each side, and ends with the chart", () => {
  const strip = { bottom: 100, cell_height: 5, width: 60, rows: 9 };
  assert.deepEqual(windowOf(strip, 5), [0, 65, 60, 25]);
  assert.deepEqual(windowOf(strip, 1), [0, 85, 60, 15]);
  assert.deepEqual(windowOf(strip, 9), [0, 55, 60, 15]);
});

test("a try asks about what is knitted", () => {
  const parting = { felt: "hand top thumb", whole: "gusset 20" };
  assert.equal(knitted(parting, "gusset", 19), false);
  assert.equal(knitted(parting, "gusset", 20), true);
  assert.equal(knitted(parting, "hand", 1), true);
  assert.equal(knitted({ felt: "thumb" }, "hand", 12), false);
});

test("a form is sent until it arrives; what is changed meanwhile goes instead", async () => {
  const heard = [];
  const sent = [];
  const pauses = [];
  const answers = [undefined, { status: 502 }, { status: 200, reply: { to: "/there" } }];
  const sender = new Sender({
    send: async (body) => {
      sent.push(body);
      const answer = answers.shift();
      if (!answer) throw new Error("no connection");
      return answer;
    },
    later: (f) => pauses.push(f), on: (...args) => heard.push(args),
  });
  sender.put("first");
  await settle();
  sender.put("second");
  assert.equal(sent.length, 1, "not two at a time");
  pauses.shift()();
  await settle();
  pauses.shift()();
  await settle();
  assert.deepEqual(sent, ["first", "second", "second"]);
  assert.deepEqual(heard, [["waiting", "No connection"], ["waiting", "No connection"], ["done", "/there"]]);
  answers.push({ status: 400, reply: { error: ["round: is 99"] } });
  sender.put("third");
  await settle();
  assert.deepEqual(heard.at(-1), ["refused", ["round: is 99"]]);
});

test("what is too slow to arrive is told and stays; it is not sent again by itself", async () => {
  const answers = [{ status: 413, reply: { error: ["Too slow."] } }, { status: 413 }, { status: 200, reply: { to: "/there" } }];
  const heard = [];
  const never = () => assert.fail("it is sent again by itself");
  const sender = new Sender({ send: async () => answers.shift(), later: never, on: (...args) => heard.push(args) });
  for (let i = 0; i < 3; i++) {
    sender.put("a photograph");
    await settle();
  }
  assert.deepEqual(heard, [["held", "Too slow."], ["held", "this is too slow or too large to send"], ["done", "/there"]]);

  const kept = [];
  answers.push({ status: 413, reply: { error: ["Too slow."] } }, { status: 403 }, { status: 200, reply: { revision: 2 } }, { status: 200, reply: { revision: 3 } });
  const line = new Line({
    href: "/needles", revision: 0, keep: { get: () => [], put: (r) => kept.push(r), drop: (key) => kept.splice(kept.findIndex((r) => r.key === key), 1) },
    send: async () => answers.shift(), later: never, on: (...args) => heard.push(args), key: () => String(kept.length),
  });
  line.add({ round: 1 });
  await settle();
  assert.deepEqual(heard.at(-1), ["unsaved", "Too slow."]);
  line.add({ round: 2 });
  await settle();
  assert.equal(kept.length, 2, "both are kept, also while this device is let out");
  line.push();
  await settle();
  await settle();
  assert.equal(heard.at(-1)[0], "saved");
  assert.equal(kept.length, 0);
});

test("the top of the gusset is told for the round that is named", () => {
  const tops = ["six", "four", "two"];
  assert.equal(topOf(tops, "gusset", "1"), "four");
  assert.equal(topOf(tops, "gusset", " 2 "), "two");
  for (const round of ["", "0", "3", "1.5", "-1", "x"]) assert.equal(topOf(tops, "gusset", round), "", round);
  assert.equal(topOf(tops, "hand", "1"), "");
});

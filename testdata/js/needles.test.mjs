import assert from "node:assert/strict";
import test from "node:test";
import { Needles, waits } from "../../static/js/needles.js";
import { Strips, toned, windowOf } from "../../static/js/strips.js";
import { knitted, topOf } from "../../static/js/try.js";

const rounds = () => [1, 2, 3].map((round) => ({ section: "cuff", part: "cuff", round, is_round: true, noun: "round", note: "" })).concat({ section: "gusset", part: "gusset", round: 1, is_round: true, noun: "round", note: "" });
const mitt = () => [{ section: "cuff", part: "cuff", round: 0, is_round: false, note: "" }, ...rounds(), { section: "gusset", part: "gusset", round: 2000, is_round: false, note: "" }];

test("a press counts a round, and none beyond either end", () => {
  const e = new Needles(rounds(), 2, "left");
  assert.deepEqual(e.go(1), { side: "left", section: "cuff", round: 3 });
  assert.deepEqual(e.go(1), { side: "left", section: "gusset", round: 1 });
  assert.equal(e.go(1), undefined, "it is done");
  assert.equal(e.now, undefined);
  for (let i = 0; i < 3; i++) e.go(-1);
  assert.deepEqual(e.go(-1), { side: "left", section: "", round: 0 }, "the cast-on");
  assert.equal(e.go(-1), undefined);
});

test("casting on and binding off are counted by their own names, and have no notes", () => {
  const e = new Needles(mitt(), 0, "left");
  assert.equal(e.note("x"), undefined);
  assert.deepEqual(e.go(1), { side: "left", section: "cuff", round: 0 });
  for (let i = 0; i < 4; i++) e.go(1);
  assert.equal(e.note("x"), undefined, "binding off is no round");
  assert.deepEqual(e.go(1), { side: "left", section: "gusset", round: 2000 });
  const again = new Needles(mitt(), 0, "left");
  again.recall([{ side: "left", section: "cuff", round: 0 }, { side: "left", section: "gusset", round: 2000 }]);
  assert.equal(again.nth, 6);
  again.recall([{ side: "left", section: "cuff", round: 0 }]);
  assert.equal(again.nth, 1, "cast on, and no round knitted");
});

test("the words of the trade are those of this round and the next", () => {
  const e = new Needles(rounds().map((t, i) => ({ ...t, terms: [["M1L"], [], ["bridge"], ["M1R"]][i] })), 0, "left");
  assert.deepEqual(e.terms, ["M1L"]);
  e.go(1);
  assert.deepEqual(e.terms, ["bridge"]);
  for (let i = 0; i < 3; i++) e.go(1);
  assert.deepEqual(e.terms, [], "it is done");
  assert.equal(e.madeOf, "each stitch: a round of the gusset");
});

test("a strip tells of places without a stitch only where it shows some", () => {
  const strip = { rows: 20, gaps: [1, 2] };
  assert.equal(toned(strip, 5), true, "rows 2 to 7");
  assert.equal(toned(strip, 6), false, "rows 3 to 8");
});

test("what could not be delivered is where the work stands", () => {
  const e = new Needles(rounds(), 0, "right");
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
  const e = new Needles(rounds(), 1, "right");
  const elsewhere = rounds();
  elsewhere[2].note = "from the tablet";
  assert.equal(e.follow({ nth: 2, tasks: elsewhere }), true);
  assert.equal(e.now.note, "from the tablet");
  assert.equal(e.follow({ nth: 3, tasks: elsewhere.slice(1) }), false);
  assert.equal(e.nth, 2);
});

test("a strip is always as high, with three rows below where there are so many", () => {
  const strip = { bottom: 100, cell_height: 5, width: 60, rows: 12 };
  assert.deepEqual(windowOf(strip, 6), [0, 60, 60, 30], "3 to 8");
  assert.deepEqual(windowOf(strip, 1), [0, 70, 60, 30]);
  assert.deepEqual(windowOf(strip, 12), [0, 40, 60, 30]);
  assert.deepEqual(windowOf({ ...strip, rows: 4 }, 2), [0, 80, 60, 20], "a chart that has no more");
  assert.deepEqual(windowOf({ ...strip, needle: 10 }, 6, true), [0, 60, 60, 40], "with the needle under it");
  assert.deepEqual(windowOf({ ...strip, needle: 10 }, 6), [0, 60, 60, 30], "nothing is on the needle");
});

test("a strip is shown where its rows are drawn, and everywhere once the whole has come", async () => {
  const part = { view: "hand", bottom: 100, cell_height: 5, width: 60, rows: 40, from: 4, to: 21 };
  const answers = [() => Promise.reject(new TypeError("Failed to fetch")), () => ({ ok: false }), () => ({ ok: true, json: () => Promise.reject(new SyntaxError("<html>")) }),
    () => ({ ok: true, json: async () => ({ strips: [{ ...part, from: 1, to: 40, svg: "<svg/>" }, { ...part, view: "thumb", rows: 9, from: 1, to: 9, svg: "<svg/>" }] }) })];
  const asked = [];
  const strips = new Strips([part], "/mitts/1/strips?side=left", async (href) => answers[asked.push(href) - 1]());
  const shown = (view) => [0, 1, 6, 7, 8, 18, 19, 20, 40, 41].filter((row) => strips.has(view, row));
  assert.deepEqual(shown("hand"), [7, 8, 18, 19], "4 to 9 are about 7, 16 to 21 about 19");
  assert.deepEqual(shown("thumb"), []);
  for (let i = 0; i < 3; i++) assert.equal(await strips.fetch(), false, "it can be asked again");
  assert.deepEqual(shown("hand"), [7, 8, 18, 19], "what came with the page stays");
  const [first, second] = await Promise.all([strips.fetch(), strips.fetch()]);
  assert.deepEqual([first, second], [true, false], "asked once at a time");
  assert.deepEqual(shown("hand"), [1, 6, 7, 8, 18, 19, 20, 40]);
  assert.deepEqual(shown("thumb"), [1, 6, 7, 8]);
  assert.equal(await strips.fetch(), false);
  assert.deepEqual(asked, Array(4).fill("/mitts/1/strips?side=left"), "and once they are here, not again");
});

test("the page tells what was, what is next, and where a note waits", () => {
  const round = (n, more) => ({ section: "gusset", part: "gusset", round: n, is_round: true, knitted: n, name: `round ${n}`, title: `Round ${n}`, after: 40 + n, note: "", ...more });
  const e = new Needles([round(1), round(2), round(3, { note: "try it on" }), { section: "gusset", part: "gusset", round: 2000, is_round: false, knitted: 3, name: "bind off", note: "" }], 0, "right");
  assert.deepEqual([e.made, e.onward, e.backward], ["round 1 of 3", "then round 2, 42 stitches", ""]);
  assert.deepEqual(e.later.map((t) => t.name), ["round 2", "round 3"]);
  assert.equal(e.pinned, "Round 3 of the gusset: try it on");
  e.go(1);
  assert.deepEqual(e.stitches("gusset", 4), ["knitted", "present", "to-come", "to-come"]);
  e.go(1);
  assert.deepEqual([e.onward, e.backward, e.pinned], ["then bind off", "to round 2", ""]);
  e.go(1);
  assert.deepEqual([e.made, e.onward], ["3 of 3 rounds knitted", "then this hand is done"]);
  assert.deepEqual(e.stitches("gusset", 3), ["knitted", "knitted", "knitted"]);
});

test("offline words say what to do; another reason is named", () => {
  assert.equal(waits("no connection", 3), "Offline: keep this page open; rounds are sent later. 3 wait.");
  assert.equal(waits("This is too slow to send.", 1), "This is too slow to send: keep this page open; 1 waits here.");
});

test("a try asks about what is knitted", () => {
  const parting = { felt: "hand top thumb", whole: "gusset 20" };
  assert.equal(knitted(parting, "gusset", 19), false);
  assert.equal(knitted(parting, "gusset", 20), true);
  assert.equal(knitted(parting, "hand", 1), true);
  assert.equal(knitted({ felt: "thumb" }, "hand", 12), false);
});

test("the top of the gusset is told for the round that is named", () => {
  const tops = { gusset: ["six", "four", "two"] };
  assert.equal(topOf(tops, "gusset", "1"), "four");
  assert.equal(topOf(tops, "gusset", " 2 "), "two");
  for (const round of ["", "0", "3", "1.5", "-1", "x"]) assert.equal(topOf(tops, "gusset", round), "", round);
  assert.equal(topOf(tops, "hand", "1"), "");
});

import assert from "node:assert/strict";
import test from "node:test";
import { Needles, windowOf } from "../../static/js/needles.js";
import { knitted, topOf } from "../../static/js/try.js";

const rounds = () => [1, 2, 3].map((round) => ({ section: "cuff", round, is_round: true, note: "" })).concat({ section: "gusset", round: 1, is_round: true, note: "" });
const mitt = () => [{ section: "cuff", round: 0, is_round: false, note: "" }, ...rounds(), { section: "gusset", round: 2000, is_round: false, note: "" }];

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

test("the top of the gusset is told for the round that is named", () => {
  const tops = { gusset: ["six", "four", "two"] };
  assert.equal(topOf(tops, "gusset", "1"), "four");
  assert.equal(topOf(tops, "gusset", " 2 "), "two");
  for (const round of ["", "0", "3", "1.5", "-1", "x"]) assert.equal(topOf(tops, "gusset", round), "", round);
  assert.equal(topOf(tops, "hand", "1"), "");
});

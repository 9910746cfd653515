import assert from "node:assert/strict";
import test from "node:test";
import { offAt, placeOf, stopAt, tailOf, upOf } from "../../static/js/pull.js";

test("pulled out is tighter, let in looser, on either side of the hand", () => {
  for (const pull of [{ first: 80, step: -14 }, { first: 120, step: 14 }]) {
    for (const value of [-2, -1, 0, 1, 2]) {
      const x = placeOf(value, pull);
      assert.equal(stopAt(x, pull), value);
      assert.equal(stopAt(x + 6, pull), value, "nearly there");
    }
    assert.equal(stopAt(pull.first - 10 * pull.step, pull), -2, "into the mitt: as loose as can be said");
    assert.equal(stopAt(pull.first + 10 * pull.step, pull), 2);
  }
  assert.equal(placeOf(2, { first: 80, step: -14 }), 24, "the tight end is away from the mitt");
});

test("a tail leads from the mitt to the end of the tape", () => {
  assert.equal(tailOf(90, 40, 50), "M90 46.5L40 46.5 40 53.5 90 53.5Z");
});

test("a line moved up says that its end of the gusset is too low", () => {
  assert.deepEqual(offAt(4.3, 1), { length: "4", way: "low" });
  assert.deepEqual(offAt(-6, 1), { length: "6", way: "high" });
  assert.deepEqual(offAt(0.3, 1), { length: "0", way: "" });
  assert.deepEqual(offAt(-7.62, 25.4), { length: "0.3", way: "high" });
  for (const up of [4, -6, 11]) {
    const { length, way } = offAt(up, 1);
    assert.equal(upOf(length, way, 1), up, "the line stays where it was moved");
  }
  assert.equal(upOf("", "", 1), undefined);
  assert.equal(upOf("-4", "", 1), 4, "a sign says it by itself");
});

import assert from "node:assert/strict";
import test from "node:test";
import { placeOf, stopAt, tailOf } from "../../static/js/pull.js";

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

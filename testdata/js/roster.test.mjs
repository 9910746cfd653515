import assert from "node:assert/strict";
import test from "node:test";
import { placeAt, reorder } from "../../static/js/roster.js";

test("a student stands before the first whose middle is lower", () => {
  const boxes = [{ top: 100, bottom: 140 }, { top: 140, bottom: 220 }, { top: 220, bottom: 260 }];
  for (const [y, want] of [[-20, 0], [119, 0], [121, 1], [179, 1], [181, 2], [241, 3], [900, 3]]) assert.equal(placeAt(boxes, y), want, `${y}`);
  assert.equal(placeAt([], 5), 0);
});

test("a list is a new one after a move, and itself where nothing moves", () => {
  const list = ["a", "b", "c"];
  assert.deepEqual(reorder(list, "c", "b"), ["a", "c", "b"]);
  assert.deepEqual(reorder(list, "a", undefined), ["b", "c", "a"]);
  assert.deepEqual(reorder(list, "a", "c"), ["b", "a", "c"]);
  assert.deepEqual(reorder(list, "b", "c"), list);
  assert.deepEqual(reorder(list, "b", "b"), list, "put down on itself");
  assert.deepEqual(list, ["a", "b", "c"]);
});

import assert from "node:assert/strict";
import test from "node:test";
import { along } from "../../static/js/stops.js";

const box = (left, top) => ({ left, top, right: left + 40, bottom: top + 30 });

// WAI-ARIA Authoring Practices 1.2, toolbar: left and right, or up and down in an
// upright one; Home and End. That it stops at its ends is ours.
test("arrows go along a row, and stop at its ends", () => {
  const row = [box(0, 0), box(50, 0), box(100, 0)];
  assert.equal(along(row, 0, "ArrowRight"), 1);
  assert.equal(along(row, 2, "ArrowRight"), 2);
  assert.equal(along(row, 0, "ArrowLeft"), 0);
  assert.equal(along(row, 1, "Home"), 0);
  assert.equal(along(row, 1, "End"), 2);
  assert.equal(along(row, 1, "ArrowDown"), undefined, "the page's own key, where there is no line below");
  assert.equal(along(row, 1, "x"), undefined);
});

test("an upright row is walked up and down alone", () => {
  const ladder = [box(0, 0), box(0, 24), box(0, 80)];
  assert.equal(along(ladder, 1, "ArrowDown", true), 2);
  assert.equal(along(ladder, 1, "ArrowUp", true), 0);
  assert.equal(along(ladder, 1, "ArrowRight", true), undefined);
});

test("up and down find the nearest in the next line of a broken row", () => {
  const rail = [box(0, 0), box(50, 0), box(0, 40), box(50, 40), box(0, 110)];
  assert.equal(along(rail, 1, "ArrowDown"), 3);
  assert.equal(along(rail, 3, "ArrowDown"), 4, "the last line is shorter");
  assert.equal(along(rail, 4, "ArrowUp"), 2);
  assert.equal(along(rail, 3, "ArrowUp"), 1);
  assert.equal(along(rail, 4, "ArrowDown"), undefined);
  assert.equal(along(rail, 1, "ArrowRight"), 2, "reading goes on in the next line");
});

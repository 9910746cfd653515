import assert from "node:assert/strict";
import test from "node:test";
import { act } from "../../static/js/chart/keys.js";

test("a digit alone takes up a yarn; there are eight, and 0 is the whole width", () => {
  assert.deepEqual(act({ key: "1" }), { yarn: 1 });
  assert.deepEqual(act({ key: "8" }), { yarn: 8 });
  assert.equal(act({ key: "9" }), undefined);
  assert.deepEqual(act({ key: "0" }), { run: "whole" });
  for (const with_ of ["ctrlKey", "altKey", "metaKey"]) assert.equal(act({ key: "1", [with_]: true }), undefined, `${with_}: the browser's own`);
});

test("the key that leads to the desks is none of the chart's", () => {
  assert.equal(act({ key: "F8" }), undefined);
});

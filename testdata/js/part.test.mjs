// Where one comes to when one goes to a part of the mitt.
import assert from "node:assert/strict";
import { test } from "node:test";
import { Model } from "../../static/js/chart/model.js";
import { Zoom } from "../../static/js/chart/zoom.js";
import { page } from "./cases.mjs";

test("going to a part shows its first round at the foot, its first stitch at the edge where reading begins", () => {
  const scrolled = (from_left) => {
    const frame = { clientWidth: 200, clientHeight: 100 };
    const data = { from_left };
    Zoom.prototype.beginAt.call({ svg: { clientWidth: 500, viewBox: { baseVal: { x: 0, y: 0, width: 100 } } }, frame, data }, { x: 60, y: 70, w: 10, h: 8 });
    return [frame.scrollLeft, frame.scrollTop];
  };
  assert.deepEqual(scrolled(false), [(70 + 6) * 5 - 200, 78 * 5 - 100]);
  assert.deepEqual(scrolled(true), [(60 - 6) * 5, 78 * 5 - 100]);
});

test("a round begins with the stitch that is worked first, or with what the view shows of it", () => {
  for (const name of ["tube", "left-hand"]) {
    const m = new Model(page(name));
    for (const row of m.rows) {
      const { y, x } = m.first(row.section, row.round);
      assert.equal(y, row.y);
      assert.ok(m.at(y, x), "it is on the chart");
      if (row.cells[0].x >= 0) assert.equal(x, row.cells[0].x);
    }
    assert.equal(m.first("no part", 1).y, 1, "a chart without the part begins at its foot");
  }
});

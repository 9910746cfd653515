import assert from "node:assert/strict";
import test from "node:test";
import { faults, mends, offers } from "../../static/js/chart/ledger.js";
import { Model } from "../../static/js/chart/model.js";
import { page } from "./cases.mjs";

const model = () => new Model({ ...page("nothing"), marks: [] });

// What is offered first keeps every round in balance, and only that does.
test("offers are true for every cell of every round", () => {
  const m = model();
  for (const row of m.rows) {
    for (const { x } of row.shown) {
      const list = offers(m, row.y, x);
      let others = false;
      for (const o of list) {
        assert.ok(o.balanced || o.words !== "");
        assert.ok(!(o.balanced && others), "those that keep the balance come first");
        others ||= !o.balanced;
        const inverse = m.apply(m.edits(row.y, m.at(row.y, x), { stitch: o.code }));
        assert.equal(faults(m).length === 0, o.balanced, `${o.code} at ${row.y} ${x}`);
        m.apply(inverse);
      }
    }
  }
});

test("an offer says what it would change", () => {
  const m = model();
  const { x } = m.row(2).column("B2");
  const of = (code) => offers(m, 2, x).find((o) => o.code === code).words;
  assert.equal(of("k2tog"), "one stitch short");
  assert.equal(of("kfb"), "one stitch too many for round 3");
  assert.equal(of("yo"), "one stitch left over");
});

// A round made unsound by any stitch can be mended by the first offer.
test("every fault has an offer that mends", () => {
  const m = model();
  for (const code of ["k2tog", "kfb", "k3tog"]) {
    for (const row of m.rows) {
      const cell = row.shown.find((c) => c.op === "k");
      const inverse = m.apply(m.edits(row.y, cell, { stitch: code }));
      for (const fault of faults(m)) {
        const ways = mends(m, fault);
        assert.ok(ways.length > 0, `${code}: ${fault.words}`);
        assert.ok(ways.every((w) => w.words && w.edits.length > 0));
      }
      const [fault] = faults(m);
      const back = m.apply(mends(m, fault)[0].edits);
      assert.equal(faults(m).length, 0);
      m.apply(back);
      m.apply(inverse);
    }
  }
});

test("a stitch too many is mended without taking it back", () => {
  const m = model();
  m.apply(m.edits(2, m.row(2).column("B2"), { stitch: "kfb" }));
  const [fault] = faults(m);
  assert.equal(fault.words, "round 3: one stitch left over (round 2 leaves 14; it takes 13)");
  const way = mends(m, fault).find((w) => w.words.startsWith("work k2tog"));
  m.apply(way.edits);
  assert.deepEqual(faults(m), []);
});

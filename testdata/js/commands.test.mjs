import assert from "node:assert/strict";
import test from "node:test";
import { area, line, mirrored, rectangle } from "../../static/js/chart/cells.js";
import { erase, flip, here, laidAcross, laidUp, noted, paintAll, paste, piece, putBack, putBlockBack, repeat, shift } from "../../static/js/chart/commands.js";
import { Model } from "../../static/js/chart/model.js";
import { Selection } from "../../static/js/chart/selection.js";
import { laidWords } from "../../static/js/chart/tracing.js";
import { page } from "./cases.mjs";

const tube = () => new Model({ ...page("tube"), marks: [] });
const left = () => new Model({ ...page("columns-of-a-left-tube"), marks: [] });

// look is what a row shows from the left: the stitch, and the yarn where it is
// not the main one.
function look(model, y) {
  return model.row(y).shown.map((c) => model.op(y, c).code + (model.yarn(y, c) === "a" ? "" : model.yarn(y, c))).join(" ");
}

test("places of a line and of a rectangle", () => {
  assert.deepEqual(line(1, 1, 3, 2), [[1, 1], [2, 2], [3, 2]]);
  assert.deepEqual(rectangle(2, 3, 1, 4), [[1, 3], [1, 4], [2, 3], [2, 4]]);
});

test("an area is what hangs together and looks alike", () => {
  const model = tube();
  const row = model.row(2).shown;
  model.apply(paintAll(model, [[2, row[4].x]], "colour", "b"));
  const found = area(model, 2, row[0].x);
  assert.ok(!found.some(([y, x]) => y === 2 && x === row[4].x));
  assert.ok(found.length > 10);
  assert.deepEqual(area(model, 2, row[4].x), [[2, row[4].x]]);
});

test("the mirror brush answers across the gusset, on both hands and in both layouts", () => {
  for (const model of [tube(), left()]) {
    for (const row of model.rows) {
      for (const cell of row.shown) {
        const other = mirrored(model, row.y, cell.x);
        if (!other) continue;
        assert.deepEqual(mirrored(model, ...other), [row.y, cell.x], `${row.key} ${cell.column}`);
      }
    }
    const row = model.row(1);
    const at = (name) => row.column(name).x;
    assert.deepEqual(mirrored(model, 1, at("A1")), [1, at("Z1")]);
    assert.deepEqual(mirrored(model, 1, at("B1")), [1, at("B3")]);
    assert.deepEqual(mirrored(model, 1, at("B2")), [1, at("B2")]);
    assert.deepEqual(mirrored(model, 1, at("H1")), [1, at("H8")]);
  }
});

test("what is copied is pasted as it looks, and cut off at the edge", () => {
  const model = tube();
  const [a, b] = model.row(4).shown;
  model.apply([...paintAll(model, [[4, a.x]], "stitch", "p"), ...paintAll(model, [[4, b.x]], "colour", "b")]);
  const cells = piece(model, [[4, a.x], [4, b.x]]);
  assert.deepEqual(cells, [{ left: 1, up: 0, stitch: "p", colour: "" }, { left: 0, up: 0, stitch: "", colour: "b" }]);
  const right = model.row(4).shown.at(-1).x;
  model.apply(paste(model, cells, 4, right));
  assert.match(look(model, 4), /^p kb .* p kb$/);
  model.apply(erase(model, [[4, a.x], [4, b.x]]));
  assert.match(look(model, 4), /^k k .* p kb$/);
  assert.equal(paste(model, cells, 4, model.row(4).shown[0].x).length, 1, "one of two lies outside");
});

test("on the left hand a copy keeps the stitches that are seen", () => {
  const model = left();
  const [a] = model.row(4).shown;
  model.apply(paintAll(model, [[4, a.x]], "stitch", "k2tog"));
  assert.equal(model.mark(4, a.column).stitch, "ssk");
  assert.equal(piece(model, [[4, a.x]])[0].stitch, "k2tog");
});

test("a selection is repeated across and up", () => {
  const model = tube();
  const [a, b] = model.row(4).shown;
  model.apply(paintAll(model, [[4, a.x]], "colour", "b"));
  const places = [[4, a.x], [4, b.x]];
  const box = { low: 4, high: 4, left: a.x, right: b.x };
  const cells = piece(model, places);
  model.apply(repeat(model, cells, box, 0));
  assert.equal(look(model, 4), "kb k kb k kb k kb k kb k kb".split(" ").slice(0, model.row(4).shown.length).join(" "));
  const up = laidUp(model, cells, box);
  model.apply(up.edits);
  assert.match(look(model, 5), /^\w+b \w+ /);
  assert.deepEqual([up.times, up.over], [model.height - 3, 0]);
  assert.equal(laidUp(model, cells, { ...box, low: 4, high: 5 }).over, (model.height - 3) % 2);
});

test("what is left over of a repeat is counted, and shared by both ends", () => {
  const model = tube();
  const { shown } = model.row(4);
  const n = shown.length;
  const wide = [5, 4, 3].find((w) => n % w > 1);
  const box = { low: 4, high: 4, left: shown[0].x, right: shown[wide - 1].x };
  const how = laidAcross(model, box);
  assert.deepEqual([how.times, how.left, how.right], [Math.floor(n / wide), 0, n % wide]);
  assert.deepEqual(laidAcross(model, { ...box, right: box.left }), { times: n, left: 0, right: 0, middle: 0, gaps: false, uneven: false }, "one stitch comes out even");
  model.apply(paintAll(model, [[4, box.left]], "colour", "b"));
  model.apply(repeat(model, piece(model, shown.slice(0, wide).map((c) => [4, c.x])), box, how.middle));
  const marks = look(model, 4).split(" ").map((s) => s.endsWith("b"));
  const begins = Math.floor((n % wide) / 2);
  assert.deepEqual(marks, shown.map((_, i) => i % wide === begins), "whole repeats lie between two equal rests");
});

const plain = page("tube");

// flat is a chart of one part whose rounds have so many stitches each, at places
// that begin at 0.
function flat(section, ...counts) {
  const { width: _, ...data } = plain;
  const rows = counts.map((n, i) => ({ ...data.rows[0], section, name: section, round: i + 1, runs: [{ column: section === "gusset" ? "B1" : "H1", n, step: 1, x: n - 1, op: "k" }] }));
  return new Model({ ...data, rows, width: Math.max(...counts), marks: [] });
}

// counted lays a block whose columns have a yarn each round the hand, and counts
// in the cells of a row how often these stand side by side in full: beyond the
// edge, too, where the whole round is shown.
function counted(model, box, y) {
  const wide = box.right - box.left + 1;
  const cells = [];
  for (let up = 0; up <= box.high - box.low; up++) for (let i = 0; i < wide; i++) cells.push({ left: i, up, stitch: "", colour: "abcdefgh"[i] });
  const back = model.apply([...paste(model, cells, box.low, box.right), ...repeat(model, cells, box, 0)]);
  const row = model.row(y);
  const ring = row.shown.length === row.cells.length && row.shown.at(-1).x - row.shown[0].x + 1 === row.shown.length;
  const yarns = row.shown.map((c) => ({ x: c.x, yarn: model.yarn(y, c) }));
  const is = (i, k) => {
    const at = yarns[ring ? i % yarns.length : i];
    return at?.yarn === "abcdefgh"[wide - 1 - k] && (ring || at.x === yarns[i - k].x + k);
  };
  let times = 0;
  for (let i = 0; i < yarns.length; i++) if (Array.from({ length: wide }, (_, k) => is(i + k, k)).every(Boolean)) times++;
  model.apply(back);
  return { times, over: yarns.length - times * wide };
}

// What is said of a block laid round the hand, against counted cells.
test("what is said of a block laid round the hand is so", () => {
  const said = (text) => ({ times: text.startsWith("Once") ? 1 : Number.parseInt(text, 10), over: Number(/(\d+) stitch(?:es)? left over/.exec(text)?.[1] ?? 0), ends: /(\d+) at the left, (\d+) at the right/.exec(text)?.slice(1).map(Number) });
  let n = 0;
  const check = (model, box) => {
    const text = laidWords(laidAcross(model, box));
    const { times, over, ends } = said(text);
    for (let y = box.low; y <= box.high; y++) {
      const is = counted(model, box, y);
      const where = `${text} of ${model.row(y).key}, ${JSON.stringify(box)}: ${JSON.stringify(is)}`;
      if (text.includes("whole; gaps") || text.includes("the ends differ")) assert.ok(times <= is.times, where);
      else assert.deepEqual({ times, over }, is, where);
      if (ends) assert.equal(ends[0] + ends[1], over, where);
    }
    assert.ok(text.split(" ").length < 20, text);
    n++;
  };
  for (const section of ["cuff", "gusset", "hand", "thumb"]) {
    for (let count = 7; count < 60; count++) {
      for (let wide = 1; wide <= 7; wide++) {
        for (const left of [0, 4, 5].filter((x) => x + wide <= count)) check(flat(section, count), { low: 1, high: 1, left, right: left + wide - 1 });
      }
    }
  }
  for (const name of ["tube", "columns-of-a-left-tube", "nothing", "left-hand"]) {
    const model = new Model({ ...page(name), marks: [] });
    for (const row of model.rows) {
      for (let wide = 1; wide <= 4; wide++) {
        for (const { x } of row.shown) {
          const box = { low: row.y, high: Math.min(row.y + 1, model.height), left: x, right: x + wide - 1 };
          if (row.shown.some((c) => c.x === box.right) && model.row(box.high).shown.some((c) => c.x === x) && model.row(box.high).shown.some((c) => c.x === box.right)) check(model, box);
        }
      }
    }
  }
  check(flat("hand", 42, 44), { low: 1, high: 2, left: 2, right: 7 });
  assert.ok(n > 4000, `${n} blocks`);
  assert.equal(laidWords(laidAcross(flat("hand", 42), { low: 1, high: 1, left: 4, right: 9 })), "7 times; it comes out even.");
  assert.equal(laidWords(laidAcross(flat("hand", 44), { low: 1, high: 1, left: 2, right: 7 })), "7 times; 2 stitches left over at the left.");
  assert.equal(laidWords(laidAcross(flat("hand", 44), { low: 1, high: 1, left: 4, right: 9 })), "6 times; 8 stitches left over: 4 at the left, 4 at the right.");
});

test("a selection is mirrored with each stitch as its twin, turned upside down, and shifted", () => {
  const model = tube();
  const cells = model.row(2).shown.slice(-3);
  const places = [2, 1].flatMap((y) => cells.map((c) => [y, c.x])).filter(([y, x]) => model.at(y, x));
  model.apply(paintAll(model, [[2, cells[0].x]], "stitch", "k2tog"));
  const box = { low: 1, high: 2, left: cells[0].x, right: cells[2].x };
  model.apply(flip(model, places, box, false));
  assert.match(look(model, 2), /k k ssk$/);
  model.apply(flip(model, places, box, true));
  assert.match(look(model, 1), /k k ssk$/);
  assert.match(look(model, 2), /k k k$/);
  const { edits, places: there } = shift(model, places.filter(([y]) => y === 1), [1, -1]);
  model.apply(edits);
  assert.match(look(model, 2), /k ssk k$/);
  assert.equal(there.length, 3);
});

test("a selection outlives another layout", () => {
  const model = tube();
  const selection = new Selection();
  selection.column(model, 1, model.row(1).column("H3").x);
  assert.equal(selection.places(model).length, 5, "two rounds of the gusset, three of the hand");
  const other = left();
  assert.ok(selection.places(other).every(([y, x]) => other.at(y, x).column === "H3"));
  selection.round(model, 2);
  assert.deepEqual(selection.box(model).low, 2);
  selection.clear();
  assert.equal(selection.box(model), undefined);
});

test("one round is on the needles; notes stand on cells and rounds", () => {
  const model = tube();
  model.apply(here(model, 2));
  model.apply(here(model, 4));
  assert.deepEqual([...model.marks].filter(([, m]) => m.needles).map(([key]) => key), ["hand 2 "]);
  model.apply(here(model, 4));
  assert.equal(model.marks.size, 0);
  model.apply(noted(model, 1, "B2", "ask"));
  assert.equal(model.mark(1, "B2").note, "ask");
  assert.deepEqual(noted(model, 1, "B2", "ask"), []);
});

test("what is lost is put back where the cursor is", () => {
  const model = tube();
  const lost = { section: "gusset", round: 40, column: "A9", layer: "stitch", value: "p", words: "purl" };
  model.apply([{ section: "gusset", round: 40, column: "A9", layer: "stitch", value: "p" }]);
  model.apply(putBack(model, lost, 2, model.row(2).column("B2").x));
  assert.deepEqual([...model.marks.keys()], ["gusset 2 B2"]);
});

test("a lost block comes back as it lay, and what has no stitch stays lost", () => {
  const model = tube();
  const block = [[40, "H7"], [41, "H8"], [40, "H900"]].map(([round, column]) => ({ section: "gusset", round, column, layer: "colour", value: "b" }));
  model.apply(block.map(({ section, round, column, layer, value }) => ({ section, round, column, layer, value })));
  const x = model.row(4).shown.at(-1).x;
  const { edits, found } = putBlockBack(model, block, 4, x);
  assert.deepEqual(found, block.slice(0, 2));
  model.apply(edits);
  assert.equal(model.yarn(4, model.at(4, x)), "b");
  assert.equal(model.yarn(5, model.at(5, x - 1)), "b", "one further left, one up");
  assert.deepEqual([...model.marks.keys()].filter((k) => k.includes("40")), ["gusset 40 H900"]);
});

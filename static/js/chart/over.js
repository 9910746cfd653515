// What lies over the fabric and moves: the lines along the round in hand, the
// cursor, marks, and the stitches of a stroke until it ends. It is a drawing of its
// own, which the browser paints by itself: the fabric is not painted anew at each
// move of the pointer.
import { cloth, fifths, furrowPath, stitchPath } from "./fabric.js";
import { rect } from "./paths.js";
import { draw, reuse, set } from "./svg.js";

const long = 12; // stitches that are drawn as one
const most = 600; // edits of a stroke that is drawn here; a larger one is drawn in the chart
const above = 0.4; // of a row, to which a stitch rises behind the one above
const below = 0.1; // of a row, to which its foot lies over the one below
const raised = ["fault", "note", "needles", "float"]; // layers of marks that lie over a stroke
const lines = ["fifth", "fifth-light"];
const marks = ["edge", "symbol", "painted"];

export class Over {
  constructor(view) {
    this.view = view;
    const { svg, layers } = view;
    this.layer = draw("svg", { class: "over", "aria-hidden": "true" });
    this.stroke = draw("g", {});
    this.fives = draw("path", { class: "fives", "stroke-width": view.model.data.cell_width / 20 });
    const { children } = layers.cursor;
    [this.thread, this.chosen, this.cursor] = children;
    this.styles = [...lines, ...marks].map((name) => [name, layers[name].firstElementChild]);
    const borders = [...svg.querySelectorAll(".border-edge, .border")].map((e) => e.cloneNode());
    this.layer.append(this.stroke, ...borders, ...raised.map((name) => layers[name]), this.fives, ...children);
    svg.parentElement.querySelector(".over")?.remove();
    svg.after(this.layer);
    this.clear();
  }

  // take takes up rows that a stroke has changed, and returns those that the chart
  // draws itself: rows that are not knitted, and all of a stroke that has become
  // too large to be drawn here.
  take(rows, { edits }) {
    const { knit, model } = this.view;
    if (this.open && edits.length > most) {
      this.open = false;
      return [...rows, ...model.touched(edits), ...this.rows.keys()];
    }
    return this.open ? rows.filter((y) => !knit.wears(y)) : rows;
  }

  // draw draws the cells of a stroke. Of one that has only grown, it draws what is
  // new.
  draw({ edits }) {
    const grown = edits === this.edits && edits.length >= this.drawn;
    const stale = new Set();
    if (!grown) for (const length of this.all()) length.xs.clear();
    for (const e of grown ? edits.slice(this.drawn) : edits) this.add(e, stale);
    if (!grown) for (const length of this.all()) stale.add(length);
    for (const length of stale) this.drawLength(length);
    for (const row of new Set([...stale].map((length) => length.row))) this.clip(row);
    this.edits = edits;
    this.drawn = edits.length;
  }

  all() {
    return [...this.rows.values()].flatMap((row) => [...row.lengths.values()]);
  }

  // add adds the cell of an edit to its length, and notes the lengths that show it.
  add({ section, round, column }, stale) {
    const { model, knit } = this.view;
    const { y, x } = model.find({ section, round, column }) ?? {};
    if (!y || !knit.wears(y)) return;
    if (!this.rows.has(y)) this.rows.set(y, this.row(y));
    const row = this.rows.get(y);
    const i = Math.floor(x / long);
    if (!row.lengths.has(i)) row.lengths.set(i, this.length(row));
    row.lengths.get(i).xs.add(x);
    for (const near of [y - 1, y, y + 1]) {
      const length = this.rows.get(near)?.lengths.get(i);
      if (length) stale.add(length);
    }
  }

  // row makes the place of a row, which is clipped to the cells of the stroke.
  row(y) {
    const id = `over-${y}`;
    const [clip, holder, place] = [draw("path", {}), draw("clipPath", { id }), draw("g", { "clip-path": `url(#${id})` })];
    holder.append(clip);
    place.append(holder);
    this.stroke.append(place);
    return { y, clip, place, lengths: new Map() };
  }

  // clip clips a row to the cells of the stroke, as far as their stitches reach.
  clip({ y, clip, lengths }) {
    const b = this.view.box(y, 0);
    const xs = [...lengths.values()].flatMap((length) => [...length.xs]);
    set(clip, "d", xs.map((x) => rect(b.x + x * b.w, b.y - above * b.h, b.w, (1 + above + below) * b.h)).join(" "));
  }

  // length makes the place of some stitches of a row: their fabric, and the lines
  // and symbols over it.
  length(row) {
    const [fabric, on] = [draw("g", {}), draw("g", {})];
    const paths = this.styles.map(([name, of]) => {
      const path = of.cloneNode();
      path.removeAttribute("data-row");
      path.dataset.of = name;
      return [name, path];
    });
    on.append(...paths.map(([, path]) => path));
    row.place.append(fabric, on);
    return { row, xs: new Set(), fabric, paths };
  }

  // drawLength draws stitches of a row with those above, which lie over them, and
  // below.
  drawLength({ row: { y }, xs, fabric, paths }) {
    const { view } = this;
    const list = [...xs].sort((a, b) => a - b);
    const rows = [y - 1, y, y + 1].flatMap((near) => {
      const cells = list.map((x) => view.model.at(near, x)).filter(Boolean);
      return cells.length > 0 ? [{ y: near, of: cloth(view, near, cells, view.knit.path(near)) }] : [];
    });
    reuse(fabric, [
      ...rows.flatMap((row) => row.of.covers.map((cover) => furrowPath(view, row.y, cover))),
      ...rows.flatMap((row) => row.of.covers.map(stitchPath)),
    ]);
    const lined = rows.filter((row) => row.y <= y && view.model.row(row.y).round % 5 === 0);
    for (const [name, path] of paths) {
      const parts = marks.includes(name) ? rows.map((row) => row.of[name]) : lined.map((row) => fifths(view, row.y, row.of.covers, name === "fifth-light"));
      set(path, "d", parts.join(" ").trim());
    }
  }

  // clear takes the stitches of a stroke away, once the chart itself has them. open:
  // the next ones are drawn here.
  clear(open = true) {
    this.rows = new Map();
    this.drawn = 0;
    this.edits = undefined;
    this.open = open;
    this.stroke.replaceChildren();
  }
}

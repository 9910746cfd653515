// The chart on the page. It finds the cell under the pointer by arithmetic, and
// redraws only the rows that changed.
import { cloth, fifths, furrowPath, plainPath, stitchPath } from "./fabric.js";
import { fives } from "./fives.js";
import { floats } from "./float.js";
import { Knit } from "./knit.js";
import { frame, lines, needle, notches, pin } from "./marks.js";
import { Over } from "./over.js";
import { rect, round3 } from "./paths.js";
import { draw, reuse, set } from "./svg.js";

const long = 32; // stitches of a row that are drawn as one when it is knitted
const seam = 0.05; // of a stitch, by which one such length lies under the next, so that no seam shows
const layers = ["colour", "fifth", "fifth-light", "edge", "symbol", "painted", "fault"];

export class View {
  // frame is when what is drawn by itself is drawn.
  constructor(root, model, frame) {
    this.root = root;
    this.model = model;
    this.svg = root.querySelector("svg[data-chart]");
    this.layers = {};
    for (const layer of this.svg.querySelectorAll("[data-layer]")) this.layers[layer.dataset.layer] = layer;
    this.rows = {};
    for (const name of layers) this.rows[name] = [...this.layers[name].children];
    this.bad = new Set(this.rows.fault.flatMap((e, i) => (e.getAttribute("d") ? [i + 1] : [])));
    this.knit = new Knit(this, frame, (y) => this.drawRow(y));
    this.over = new Over(this);
    this.cursor = { y: 1, x: this.model.row(1)?.cells.find((c) => c.x >= 0)?.x ?? 0 };
    this.grid();
  }

  // grid gives the drawing the role of a grid: one element stands for the cell
  // under the cursor, and is moved and renamed with it.
  grid() {
    const { svg, model } = this;
    svg.setAttribute("role", "grid");
    svg.setAttribute("aria-rowcount", String(model.height));
    svg.setAttribute("aria-colcount", String(model.data.width));
    svg.setAttribute("aria-multiselectable", "true");
    this.line = draw("g", { role: "row" });
    this.cell = draw("g", { role: "gridcell", id: "chart-cell" });
    this.place = draw("path", { fill: "none" }); // where it is; its frame is drawn over the chart
    this.cell.append(this.place);
    this.line.append(this.cell);
    svg.append(this.line);
    svg.setAttribute("aria-activedescendant", "chart-cell");
    this.name();
  }

  name() {
    const { y, x } = this.cursor;
    const d = this.model.data;
    this.line.setAttribute("aria-rowindex", String(y));
    this.cell.setAttribute("aria-colindex", String(d.width - x));
    this.cell.setAttribute("aria-label", this.model.describe(y, x) || "no stitch");
    this.cell.setAttribute("aria-selected", String(this.chosen?.has(`${y} ${x}`) ?? false));
  }

  // cellAt returns the row and column under a point of the window.
  cellAt(clientX, clientY) {
    const matrix = this.svg.getScreenCTM();
    if (!matrix) return undefined;
    const p = new DOMPoint(clientX, clientY).matrixTransform(matrix.inverse());
    const d = this.model.data;
    return { y: Math.floor((d.bottom - p.y) / d.cell_height) + 1, x: Math.floor((p.x - d.left) / d.cell_width) };
  }

  box(y, x) {
    const d = this.model.data;
    return { x: d.left + x * d.cell_width, y: d.bottom - y * d.cell_height, w: d.cell_width, h: d.cell_height };
  }

  // drawRow draws a row: plain, or as knitting, in lengths of which a stroke
  // changes one.
  drawRow(y) {
    const row = this.model.row(y);
    if (!row) return;
    const stitch = this.knit.wears(y) && this.knit.path(y);
    const lengths = stitch ? inLengths(row.shown) : [row.shown];
    const drawn = lengths.map((cells) => cloth(this, y, cells, stitch));
    for (const name of ["symbol", "edge", "painted"]) set(this.rows[name][y - 1], "d", drawn.map((of) => of[name]).join("").trim());
    const covers = drawn.map((of) => of.covers);
    if (stitch) this.drawKnitted(y, covers);
    else this.drawPlain(y, covers.flat());
    if (row.round % 5 === 0) {
      set(this.rows.fifth[y - 1], "d", fifths(this, y, covers.flat(), false));
      set(this.rows["fifth-light"][y - 1], "d", fifths(this, y, covers.flat(), true));
    }
    this.knit.dye(covers.flat().some((of) => of.yarn.fill));
  }

  // drawPlain draws what each yarn of a row covers, each yarn in one path.
  drawPlain(y, covers) {
    const place = this.rows.colour[y - 1];
    if (place.firstElementChild?.localName === "g") place.replaceChildren(); // it was knitted
    reuse(place, covers.map((of) => plainPath(this, y, of)));
    if (this.knit.rows.length > 0) this.knit.row(y).replaceChildren();
  }

  // drawKnitted draws the furrows and the stitches of a row.
  drawKnitted(y, lengths) {
    const [furrows, stitches] = [this.rows.colour[y - 1], this.knit.row(y)];
    if (furrows.firstElementChild?.localName !== "g") furrows.replaceChildren(); // it was plain
    for (const place of [furrows, stitches]) while (place.children.length < lengths.length) place.append(draw("g", {}));
    lengths.forEach((covers, i) => {
      const lapped = i === 0 ? covers : lap(covers, lengths[i - 1], i * long);
      reuse(furrows.children[i], lapped.map((of) => furrowPath(this, y, of)));
      reuse(stitches.children[i], covers.map(stitchPath));
    });
  }

  // notes lists the notes of the chart in the order of their numbers: from the
  // foot up, in each round its own, then those of its cells from the left.
  notes() {
    const list = [];
    for (const [key, mark] of this.model.marks) {
      if (mark.note === "") continue;
      const end = key.lastIndexOf(" ");
      const row = this.model.byKey.get(key.slice(0, end));
      const cell = row?.column(key.slice(end + 1));
      if (row?.span && end === key.length - 1) list.push({ y: row.y, x: this.model.leftFirst(row.y) ? row.span.high : row.span.low, cell: false, words: `${this.model.name(row.y, this.model.several)}: ${mark.note}` });
      else if (cell?.x >= 0) list.push({ y: row.y, x: cell.x, cell: true, words: `${this.model.name(row.y, this.model.several)}, stitch ${row.place(cell)}: ${mark.note}` });
    }
    return list.sort((a, b) => a.y - b.y || a.cell - b.cell || a.x - b.x);
  }

  drawNotes() {
    const d = this.model.data;
    const size = Math.min(d.cell_width, d.cell_height);
    this.layers.note.replaceChildren(...this.notes().flatMap((n, i) => {
      const b = this.box(n.y, n.x);
      const edge = this.model.leftFirst(n.y) ? b.x + b.w : b.x;
      const drawn = pin(n.cell ? b.x + 0.3 * b.w : edge, b.y + 0.75 * b.h, n.x > d.width - 3 ? -1 : 1, size);
      const text = draw("text", { class: "note-number", ...drawn.text, "font-size": round3(0.85 * size), "text-anchor": "middle" }, i + 1);
      return [draw("path", { class: "note-flag", "stroke-width": size / 12, d: drawn.flag }), draw("path", { class: "note-pin", "stroke-width": d.cell_width / 7, d: drawn.pin }), text];
    }));
  }

  // drawFaults outlines the rows that don't add up.
  drawFaults(list) {
    const bad = new Set(list.map((f) => f.y).filter(Boolean));
    for (const y of new Set([...bad, ...this.bad])) set(this.rows.fault[y - 1], "d", bad.has(y) ? this.outline(y) : "");
    this.bad = bad;
  }

  outline(y) {
    const { span } = this.model.row(y) ?? {};
    if (!span) return "";
    const b = this.box(y, span.low);
    return frame({ ...b, w: (span.high - span.low + 1) * b.w }, b.w / 8);
  }

  // showStrands shows or hides the strands that are too long.
  showStrands(on) {
    this.strands = on;
    this.svg.classList.toggle("without-float", !on);
    this.floats = undefined;
    this.drawFloats();
  }

  // drawFloats draws every float that is too long, with its length, if they are
  // asked for.
  drawFloats(list = floats(this.model)) {
    const shown = this.strands ? list : [];
    const print = JSON.stringify(shown);
    if (this.floats === print) return;
    this.floats = print;
    this.layers.float.replaceChildren(...shown.flatMap((f) => this.drawFloat(f)));
  }

  drawFloat(f) {
    const stretches = [];
    for (let y = f.y; y <= f.to; y++) {
      const { cells } = this.model.row(y);
      const part = cells.slice(y === f.y ? f.at + 1 : 0, y === f.to ? f.next : cells.length).filter((c) => c.x >= 0);
      for (const c of part) {
        const last = stretches.at(-1);
        if (last && last.y === y && last.left - 1 === c.x) last.left = c.x;
        else stretches.push({ y, left: c.x, right: c.x });
      }
    }
    if (stretches.length === 0) return [];
    const d = this.model.data;
    const high = (y) => this.box(y, 0).y + 0.75 * d.cell_height;
    const [from, to] = [(s) => this.box(1, s.left).x, (s) => this.box(1, s.right + 1).x];
    const path = stretches.map((s) => `M ${round3(from(s))} ${round3(high(s.y))} L ${round3(to(s))} ${round3(high(s.y))}`).join(" ");
    const best = stretches.reduce((a, s) => (s.right - s.left > a.right - a.left ? s : a));
    const size = Math.min(d.cell_width * 0.62, d.cell_height * 0.8);
    const text = draw("text", {
      class: "float-length", x: round3((from(best) + to(best)) / 2), y: round3(high(best.y) - size * 0.3), "font-size": round3(size), "text-anchor": "middle",
    });
    text.textContent = String(f.length);
    return [
      draw("path", { class: "float-edge", "stroke-width": d.cell_width / 4, d: path }),
      draw("path", { class: "float", "stroke-width": d.cell_width / 8, "stroke-dasharray": `${d.cell_width / 3} ${d.cell_width / 5}`, d: path }), text,
    ];
  }

  drawNeedles() {
    const parts = [];
    for (const row of this.model.rows) {
      if (row.span && this.model.mark(row.y, "").needles !== "") parts.push(needle(this.box(row.y, row.span.low), this.box(row.y, row.span.high), this.model.leftFirst(row.y)));
    }
    set(this.layers.needles.querySelector("path"), "d", parts.join(" "));
  }

  // point puts the cursor on a place.
  point(y, x) {
    this.cursor = { y, x };
    const b = this.box(y, x);
    set(this.place, "d", rect(b.x, b.y, b.w, b.h));
    set(this.over.cursor, "d", frame(b, b.w / 8));
    this.thread(y);
    this.name();
    return this.model.describe(y, x);
  }

  // thread draws lines along a whole row; 0 draws none.
  thread(y) {
    const b = this.model.row(y) && this.box(y, -0.5);
    if (b) this.count(y);
    set(this.over.thread, "d", b ? lines({ ...b, w: (this.model.data.width + 1) * b.w }, b.w / 12) : "");
  }

  // count draws the lines at every five stitches of a round.
  count(y) {
    set(this.over.fives, "d", fives(this.model, y, (row, x) => this.box(row, x)));
  }

  // choose shows the selection, as runs along the rows.
  choose(places) {
    this.chosen = new Set(places.map(([y, x]) => `${y} ${x}`));
    this.name();
    const runs = [];
    for (const [y, x] of places) {
      const last = runs.at(-1);
      if (last && last.y === y && last.to === x - 1) last.to = x;
      else runs.push({ y, from: x, to: x });
    }
    set(this.over.chosen, "d", notches(runs, (y, x) => this.box(y, x)));
  }
}

// inLengths parts the cells of a row by their places.
function inLengths(cells) {
  const list = [];
  for (const cell of cells) (list[Math.floor(cell.x / long)] ??= []).push(cell);
  return Array.from(list, (length) => length ?? []);
}

// lap lets a yarn that goes on from the length at the left reach a little under it.
function lap(covers, before, x) {
  return covers.map((of) => {
    const on = before.some((b) => b.yarn === of.yarn && b.runs.some((run) => run.to === x - 1));
    return on ? { ...of, runs: of.runs.map((run) => (run.from === x ? { ...run, from: x - seam } : run)) } : of;
  });
}

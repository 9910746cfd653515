// The chart on the page. It finds the cell under the pointer by arithmetic, and
// redraws only the rows that changed.
import { fives } from "./fives.js";
import { floats } from "./float.js";
import { Knit } from "./knit.js";
import { basting, frame, lines, needle, notches, pin } from "./marks.js";
import { rect, round3, symbol } from "./paths.js";
import { draw } from "./svg.js";

const long = 32; // stitches of a row that are drawn as one when it is knitted
const lap = 0.05; // of a stitch, by which one such length lies under the next, so that no seam shows
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
    this.fives = draw("path", { class: "fives", "stroke-width": model.data.cell_width / 20 });
    this.layers.cursor.prepend(this.fives);
    this.cell.append(this.layers.cursor.querySelector(".cursor"));
    this.line.append(this.cell);
    this.layers.cursor.append(this.line);
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

  drawRow(y) {
    const row = this.model.row(y);
    if (!row) return;
    const knits = this.knit.wears(y);
    const stitch = knits && this.knit.path(y);
    const lengths = []; // by their place in the row, each by yarn: { yarn, runs, stitches }
    const paths = { symbol: "", edge: "", painted: "" };
    let before; // the yarn of the cell at the left
    for (const cell of row.shown) {
      const mark = this.model.mark(y, cell.column);
      const op = this.model.opOf(cell, mark);
      const id = this.model.yarnOf(mark);
      const yarns = (lengths[knits ? Math.floor(cell.x / long) : 0] ??= new Map());
      if (!yarns.has(id)) yarns.set(id, { yarn: this.model.yarns.get(id), runs: [], stitches: "" });
      const of = yarns.get(id);
      const last = of.runs.at(-1);
      if (last?.to === cell.x - 1) last.to = cell.x;
      else of.runs.push({ from: cell.x - (before === id && cell.x % long === 0 ? lap : 0), to: cell.x });
      before = id;
      if (knits) of.stitches += stitch(cell.x, op.purl);
      if (op.path && !(knits && op.code === "p")) { // a purl's bump says it
        const path = symbol(op.path, this.box(y, cell.x));
        paths.symbol += path;
        if (knits || of.yarn.fill) paths.edge += path;
      }
      if (op.code !== cell.op) paths.painted += `${basting(this.box(y, cell.x))} `;
    }
    for (const [name, d] of Object.entries(paths)) set(this.rows[name][y - 1], "d", d.trim());
    const all = [...lengths].map((yarns) => [...(yarns?.values() ?? [])]);
    if (knits) this.drawKnitted(y, all);
    else this.drawPlain(y, all.flat());
    if (row.round % 5 === 0) this.drawFifth(y, all.flat());
    this.knit.dye(all.flat().some((of) => of.yarn.fill));
  }

  // drawPlain draws what each yarn of a row covers, each yarn in one path.
  drawPlain(y, yarns) {
    const place = this.rows.colour[y - 1];
    if (place.firstElementChild?.localName === "g") place.replaceChildren(); // it was knitted
    reuse(place, yarns.map(({ yarn, runs }) => ({ class: `yarn yarn-${yarn.id}${yarn.fill ? "" : " ground"}`, fill: yarn.fill || "none", d: this.cover(y, runs) })));
    if (this.knit.rows.length > 0) this.knit.row(y).replaceChildren();
  }

  // drawKnitted draws the furrows and the stitches of a row in lengths, of which a
  // stroke changes one: what changes is drawn anew as far as it reaches.
  drawKnitted(y, lengths) {
    const [furrows, stitches] = [this.rows.colour[y - 1], this.knit.row(y)];
    if (furrows.firstElementChild?.localName !== "g") furrows.replaceChildren(); // it was plain
    for (const place of [furrows, stitches]) while (place.children.length < lengths.length) place.append(draw("g", {}));
    lengths.forEach((yarns, i) => {
      reuse(furrows.children[i], yarns.map(({ yarn, runs }) => ({ class: `yarn yarn-${yarn.id}${yarn.fill ? "" : " undyed-furrow"}`, fill: yarn.furrow, d: this.cover(y, runs) })));
      reuse(stitches.children[i], yarns.map(({ yarn, stitches: d }) => ({ class: yarn.fill ? "" : "undyed", fill: yarn.cloth, d })));
    });
  }

  cover(y, runs) {
    return runs.map((run) => {
      const b = this.box(y, run.from);
      return rect(b.x, b.y, (run.to - run.from + 1) * b.w, b.h);
    }).join(" ");
  }

  // drawFifth draws the line above every fifth round, dark or light by the yarn.
  drawFifth(y, yarns) {
    for (const [name, dark] of [["fifth", false], ["fifth-light", true]]) {
      const runs = yarns.filter((of) => of.yarn.dark === dark).flatMap((of) => of.runs);
      set(this.rows[name][y - 1], "d", runs.map((run) => {
        const b = this.box(y, run.from);
        return `M ${round3(b.x)} ${round3(b.y)} L ${round3(b.x + (run.to - run.from + 1) * b.w)} ${round3(b.y)}`;
      }).join(" "));
    }
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
      if (row?.span && end === key.length - 1) list.push({ y: row.y, x: this.model.data.from_left ? row.span.high : row.span.low, cell: false, words: `${this.model.name(row.y, this.model.several)}: ${mark.note}` });
      else if (cell?.x >= 0) list.push({ y: row.y, x: cell.x, cell: true, words: `${this.model.name(row.y, this.model.several)}, stitch ${row.cells.indexOf(cell) + 1}: ${mark.note}` });
    }
    return list.sort((a, b) => a.y - b.y || a.cell - b.cell || a.x - b.x);
  }

  drawNotes() {
    const d = this.model.data;
    const size = Math.min(d.cell_width, d.cell_height);
    this.layers.note.replaceChildren(...this.notes().flatMap((n, i) => {
      const b = this.box(n.y, n.x);
      const edge = d.from_left ? b.x + b.w : b.x;
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
      if (row.span && this.model.mark(row.y, "").needles !== "") parts.push(needle(this.box(row.y, row.span.low), this.box(row.y, row.span.high), this.model.data.from_left));
    }
    set(this.layers.needles.querySelector("path"), "d", parts.join(" "));
  }

  // point puts the cursor on a place.
  point(y, x) {
    this.cursor = { y, x };
    const b = this.box(y, x);
    set(this.layers.cursor.querySelector(".cursor"), "d", frame(b, b.w / 8));
    this.thread(y);
    this.name();
    return this.model.describe(y, x);
  }

  // thread draws lines along a whole row; 0 draws none.
  thread(y) {
    const b = this.model.row(y) && this.box(y, -0.5);
    if (b) this.count(y);
    set(this.layers.cursor.querySelector(".thread"), "d", b ? lines({ ...b, w: (this.model.data.width + 1) * b.w }, b.w / 12) : "");
  }

  // count draws the lines at every five stitches of a round.
  count(y) {
    set(this.fives, "d", fives(this.model, y, (row, x) => this.box(row, x)));
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
    set(this.layers.cursor.querySelector(".chosen"), "d", notches(runs, (y, x) => this.box(y, x)));
  }
}

function set(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

// reuse gives an element a path for each list of attributes, and changes what
// differs.
function reuse(place, list) {
  while (place.children.length > list.length) place.lastElementChild.remove();
  while (place.children.length < list.length) place.append(draw("path", {}));
  list.forEach((attributes, i) => {
    for (const [name, value] of Object.entries(attributes)) set(place.children[i], name, value);
  });
}

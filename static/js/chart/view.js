// The chart on the page. It finds the cell under the pointer by arithmetic, and
// redraws only the rows that changed.
import { floats } from "./float.js";
import { corner, needles, note, rect, roundNote, round3, symbol, texture } from "./paths.js";

const space = "http://www.w3.org/2000/svg";
const layers = ["colour", "symbol", "light", "painted", "note", "fault"];

export class View {
  constructor(root, model) {
    this.root = root;
    this.model = model;
    this.svg = root.querySelector("svg[data-chart]");
    this.layers = {};
    for (const layer of this.svg.querySelectorAll("[data-layer]")) this.layers[layer.dataset.layer] = layer;
    this.rows = {};
    for (const name of layers) this.rows[name] = [...this.layers[name].children];
    this.bad = new Set(this.rows.fault.flatMap((e, i) => (e.getAttribute("d") ? [i + 1] : [])));
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
    this.line = make("g", { role: "row" });
    this.cell = make("g", { role: "gridcell", id: "chart-cell" });
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
    const dark = (cell) => this.model.yarns.get(this.model.yarn(y, cell)).dark;
    const paths = { symbol: "", light: "", painted: "", note: "" };
    for (const cell of row.shown) {
      const { path } = this.model.op(y, cell);
      if (path) paths[dark(cell) ? "light" : "symbol"] += symbol(path, this.box(y, cell.x));
      if (this.model.painted(y, cell)) paths.painted += `${corner(this.box(y, cell.x))} `;
      if (this.model.mark(y, cell.column).note !== "") paths.note += `${note(this.box(y, cell.x))} `;
    }
    if (row.span && this.model.mark(y, "").note !== "") paths.note += roundNote(this.box(y, row.span.low));
    for (const [name, d] of Object.entries(paths)) set(this.rows[name][y - 1], "d", d.trim());
    this.drawColours(y, row);
  }

  // drawColours draws the runs of one yarn in a row, each with its texture,
  // unless they are as they were.
  drawColours(y, row) {
    const runs = [];
    for (const cell of row.shown) {
      const yarn = this.model.yarn(y, cell);
      const last = runs.at(-1);
      if (last && last.yarn === yarn && last.to === cell.x - 1) last.to = cell.x;
      else runs.push({ yarn, from: cell.x, to: cell.x });
    }
    const print = JSON.stringify(runs);
    const place = this.rows.colour[y - 1];
    if (place.print === print) return;
    place.print = print;
    place.replaceChildren(...runs.flatMap((run) => this.drawRun(y, run)));
  }

  drawRun(y, run) {
    const yarn = this.model.yarns.get(run.yarn);
    const b = this.box(y, run.from);
    const all = { ...b, w: (run.to - run.from + 1) * b.w };
    const ground = make("path", {
      class: `yarn yarn-${run.yarn}${yarn.fill ? "" : " ground"}`, fill: yarn.fill || "none", d: rect(all.x, all.y, all.w, all.h),
    });
    const lines = texture(run.yarn, all, b.w / 4);
    if (!lines) return [ground];
    return [ground, make("path", { class: `texture texture-${run.yarn}${yarn.dark ? " light" : ""}`, "stroke-width": b.w / 30, d: lines })];
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
    return rect(b.x, b.y, (span.high - span.low + 1) * b.w, b.h);
  }

  // drawFloats draws every float that is too long, with its length.
  drawFloats(list = floats(this.model)) {
    const print = JSON.stringify(list);
    if (this.floats === print) return;
    this.floats = print;
    this.layers.float.replaceChildren(...list.flatMap((f) => this.drawFloat(f)));
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
    const text = make("text", {
      class: "float-length", x: round3((from(best) + to(best)) / 2), y: round3(high(best.y) - size * 0.3), "font-size": round3(size), "text-anchor": "middle",
    });
    text.textContent = String(f.length);
    return [make("path", { class: "float", "stroke-width": d.cell_width / 8, "stroke-dasharray": `${d.cell_width / 3} ${d.cell_width / 5}`, d: path }), text];
  }

  drawNeedles() {
    const parts = [];
    for (const row of this.model.rows) {
      if (row.span && this.model.mark(row.y, "").needles !== "") parts.push(needles(this.box(row.y, row.span.low), this.box(row.y, row.span.high)));
    }
    set(this.layers.needles.querySelector("path"), "d", parts.join(" "));
  }

  // point puts the cursor on a place.
  point(y, x) {
    this.cursor = { y, x };
    const b = this.box(y, x);
    set(this.layers.cursor.querySelector(".cursor"), "d", rect(b.x, b.y, b.w, b.h));
    this.thread(y);
    this.name();
    return this.model.describe(y, x);
  }

  // thread lights a whole row; 0 lights none.
  thread(y) {
    set(this.layers.cursor.querySelector(".thread"), "d", y > 0 ? this.outline(y) : "");
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
    set(this.layers.cursor.querySelector(".chosen"), "d", runs.map((r) => {
      const b = this.box(r.y, r.from);
      return rect(b.x, b.y, (r.to - r.from + 1) * b.w, b.h);
    }).join(" "));
  }
}

function set(element, name, value) {
  if (element.getAttribute(name) !== value) element.setAttribute(name, value);
}

function make(name, attributes) {
  const element = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}

// The chart on the page: finds the cell under the pointer by arithmetic and
// draws again only the rounds that changed.

const space = "http://www.w3.org/2000/svg";

export class View {
  constructor(root, model) {
    this.root = root;
    this.model = model;
    this.svg = root.querySelector("svg[data-chart]");
    this.layers = {};
    for (const layer of this.svg.querySelectorAll("[data-layer]")) this.layers[layer.dataset.layer] = layer;
    this.rows = {};
    for (const name of ["colour", "symbol", "painted", "fault"]) {
      this.rows[name] = new Map([...this.layers[name].children].map((e) => [Number(e.dataset.row), e]));
    }
    this.cursor = { round: 1, x: this.model.row(1)?.cells[0]?.x ?? 0 };
  }

  // cell is the round and column under a point of the window.
  cell(clientX, clientY) {
    const matrix = this.svg.getScreenCTM();
    if (!matrix) return undefined;
    const p = new DOMPoint(clientX, clientY).matrixTransform(matrix.inverse());
    const d = this.model.data;
    return { round: Math.floor((d.bottom - p.y) / d.cell_height) + 1, x: Math.floor((p.x - d.left) / d.cell_width) };
  }

  box(round, x) {
    const d = this.model.data;
    return { x: d.left + x * d.cell_width, y: d.bottom - round * d.cell_height, w: d.cell_width, h: d.cell_height };
  }

  // draw draws rounds again; without a list all of them.
  draw(rounds) {
    if (rounds?.length === 0) return;
    for (const round of rounds ?? this.model.data.rows.map((r) => r.round)) this.drawRow(round);
    this.drawFaults();
  }

  drawRow(round) {
    const row = this.model.row(round);
    if (!row) return;
    const cells = [...row.cells].sort((a, b) => a.x - b.x);
    this.rows.symbol.get(round)?.setAttribute("d", cells.map((c) => this.symbol(round, c)).filter(Boolean).join(" "));
    this.rows.painted.get(round)?.setAttribute("d", cells.filter((c) => this.model.painted(round, c)).map((c) => this.corner(round, c)).join(" "));
    this.rows.colour.get(round)?.replaceChildren(...this.colours(round, cells));
  }

  symbol(round, cell) {
    const { path } = this.model.op(round, cell);
    if (!path) return "";
    const b = this.box(round, cell.x);
    const size = Math.min(b.w, b.h);
    const at = [b.x + (b.w - size) / 2, b.y + (b.h - size) / 2];
    let i = 0;
    return path.split(" ").map((word) => {
      const n = Number(word);
      if (Number.isNaN(n)) {
        i = 0;
        return word;
      }
      return String(round3(at[i++ % 2] + (n * size) / 100));
    }).join(" ");
  }

  corner(round, cell) {
    const b = this.box(round, cell.x);
    const size = Math.min(b.w, b.h) / 4;
    const right = b.x + b.w;
    return `M ${round3(right - size)} ${round3(b.y)} L ${round3(right)} ${round3(b.y)} L ${round3(right)} ${round3(b.y + size)} Z`;
  }

  // colours are the runs of one yarn in a round, each with its texture.
  colours(round, cells) {
    const runs = [];
    for (const cell of cells) {
      const yarn = this.model.yarn(round, cell);
      const last = runs.at(-1);
      if (last && last.yarn === yarn && last.to === cell.x - 1) last.to = cell.x;
      else runs.push({ yarn, from: cell.x, to: cell.x });
    }
    const out = [];
    for (const run of runs) {
      const b = this.box(round, run.from);
      const w = (run.to - run.from + 1) * b.w;
      const ground = path(`yarn yarn-${run.yarn}`, rect(b.x, b.y, w, b.h));
      ground.setAttribute("fill", this.model.yarns.get(run.yarn).fill);
      out.push(ground);
      const lines = texture(run.yarn, b.x, b.y, w, b.h, b.w / 4);
      if (lines) {
        const t = path(`texture texture-${run.yarn}`, lines);
        t.setAttribute("stroke-width", String(b.w / 30));
        out.push(t);
      }
    }
    return out;
  }

  // drawFaults outlines the rounds that don't add up and lists them in words.
  drawFaults() {
    const faults = this.model.faults();
    const bad = new Set(faults.map((f) => f.round));
    for (const [round, element] of this.rows.fault) element.setAttribute("d", bad.has(round) ? this.outline(round) : "");
    const list = this.root.querySelector("#chart-ledger");
    const lines = faults.length > 0 ? faults.map((f) => f.words) : ["every round adds up"];
    list.replaceChildren(...lines.map((words) => {
      const item = document.createElement("li");
      item.textContent = words;
      item.classList.toggle("bad", faults.length > 0);
      return item;
    }));
  }

  outline(round) {
    const xs = this.model.row(round)?.cells.map((c) => c.x) ?? [];
    if (xs.length === 0) return "";
    const b = this.box(round, Math.min(...xs));
    return rect(b.x, b.y, (Math.max(...xs) - Math.min(...xs) + 1) * b.w, b.h);
  }

  // point puts the cursor on a cell.
  point(round, x) {
    this.cursor = { round, x };
    const b = this.box(round, x);
    this.layers.cursor.querySelector(".cursor").setAttribute("d", rect(b.x, b.y, b.w, b.h));
    this.thread(round);
    return this.model.describe(round, x);
  }

  // thread lights a whole round; 0 puts it out.
  thread(round) {
    this.layers.cursor.querySelector(".thread").setAttribute("d", round > 0 ? this.outline(round) : "");
  }
}

function round3(n) {
  return Math.round(n * 1000) / 1000;
}

function rect(x, y, w, h) {
  return `M ${round3(x)} ${round3(y)} L ${round3(x + w)} ${round3(y)} L ${round3(x + w)} ${round3(y + h)} L ${round3(x)} ${round3(y + h)} Z`;
}

function path(name, d) {
  const element = document.createElementNS(space, "path");
  element.setAttribute("class", name);
  element.setAttribute("d", d);
  return element;
}

// texture is the lines that tell a yarn from the others without colour.
function texture(yarn, x, y, w, h, step) {
  const parts = [];
  const line = (x1, y1, x2, y2) => parts.push(`M ${round3(x1)} ${round3(y1)} L ${round3(x2)} ${round3(y2)}`);
  if (yarn === "b") for (let v = step / 2; v < h; v += step) line(x, y + v, x + w, y + v);
  if (yarn === "c") for (let v = step / 2; v < w; v += step) line(x + v, y, x + v, y + h);
  if (yarn === "d") {
    for (let v = step / 2; v < w + h; v += step) {
      line(x + Math.min(v, w), y + Math.max(v - w, 0), x + Math.max(v - h, 0), y + Math.min(v, h));
    }
  }
  return parts.join(" ");
}

// The needle under the chart: the round in hand as it lies there, each loop
// under its own stitch. What the next round would not take hangs off the tip.
import { excess, inOut } from "./balance.js";
import { changes } from "./frame.js";
import { groups, patch, round1 } from "./svg.js";

const long = 16; // loops of a yarn that are drawn in one piece
const high = 15; // px from the top to the needle's middle

export class Needle {
  constructor(editor) {
    this.editor = editor;
    this.svg = editor.root.querySelector("[data-needle]");
    this.count = editor.root.querySelector("#chart-count");
    this.parts = groups(this.svg, "wood", "loops", "names", "ends");
    this.fresh = changes();
    this.newLoops = changes();
  }

  show(at, y) {
    const { model } = this.editor;
    const known = model.row(y)?.span && model.totals(y); // another one when a mark on the row changed
    const { over, wrong } = known ? excess(model, y) : {};
    if (!this.fresh(at, y, known, over, wrong)) return;
    if (!known) {
      for (const g of Object.values(this.parts)) patch(g, []);
      return;
    }
    const { span } = model.row(y);
    const where = { at, x: (column) => at.off + at.x(column), w: at.w, from: at.off - at.w, to: at.off + at.width + at.w };
    const left = Math.max(where.x(span.low) - 26, at.off - 60);
    const right = Math.min(where.x(span.high + 1) + 26, at.off + at.width + 60);
    const { parts } = this;
    const { loops, names } = this.loops(where, y);
    patch(parts.wood, [wood(left, right)]);
    patch(parts.loops, loops);
    patch(parts.names, names);
    patch(parts.ends, [...this.begins(where, y), ...this.over(over, left, right, at.room, model.leftFirst(y))]);
    const words = inOut(model, y);
    if (this.count.textContent !== words) this.count.textContent = words;
    this.count.classList.toggle("wrong", wrong);
  }

  // loops draws the loops of a row, several of a yarn in one piece, and writes what
  // made them where it is no plain stitch.
  loops(at, y) {
    const { model } = this.editor;
    if (this.newLoops(at.at, y)) this.known = new Map(); // by column: { op, d }
    const pieces = new Map(); // by place, yarn, and whether they are held
    const names = [];
    let named = -Infinity;
    for (const cell of model.row(y).shown) {
      const x = at.x(cell.x);
      if (x < at.from || x > at.to) continue;
      const op = model.op(y, cell);
      const yarn = model.yarns.get(model.yarn(y, cell));
      const held = op.code === "hold";
      let of = this.known.get(cell.x);
      if (of?.op !== op) {
        of = { op, d: loopsOf(op, held, x, at.w) };
        this.known.set(cell.x, of);
      }
      this.piece(pieces, Math.floor(cell.x / long), yarn, held).d += of.d;
      const [middle, half] = [x + at.w / 2, op.abbr.length * 3.5 + 2];
      if (["k", "p", "hold"].includes(op.code) || middle - half < named) continue;
      named = middle + half;
      names.push(["text", { class: "made", x: round1(middle), y: 45, "text-anchor": "middle" }, op.abbr]);
    }
    const thick = Math.max(Math.min(at.w * 0.24, 5), 1.2);
    const all = [...pieces.values()].sort((a, b) => a.held - b.held);
    const loops = [
      ...all.map(({ yarn, d }) => ["path", { class: `loop-edge yarn-${yarn.id}`, "stroke-width": round1(thick + 1.4), d }]),
      ...all.map(({ yarn, held, d }) => ["path", { class: `loop${yarn.fill ? "" : " ground"}${held ? " held" : ""}`, stroke: yarn.fill || undefined, "stroke-width": round1(thick), d }]),
    ];
    return { loops, names };
  }

  // piece returns the piece to which a loop belongs. Every place has one for every
  // yarn, so that a loop in another yarn changes no piece but those two.
  piece(pieces, place, yarn, held) {
    const key = (id) => `${place} ${id} ${held}`;
    if (!pieces.has(key(yarn.id))) for (const of of this.editor.model.yarns.values()) pieces.set(key(of.id), { yarn: of, held, d: "" });
    return pieces.get(key(yarn.id));
  }

  // begins marks where the round begins with a ring, as one hangs a marker.
  begins(at, y) {
    const { model } = this.editor;
    const first = model.row(y).worked[0];
    if (!first || first.x < 0) return [];
    const left = model.leftFirst(y);
    const x = at.x(first.x + (left ? 0 : 1)) + (left ? -4 : 4);
    return [["ellipse", { class: "ring", cx: round1(x), cy: high + 2, rx: 3.5, ry: 9 }]];
  }

  // over hangs off the tip what is left over, or shows what is missing there.
  over(over, left, right, room, leftFirst) {
    if (over === 0) return [];
    const end = leftFirst ? right : left;
    const way = leftFirst ? 1 : -1;
    const x = Math.min(Math.max(end, 64), room - 64);
    const d = `M${round1(x)} ${high}c${way * 18} 0 ${way * 30} 20 ${way * 18} 28c${way * -12} 4 ${way * -10} -16 0 -27`;
    const words = Math.abs(over) === 1 ? "one" : String(Math.abs(over));
    return [
      ["path", { class: over > 0 ? "spare" : "spare short", d }],
      ["text", { class: "off-tip", x: round1(x + way * 30), y: 40, "text-anchor": way < 0 ? "end" : "start" }, `${words} ${over > 0 ? "over" : "short"}`],
    ];
  }
}

function wood(left, right) {
  return ["path", { class: "wood", d: `M${round1(left)} ${high}l20 -3.5H${round1(right - 20)}l20 3.5l-20 3.5H${round1(left + 20)}z` }];
}

// loopsOf draws the loops that a stitch at x makes, side by side. One that waits on
// waste yarn hangs below the needle.
function loopsOf(op, held, x, w) {
  const n = held ? 1 : op.out;
  const half = Math.min((w / n) * 0.36, 9);
  const [top, foot] = held ? [high + 3, high + 18] : [high - 7, high + 14];
  return Array.from({ length: n }, (_, k) => loop(x + (w * (k + 0.5)) / n, half, top, foot)).join("");
}

// loop draws a stitch as it lies over a needle, as picture.Loop does.
export function loop(x, half, top, foot) {
  const bulge = 1.45 * half;
  const bend = round1(top + 0.4 * (foot - top));
  return `M${round1(x - half)} ${foot}C${round1(x - bulge)} ${bend} ${round1(x - half)} ${top} ${round1(x)} ${top}C${round1(x + half)} ${top} ${round1(x + bulge)} ${bend} ${round1(x + half)} ${foot}`;
}

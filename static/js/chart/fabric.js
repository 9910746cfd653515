// What the cells of a row show, as path data: what each yarn covers, its stitches,
// and the symbols over them.
import { basting } from "./marks.js";
import { rect, round3, symbol } from "./paths.js";

// cloth returns what some cells of a row show, yarn by yarn: covers lists
// { yarn, runs, stitches }. stitch draws a stitch as knitting; without it the row
// is plain.
export function cloth(view, y, cells, stitch) {
  const { model } = view;
  const yarns = new Map();
  const of = { covers: [], symbol: "", edge: "", painted: "" };
  for (const cell of cells) {
    const mark = model.mark(y, cell.column);
    const op = model.opOf(cell, mark);
    const id = model.yarnOf(cell, mark);
    if (!yarns.has(id)) {
      yarns.set(id, { yarn: model.yarns.get(id), runs: [], stitches: "" });
      of.covers.push(yarns.get(id));
    }
    const cover = yarns.get(id);
    const last = cover.runs.at(-1);
    if (last?.to === cell.x - 1) last.to = cell.x;
    else cover.runs.push({ from: cell.x, to: cell.x });
    if (stitch) cover.stitches += stitch(cell.x, op.purl);
    if (op.path && !(stitch && op.code === "p")) { // a purl's bump says it
      const path = symbol(op.path, view.box(y, cell.x));
      of.symbol += path;
      if (stitch || cover.yarn.fill) of.edge += path;
    }
    if (op.code !== model.under(cell).stitch) of.painted += `${basting(view.box(y, cell.x))} `;
  }
  return of;
}

// plainPath returns the attributes of what a yarn covers in a row.
export function plainPath(view, y, { yarn, runs }) {
  return { class: `yarn yarn-${yarn.id}${yarn.fill ? "" : " ground"}`, fill: yarn.fill || "none", d: covered(view, y, runs) };
}

// furrowPath and stitchPath are those of the furrows between its stitches, and of
// these.
export function furrowPath(view, y, { yarn, runs }) {
  return { class: `yarn yarn-${yarn.id}${yarn.fill ? "" : " undyed-furrow"}`, fill: yarn.furrow, d: covered(view, y, runs) };
}

export function stitchPath({ yarn, stitches: d }) {
  return { class: yarn.fill ? "" : "undyed", fill: yarn.cloth, d };
}

function covered(view, y, runs) {
  return runs.map((run) => {
    const b = view.box(y, run.from);
    return rect(b.x, b.y, (run.to - run.from + 1) * b.w, b.h);
  }).join(" ");
}

// fifths returns the line above some cells of a row, over light or dark yarns.
export function fifths(view, y, covers, dark) {
  return covers.filter((of) => of.yarn.dark === dark).flatMap((of) => of.runs).map((run) => {
    const b = view.box(y, run.from);
    return `M ${round3(b.x)} ${round3(b.y)} L ${round3(b.x + (run.to - run.from + 1) * b.w)} ${round3(b.y)}`;
  }).join(" ");
}

// Where motifs that are laid by rule lie on the chart, and the borders of each of them as
// path data. Nothing here touches a page.
import { round3 } from "./paths.js";
import { isDown } from "./repeats.js";

// lying calls each(cell, of) for the cells of a row that a repeat covers; of is the cell of its
// motif: { repeat, right, up }.
function lying(row, model, each) {
  for (const { i, n, r, x, s, y } of row.data.lies ?? row.data.laid ?? []) {
    const { wide } = model.repeats[r];
    for (let k = 0; k < n; k++) each(row.cells[i + k], { repeat: r, right: (((x + s * k) % wide) + wide) % wide, up: y });
  }
}

// coversOf returns what lies uppermost on the cells of a row, a Map from cell to
// { repeat, right, up }, also where a motif leaves what lies under it.
export function coversOf(row, model) {
  const covers = new Map();
  lying(row, model, (cell, of) => covers.set(cell, of));
  return covers;
}

// coverOf returns what lies uppermost on one cell; undefined if nothing does.
export const coverOf = (row, model, cell) => coversOf(row, model).get(cell);

// extent returns the box round all cells that a repeat covers: { low, high, left, right };
// undefined if the view shows none.
export function extent(model, repeat) {
  const at = model.repeats.indexOf(repeat);
  let box;
  for (const row of model.rows) {
    lying(row, model, ({ x }, of) => {
      if (of.repeat !== at || x < 0) return;
      box ??= { low: row.y, high: row.y, left: x, right: x };
      box.high = row.y;
      box.left = Math.min(box.left, x);
      box.right = Math.max(box.right, x);
    });
  }
  return box;
}

const none = -9; // no cell

// borders returns the lines round each motif, drawn once where two meet.
export function borders(model) {
  const { data, height } = model;
  const { width } = data;
  const rows = () => Array.from({ length: height + 2 }, () => new Uint8Array(width + 2));
  const [upright, level, covered] = [rows(), rows(), rows()]; // edges of cells in rows; upper edges of rows; what is covered
  const down = isDown(model);
  for (const row of model.rows) {
    for (const run of row.data.lies ?? row.data.laid ?? []) {
      mark(row, run, model.repeats[run.r], { edges: upright[row.y], cover: covered[row.y], feet: level[down ? row.y : row.y - 1], heads: level[down ? row.y - 1 : row.y] });
    }
  }
  for (let y = 0; y <= height; y++) for (let x = 0; x < width; x++) if (covered[y][x] !== covered[y + 1][x]) level[y][x] = 1;
  const left = (x) => round3(data.left + x * data.cell_width);
  const foot = (y) => round3(data.bottom - y * data.cell_height);
  const parts = [];
  for (let x = 0; x <= width; x++) runs(height + 1, (y) => upright[y][x], (from, to) => parts.push(`M${left(x)} ${foot(from - 1)}V${foot(to)}`));
  for (let y = 0; y <= height; y++) runs(width, (x) => level[y][x], (from, to) => parts.push(`M${left(from)} ${foot(y)}H${left(to + 1)}`));
  return parts.join("");
}

// mark marks the cells of a run, and the edges of its motifs: at their sides, their first
// round and their last.
function mark(row, { i, n, x: begin, s, y: up }, { wide, high }, { edges, cover, feet, heads }) {
  const { cells } = row;
  let before = none;
  for (let k = 0; k < n; k++) {
    const { x } = cells[i + k];
    const next = (((begin + s * k) % wide) + wide) % wide + s;
    const after = k + 1 < n && next >= 0 && next < wide ? cells[i + k + 1].x : none;
    if (x >= 0) {
      cover[x] = 1;
      if (before !== x - 1 && after !== x - 1) edges[x] = 1;
      if (before !== x + 1 && after !== x + 1) edges[x + 1] = 1;
      if (up === 0) feet[x] = 1;
      if (up === high - 1) heads[x] = 1;
    }
    before = after === none ? none : x;
  }
}

// runs calls each(from, to) for the runs of numbers below n for which on holds.
function runs(n, on, each) {
  for (let at = 0; at < n; at++) {
    if (!on(at)) continue;
    const from = at;
    while (at + 1 < n && on(at + 1)) at++;
    each(from, at);
  }
}

// Where motifs that are laid by rule lie on the chart, and the borders of each of them as
// path data. Nothing here touches a page.
import { round3 } from "./paths.js";
import { isDown } from "./repeats.js";

// lying calls each(cell, of) for the cells of a row that a repeat covers, in runs. of is
// { repeat, right, up }, the cell of its motif, and joins: the neighbours that belong to the
// same motif.
function lying(row, model, each) {
  for (const { i, n, r, x, s, y } of row.data.lies ?? row.data.laid ?? []) {
    const { wide } = model.repeats[r];
    const goesOn = (k, right) => k >= 0 && k < n && right >= 0 && right < wide;
    for (let k = 0; k < n; k++) {
      const right = (((x + s * k) % wide) + wide) % wide;
      const joins = [];
      if (goesOn(k + 1, right + s)) joins.push(row.cells[i + k + 1].x);
      if (goesOn(k - 1, right - s)) joins.push(row.cells[i + k - 1].x);
      each(row.cells[i + k], { repeat: r, right, up: y, joins });
    }
  }
}

// coverOf returns what lies uppermost on a cell: { repeat, right, up }, also where its motif
// leaves what lies under; undefined if nothing does.
export function coverOf(row, model, cell) {
  let found;
  lying(row, model, (at, of) => {
    if (at === cell) found = of;
  });
  return found;
}

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

// borders returns the lines round each motif, drawn once where two meet.
export function borders(model) {
  const d = model.data;
  const upright = []; // the edges of each row
  const level = []; // the cells of each edge between rows
  const way = isDown(model) ? -1 : 1;
  for (const row of model.rows) {
    const { y } = row;
    upright[y] = new Set();
    lying(row, model, ({ x }, { repeat, up, joins }) => {
      if (x < 0) return;
      const { high } = model.repeats[repeat];
      if (!joins.includes(x - 1)) upright[y].add(x);
      if (!joins.includes(x + 1)) upright[y].add(x + 1);
      if (way > 0 ? up === 0 : up === high - 1) (level[y - 1] ??= new Set()).add(x);
      if (way > 0 ? up === high - 1 : up === 0) (level[y] ??= new Set()).add(x);
    });
  }
  ends(model, level);
  const left = (x) => round3(d.left + x * d.cell_width);
  const foot = (y) => round3(d.bottom - y * d.cell_height);
  const parts = [];
  stretches(upright, (x, from, to) => parts.push(`M${left(x)} ${foot(from - 1)}V${foot(to)}`));
  level.forEach((xs, y) => runs([...xs].sort((a, b) => a - b), (from, to) => parts.push(`M${left(from)} ${foot(y)}H${left(to + 1)}`)));
  return parts.join("");
}

// ends draws the edge where a repeat begins or ends in the middle of a motif.
function ends(model, level) {
  const covered = (y) => {
    const xs = new Set();
    const row = model.row(y);
    if (row) lying(row, model, ({ x }) => x >= 0 && xs.add(x));
    return xs;
  };
  let below = new Set();
  for (let y = 1; y <= model.height + 1; y++) {
    const here = covered(y);
    for (const x of here) if (!below.has(x)) (level[y - 1] ??= new Set()).add(x);
    for (const x of below) if (!here.has(x)) (level[y - 1] ??= new Set()).add(x);
    below = here;
  }
}

// stretches calls each(edge, from, to) for the rows along which an edge goes on.
function stretches(rows, each) {
  const open = new Map();
  for (let y = 1; y <= rows.length; y++) {
    const now = rows[y] ?? new Set();
    for (const [x, from] of open) {
      if (now.has(x)) continue;
      each(x, from, y - 1);
      open.delete(x);
    }
    for (const x of now) if (!open.has(x)) open.set(x, y);
  }
}

// runs calls each(from, to) for runs of numbers in order.
function runs(list, each) {
  let from = list[0];
  list.forEach((x, i) => {
    if (list[i + 1] === x + 1) return;
    each(from, x);
    from = list[i + 1];
  });
}

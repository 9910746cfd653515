// Places of the drawing: lines, rectangles, areas of one kind, and the mirror
// image across the middle of the gusset. A place is [y, x].

// between lists the cells of a straight line, except the first.
export function between(y0, x0, y1, x1) {
  const steps = Math.max(Math.abs(y1 - y0), Math.abs(x1 - x0));
  return Array.from({ length: steps }, (_, i) => [
    Math.round(y0 + ((y1 - y0) * (i + 1)) / steps), Math.round(x0 + ((x1 - x0) * (i + 1)) / steps),
  ]);
}

export function line(y0, x0, y1, x1) {
  return [[y0, x0], ...between(y0, x0, y1, x1)];
}

export function rectangle(y0, x0, y1, x1) {
  const list = [];
  for (let y = Math.min(y0, y1); y <= Math.max(y0, y1); y++) {
    for (let x = Math.min(x0, x1); x <= Math.max(x0, x1); x++) list.push([y, x]);
  }
  return list;
}

// area returns the cells that show the same stitch in the same yarn as a given
// one and are connected with it, side by side or one above the other. If within
// is given, it stays within those places.
export function area(model, y, x, within) {
  const start = model.at(y, x);
  if (!start) return [];
  const kind = (py, cell) => `${model.op(py, cell).code} ${model.yarn(py, cell)}`;
  const wanted = kind(y, start);
  const seen = new Set([`${y} ${x}`]);
  const list = [];
  const open = [[y, x]];
  while (open.length > 0) {
    const [py, px] = open.pop();
    list.push([py, px]);
    for (const [qy, qx] of [[py, px - 1], [py, px + 1], [py - 1, px], [py + 1, px]]) {
      const cell = model.at(qy, qx);
      if (!cell || seen.has(`${qy} ${qx}`) || kind(qy, cell) !== wanted || (within && !within(qy, qx))) continue;
      seen.add(`${qy} ${qx}`);
      open.push([qy, qx]);
    }
  }
  return list;
}

const across = { A: "Z", Z: "A" };

// mirrored returns the place across the gusset's centre line, or undefined if
// there is no such column. Columns made at one edge answer to those made at the
// other; the others are counted from the far end of their family.
export function mirrored(model, y, x) {
  const row = model.row(y);
  const cell = row?.at(x);
  if (!cell || cell.column === "") return undefined;
  const family = cell.column[0];
  const n = Number(cell.column.slice(1));
  const name = across[family] ? across[family] + n : family + (lastOf(model, row, family) + 1 - n);
  const other = row.column(name);
  return other && other.x >= 0 ? [y, other.x] : undefined;
}

// lastOf returns the highest number of a column in a family. It looks at the
// whole section, since a column that a decrease took in keeps its number.
function lastOf(model, row, family) {
  model.families ??= new Map();
  const key = `${row.section} ${family}`;
  if (!model.families.has(key)) {
    let n = 0;
    for (const r of model.rows) {
      if (r.section !== row.section) continue;
      for (const c of r.cells) if (c.column[0] === family) n = Math.max(n, Number(c.column.slice(1)));
    }
    model.families.set(key, n);
  }
  return model.families.get(key);
}

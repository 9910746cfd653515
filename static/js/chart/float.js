// The strands behind the fabric, as in internal/chart. The tube is one long
// spiral, so a float may begin in one row and end in the next.

// floats returns the floats that are too long.
export function floats(model) {
  const longest = model.data.rules.float;
  const list = [];
  if (!longest) return list;
  for (let y = 1; y <= model.height; y++) {
    for (const f of ending(model, y)) if (f.length > longest) list.push(f);
  }
  return list;
}

// ending returns the floats that end in a row, having begun in it or in the row
// below. They are cached by row until either changes.
function ending(model, y) {
  const now = model.totals(y);
  const before = y > 1 ? model.totals(y - 1) : { worked: [] };
  if (now.strands?.before === before) return now.strands.list;
  const list = strands(model, y, before.worked, now.worked);
  now.strands = { before, list };
  return list;
}

function strands(model, y, below, worked) {
  const last = new Map(); // yarn → { y, at, place }
  below.forEach(({ i, yarn }, k) => last.set(yarn, { y: y - 1, at: i, place: k - below.length }));
  const list = [];
  worked.forEach(({ i, yarn }, place) => {
    const use = last.get(yarn);
    const length = use ? place - use.place - 1 : 0;
    if (length > 0) list.push({ yarn, y: use.y, at: use.at, to: y, next: i, length });
    last.set(yarn, { y, at: i, place });
  });
  return list;
}

// yarnsOf returns how many yarns a round has, by its totals.
export function yarnsOf(totals) {
  totals.yarns ??= new Set(totals.worked.map((w) => w.yarn)).size;
  return totals.yarns;
}

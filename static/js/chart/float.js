// The strands behind the fabric, as in internal/chart. The tube is one long
// spiral, so a float may begin in one row and end in the next; where another section
// begins, the round's beginning may move on between them.
import { none } from "./edits.js";

// floats returns the floats that are too long, apart from those that are meant.
export function floats(model) {
  return long(model).filter((f) => !isMeant(model, f));
}

// meant returns the floats that are longer than the rule, as somebody wants them.
export function meant(model) {
  return long(model).filter((f) => isMeant(model, f));
}

// mean returns the edit that marks a float as meant, or, if not, takes that mark off. It
// stands on the stitch before the float as the right hand works it, with the
// float's yarn and length: one that comes to be longer is told again.
export function mean(model, f, is) {
  const at = seat(model, f);
  return { ...at, layer: "strand", value: is ? f.yarn + f.length : "" };
}

function isMeant(model, f) {
  const { section, round, column } = seat(model, f);
  const { strand } = (column && model.marks.get(`${section} ${round} ${column}`)) || none;
  return strand.slice(0, 1) === f.yarn && f.length <= Number(strand.slice(1));
}

// seat is the place of the mark; none if its stitch has no column.
function seat(model, f) {
  const left = model.data.mirrored;
  const row = model.row(left ? f.to : f.y);
  return { section: row.section, round: row.round, column: row.cells[left ? f.next : f.at].column };
}

function long(model) {
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
  const { fresh, moved } = model.row(y).data;
  const before = y > 1 && !fresh ? model.totals(y - 1) : none;
  if (now.strands?.before === before) return now.strands.list;
  const list = strands(y, before.worked || [], now.worked, moved || 0);
  now.strands = { before, list };
  return list;
}

// strands returns those that end in a row, before which so many stitches are worked more.
function strands(y, below, worked, moved) {
  const last = new Map(); // yarn → { y, at, place }
  below.forEach(({ i, yarn }, k) => last.set(yarn, { y: y - 1, at: i, place: k - below.length - moved }));
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

// What can be done with a selection, as edits: copy, paste, repeat, mirror,
// shift, erase. A piece is a list of cells { left, up, stitch, colour },
// counted to the left of and above its lower right corner; an empty stitch
// means as planned. Nothing here touches a page.

// piece copies places of the drawing as a piece.
export function piece(model, places) {
  if (places.length === 0) return [];
  const right = Math.max(...places.map(([, x]) => x));
  const low = Math.min(...places.map(([y]) => y));
  return places.map(([y, x]) => {
    const cell = model.at(y, x);
    return {
      left: right - x, up: y - low,
      stitch: model.shown(model.mark(y, cell.column).stitch), colour: model.mark(y, cell.column).colour,
    };
  });
}

// paste puts a piece down with its lower right corner at a place. What would
// lie outside the chart is left out.
export function paste(model, cells, y, x) {
  return cells.flatMap((c) => put(model, y + c.up, x - c.left, c));
}

function put(model, y, x, { stitch, colour }) {
  const cell = model.at(y, x);
  return cell ? model.edits(y, cell, { stitch, colour }) : [];
}

export function erase(model, places) {
  return places.flatMap(([y, x]) => put(model, y, x, { stitch: "", colour: "" }));
}

// paintAll gives every place one value of a layer.
export function paintAll(model, places, layer, value) {
  return places.flatMap(([y, x]) => {
    const cell = model.at(y, x);
    return cell ? model.edits(y, cell, { [layer]: value }) : [];
  });
}

// repeat lays a piece again and again across its rounds to the edges of the
// chart, from its box moved by some columns.
export function repeat(model, cells, box, by) {
  const wide = box.right - box.left + 1;
  const edits = [];
  for (let x = box.right + by - wide; x >= -wide; x -= wide) edits.push(...paste(model, cells, box.low, x));
  for (let x = box.right + by + (by === 0 ? wide : 0); x < model.data.width + wide; x += wide) edits.push(...paste(model, cells, box.low, x));
  return edits;
}

// laidAcross returns how a box comes out when it is repeated across its rounds:
// how often it stands whole in all of them, how many stitches are left over on
// either side, whether those differ from round to round, by how many columns it
// has to move for them to be shared by both ends, and whether places without a
// stitch lie between. Where a whole round is shown, what is cut at one edge goes
// on at the other.
export function laidAcross(model, box) {
  const wide = box.right - box.left + 1;
  const rounds = [];
  for (let y = box.low; y <= box.high; y++) rounds.push(boxesOf(model.row(y), box.left, wide));
  const whole = [...rounds[0].there.keys()].filter((k) => rounds.every((r) => r.there.get(k) === wide));
  const ends = rounds.map((r) => leftOver(r, whole));
  const [{ left, right }] = ends;
  const how = { times: whole.length, left, right, middle: 0, gaps: rounds.some((r) => r.gaps), uneven: ends.some((e) => e.left !== left || e.right !== right) };
  if (!how.gaps && rounds.every((r) => r.round && r.n % wide === 0)) return { ...how, times: Math.min(...rounds.map((r) => r.n)) / wide, left: 0, right: 0, uneven: rounds.some((r) => r.n !== rounds[0].n) };
  const rest = rounds[0].n % wide;
  if (rest > 1 && !how.gaps && !how.uneven) how.middle = (((rounds[0].low + Math.floor(rest / 2) - box.left) % wide) + wide) % wide;
  return how;
}

// boxesOf returns how many stitches of each repeat of a box a row has, by how far
// the repeat stands to the right of the box.
function boxesOf({ shown, cells, span }, left, wide) {
  const there = new Map();
  for (const { x } of shown) {
    const k = Math.floor((x - left) / wide);
    there.set(k, (there.get(k) ?? 0) + 1);
  }
  const gaps = shown.length > 0 && shown.length < span.high - span.low + 1;
  return { there, n: shown.length, low: span?.low, gaps, round: shown.length === cells.length };
}

// leftOver returns how many stitches of a row lie beside the whole repeats.
function leftOver({ there }, whole) {
  const first = Math.min(...whole);
  const over = { left: 0, right: 0 };
  for (const [k, n] of there) if (!whole.includes(k)) over[k < first ? "left" : "right"] += n;
  return over;
}

// laidUp lays a piece again and again above itself: the edits, how often it
// stands whole, and how many rounds are left over.
export function laidUp(model, cells, box) {
  const high = box.high - box.low + 1;
  const edits = [];
  for (let y = box.low + high; y <= model.height; y += high) edits.push(...paste(model, cells, y, box.right));
  const room = model.height - box.low + 1;
  return { edits, times: Math.floor(room / high), over: room % high };
}

// flip mirrors a selection within its box: left to right, with the mirror image
// of each stitch, or upside down.
export function flip(model, places, box, over) {
  const seen = new Map(places.map(([y, x]) => [`${y} ${x}`, seenAt(model, y, x)]));
  return places.flatMap(([y, x]) => {
    const from = over ? [box.high + box.low - y, x] : [y, box.right + box.left - x];
    const cell = seen.get(from.join(" "));
    if (!cell) return [];
    const stitch = over || cell.stitch === "" ? cell.stitch : model.ops.get(cell.stitch).twin;
    return put(model, y, x, { stitch, colour: cell.colour });
  });
}

function seenAt(model, y, x) {
  const cell = model.at(y, x);
  const mark = model.mark(y, cell.column);
  return { stitch: model.shown(mark.stitch), colour: mark.colour };
}

// shift moves what is painted on a selection by rows and cells. It returns the
// edits, and the places where it lies afterwards.
export function shift(model, places, [up, right]) {
  const cells = places.map(([y, x]) => ({ y: y + up, x: x + right, ...seenAt(model, y, x) }));
  const marks = new Map(places.map(([y, x]) => [`${y} ${x}`, [y, x, { stitch: "", colour: "" }]]));
  for (const c of cells) marks.set(`${c.y} ${c.x}`, [c.y, c.x, c]);
  return {
    edits: [...marks.values()].flatMap(([y, x, values]) => put(model, y, x, values)),
    places: cells.filter((c) => model.at(c.y, c.x)).map((c) => [c.y, c.x]),
  };
}

// noted returns the edit that writes a note on a cell or a round. here returns
// those that mark a round, and no other, as the one on the needles.
export function noted(model, y, column, text) {
  const { section, round } = model.row(y);
  if (model.mark(y, column).note === text) return [];
  return [{ section, round, column, layer: "note", value: text }];
}

export function here(model, y) {
  const { section, round } = model.row(y);
  const edits = [];
  for (const [key, mark] of model.marks) {
    const [s, r, column] = key.split(" ");
    if (mark.needles !== "" && column === "") edits.push({ section: s, round: Number(r), column, layer: "needles", value: "" });
  }
  if (model.mark(y, "").needles === "") edits.push({ section, round, column: "", layer: "needles", value: "here" });
  return edits;
}

// putBack gives a lost mark a place, and removes it from the list of lost ones.
export function putBack(model, lost, y, x) {
  const cell = model.at(y, x);
  if (!cell) return [];
  const { section, round } = model.row(y);
  return [{ ...edit(lost), value: "" }, { section, round, column: lost.column === "" ? "" : cell.column, layer: lost.layer, value: lost.value }];
}

// putBlockBack gives lost marks of one block places, as they lay beside each
// other, the lowest and first of them at a place. It returns the edits, and which
// of the marks found a stitch.
export function putBlockBack(model, block, y, x) {
  const number = (m) => Number(m.column.slice(1)) * (m.column[0] === "Z" ? -1 : 1);
  const low = Math.min(...block.map((m) => m.round));
  const first = Math.min(...block.map(number));
  const way = model.data.from_left ? 1 : -1;
  const found = [];
  const edits = block.flatMap((m) => {
    const list = putBack(model, m, y + m.round - low, x + way * (number(m) - first));
    if (list.length > 0) found.push(m);
    return list;
  });
  return { edits, found };
}

export function dropped(lost) {
  return { ...edit(lost), value: "" };
}

function edit({ section, round, column, layer, value }) {
  return { section, round, column, layer, value };
}

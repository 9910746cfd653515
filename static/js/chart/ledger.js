// The ledger of the chart: which rounds don't add up, what a stitch would do
// to its round, and how a round that doesn't add up can be mended.

// faults says in words which rounds don't add up, as internal/chart does. y is
// 0 for what comes after the last row.
export function faults(model) {
  const list = [];
  let left = model.data.start;
  for (let y = 1; y <= model.height; y++) {
    const { eats, makes } = model.totals(y);
    if (eats !== left) list.push({ y, left, eats, words: words(model, y, left, eats) });
    left = makes;
  }
  if (model.height > 0 && left !== model.data.end) {
    const { next, end } = model.data;
    list.push({ y: 0, left, eats: end, words: `${next}: ${balance(left, end)} (${model.part(model.height)}${model.name(model.height)} leaves ${left}; it takes ${end})` });
  }
  return list;
}

function words(model, y, left, eats) {
  if (y === 1) return `${model.name(1)}: ${balance(left, eats)} (${left} on the needles; it takes ${eats})`;
  const apart = model.row(y).section !== model.row(y - 1).section;
  return `${apart ? "" : model.part(y)}${model.name(y, apart)}: ${balance(left, eats)} (${model.name(y - 1, apart)} leaves ${left}; it takes ${eats})`;
}

// balance says what is over or missing, as internal/stitch does.
function balance(left, takes) {
  return `${stitches(Math.abs(left - takes))} ${left > takes ? "left over" : "short"}`;
}

function stitches(n) {
  return n === 1 ? "one stitch" : `${n} stitches`;
}

// below returns what the round below leaves, and above what the round above
// eats.
export function below(model, y) {
  return y === 1 ? model.data.start : model.totals(y - 1).makes;
}

export function above(model, y) {
  return y === model.height ? model.data.end : model.totals(y + 1).eats;
}

// offers says of every stitch that can be painted what it would do to the round
// of a cell: net is how many more stitches the round would come to. Those that
// keep it in balance come first.
export function offers(model, y, x) {
  const cell = model.at(y, x);
  if (!cell) return [];
  const now = model.op(y, cell);
  const { eats, makes } = model.totals(y);
  const [left, wanted] = [below(model, y), above(model, y)];
  const list = [...model.ops.values()].filter((op) => op.paint).map((op) => {
    const e = eats - now.in + op.in;
    const m = makes - now.out + op.out;
    const balanced = e === left && m === wanted;
    const net = op.out - op.in - (now.out - now.in);
    return { code: op.code, balanced, net, here: op.code === now.code, words: balanced ? "" : changes(model, y, { e, m, left, wanted }) };
  });
  return [...list.filter((o) => o.balanced), ...list.filter((o) => !o.balanced)];
}

function changes(model, y, { e, m, left, wanted }) {
  const parts = [];
  if (e !== left) parts.push(balance(left, e));
  if (m !== wanted) parts.push(`${stitches(Math.abs(m - wanted))} too ${m > wanted ? "many" : "few"} for ${y === model.height ? model.data.next : model.name(y + 1)}`);
  return parts.join("; ");
}

// mends returns ways to mend a fault, the smallest first. Each is edits with
// words, and leaves fewer faults than there are.
export function mends(model, fault) {
  const ways = [];
  const lower = fault.y === 0 ? model.height : fault.y - 1;
  for (const y of [lower, fault.y]) {
    if (y < 1) continue;
    const edits = asPlanned(model, y);
    if (edits.length > 0) ways.push({ words: `take ${model.name(y)} back to the plan`, edits });
  }
  const more = fault.left - fault.eats;
  if (more > 0 && fault.y > 0) ways.push(add(model, fault.y, "k2tog", more, nearby(model, lower)));
  if (more < 0 && lower >= 1) ways.push(add(model, lower, "kfb", -more, nearby(model, fault.y || lower)));
  const before = faults(model).length;
  return ways.filter((way) => way && helps(model, way.edits, before));
}

// asPlanned returns the edits that take a round's stitches back to the plan.
function asPlanned(model, y) {
  return model.row(y).cells.map((cell) => model.edit(y, cell, "stitch", "")).filter(Boolean);
}

// nearby returns the column of the first stitch that was painted in a row.
function nearby(model, y) {
  return y >= 1 ? model.row(y).cells.find((c) => model.mark(y, c.column).stitch !== "")?.column : undefined;
}

// add paints n of a stitch over plain ones of a row, as near to a column as
// there are any.
function add(model, y, code, n, near) {
  const cells = model.row(y).cells;
  const middle = Math.max(cells.findIndex((c) => c.column === near), 0);
  const plain = cells.map((cell, i) => ({ cell, off: Math.abs(i - middle) }))
    .filter(({ cell }) => model.op(y, cell).code === "k")
    .sort((a, b) => a.off - b.off).slice(0, n);
  if (plain.length < n) return undefined;
  const op = model.ops.get(code);
  const stitches = plain.map(({ cell }) => cells.indexOf(cell) + 1).sort((a, b) => a - b).join(", ");
  return {
    words: `work ${op.abbr} at stitch ${stitches} of ${model.name(y)}`,
    edits: plain.flatMap(({ cell }) => model.edits(y, cell, { stitch: code })),
  };
}

function helps(model, edits, before) {
  const inverse = model.apply(edits);
  const after = faults(model).length;
  model.apply(inverse);
  return after < before;
}

// The chart as data: what the plan draws, what is painted over it, and whether
// each round adds up. It touches no page. Rows are numbered from the bottom,
// from 1.
import { apply, marksOf, none } from "./edits.js";
import { Row } from "./row.js";

export class Model {
  // data is a page's chart, as written by Page in internal/chart.
  constructor(data) {
    this.data = data;
    this.ops = new Map(data.ops.map((op) => [op.code, op]));
    this.yarns = new Map(data.yarns.map((yarn) => [yarn.id, yarn]));
    this.marks = marksOf(data.marks ?? []);
    this.repeats = data.repeats ?? [];
    this.rows = data.rows.map((row, i) => new Row(row, i + 1, this.repeats));
    this.byKey = new Map(this.rows.map((row) => [row.key, row]));
    this.known = []; // totals and yarns of rows, until those change
    this.several = new Set(this.rows.map((row) => row.section)).size > 1;
  }

  get height() {
    return this.rows.length;
  }

  row(y) {
    return this.rows[y - 1];
  }

  // at returns the cell at a place of the drawing, or undefined.
  at(y, x) {
    return this.row(y)?.at(x);
  }

  // find returns the place of an anchor as { y, x, cell }, or undefined.
  find({ section, round, column }) {
    const row = this.byKey.get(`${section} ${round}`);
    const cell = row?.column(column);
    return cell && cell.x >= 0 ? { y: row.y, x: cell.x, cell } : undefined;
  }

  // first returns the place of the first stitch of a round, in the order worked,
  // or of the chart if it lacks that round.
  first(section, round) {
    const row = this.byKey.get(`${section} ${round}`) ?? this.row(1);
    const { worked: [begin], span } = row;
    if (!span) return undefined;
    return { y: row.y, x: begin.x >= 0 ? begin.x : this.leftFirst(row.y) ? span.low : span.high };
  }

  // leftFirst tells whether a row is begun at its left edge.
  leftFirst(y) {
    return Boolean(this.data.from_left) !== Boolean(this.row(y)?.behind);
  }

  anchor(y, x) {
    const row = this.row(y);
    const cell = row?.at(x);
    return cell && { section: row.section, round: row.round, column: cell.column };
  }

  // mark returns what is painted on a cell of a row, or, without a column, on
  // the row.
  mark(y, column) {
    return this.marks.get(`${this.row(y).key} ${column}`) ?? none;
  }

  // op returns the operation that a cell shows on this hand.
  op(y, cell) {
    return this.opOf(cell, this.mark(y, cell.column));
  }

  // opOf and yarnOf are op and yarn of a cell whose mark is known. What no hand
  // painted is as a repeat lays it, and else as planned.
  opOf(cell, { stitch }) {
    return this.ops.get(stitch === "" ? this.under(cell).stitch : this.shown(stitch));
  }

  yarnOf(cell, { colour }) {
    return colour || this.under(cell).colour;
  }

  // under returns what lies under the marks of a cell: { stitch, colour }.
  under(cell) {
    const of = cell.laid ?? cell.kept;
    return { stitch: of?.stitch || cell.op, colour: of?.yarn || this.data.yarns[0].id };
  }

  // shown turns a stored operation into the one that this hand shows, and back:
  // marks are stored for the right hand.
  shown(code) {
    return this.data.mirrored && code !== "" ? this.ops.get(code).twin : code;
  }

  yarn(y, cell) {
    return this.yarnOf(cell, this.mark(y, cell.column));
  }

  painted(y, cell) {
    const { stitch, colour, note } = this.mark(y, cell.column);
    return stitch !== "" || colour !== "" || note !== "";
  }

  // edit returns the edit that gives a cell a value as seen on this hand, or
  // undefined if it has that value already. What lies there
  // anyway, as planned or laid, takes the mark off.
  edit(y, cell, layer, value) {
    let stored = value;
    const under = this.under(cell);
    if (layer === "stitch" && value !== "") stored = value === under.stitch ? "" : this.shown(value);
    if (layer === "colour" && value === under.colour) stored = "";
    if (this.mark(y, cell.column)[layer] === stored) return undefined;
    const { section, round } = this.row(y);
    return { section, round, column: cell.column, layer, value: stored };
  }

  // edits returns the edits for several layers of one cell.
  edits(y, cell, values) {
    return Object.entries(values).map(([layer, value]) => this.edit(y, cell, layer, value)).filter(Boolean);
  }

  apply(edits) {
    for (const y of this.touched(edits)) delete this.known[y];
    return apply(this.marks, edits);
  }

  // touched lists the rows that edits change.
  touched(edits) {
    const rows = new Set();
    let last;
    for (const e of edits) {
      if (last?.section !== e.section || last?.round !== e.round) {
        const y = this.byKey.get(`${e.section} ${e.round}`)?.y;
        if (y) rows.add(y);
        last = e;
      }
    }
    return [...rows];
  }

  // totals returns how many loops a whole round eats and makes, and its yarns
  // in the order worked.
  totals(y) {
    this.known[y] ??= this.count(y);
    return this.known[y];
  }

  count(y) {
    let eats = 0;
    let makes = 0;
    const worked = [];
    const row = this.row(y);
    for (let i = 0; i < row.cells.length; i++) {
      const cell = row.cells[i];
      const mark = this.marks.get(`${row.key} ${cell.column}`) ?? none;
      const op = this.opOf(cell, mark);
      eats += op.in;
      makes += op.out;
      if (op.code !== "hold" && op.in + op.out > 0) worked.push({ i, yarn: this.yarnOf(cell, mark) });
    }
    if (row.behind) worked.reverse();
    return { eats, makes, worked };
  }

  // name returns how a sentence names a round, with its section where two
  // sections meet.
  name(y, section) {
    const row = this.row(y);
    return section ? `${row.noun} ${row.round} of the ${row.name}` : `${row.noun} ${row.round}`;
  }

  // part returns a row's section, to begin a sentence with, if the view has
  // several.
  part(y) {
    return this.several ? `${this.row(y).name}, ` : "";
  }

  // describe returns a cell in words, to be read out.
  describe(y, x) {
    const row = this.row(y);
    const cell = row?.at(x);
    if (!cell) return "";
    const place = row.place(cell);
    const parts = [this.name(y, this.several), `stitch ${place}`, this.op(y, cell).words];
    if (cell.column !== "") parts.push(cell.column[0] === "B" && ["hand", "top"].includes(row.section) ? "over the thumb" : born(cell.column));
    parts.push(this.yarns.get(this.yarn(y, cell)).name);
    if (this.painted(y, cell)) parts.push("painted");
    else if (cell.laid) parts.push(`of ${nameOf(this.repeats[cell.laid.repeat])}`);
    const { note } = this.mark(y, cell.column);
    if (note !== "") parts.push(`note: ${note}`);
    return parts.join(", ");
  }
}

// nameOf returns what a sentence calls a repeat.
export const nameOf = (repeat) => repeat.title;

const families = {
  B: "of the base", A: "made at the first edge", Z: "made at the other edge", H: "of the hand",
  C: "of the bridge", P: "picked up", M: "made between",
};

// born says where a column comes from: "3rd made at the first edge".
export function born(column) {
  const n = Number(column.slice(1));
  const ends = ["th", "st", "nd", "rd"];
  const end = n % 100 > 10 && n % 100 < 14 ? "th" : (ends[n % 10] ?? "th");
  return `${n}${end} ${families[column[0]]}`;
}

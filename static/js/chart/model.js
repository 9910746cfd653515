// The chart as data: what the plan draws, what is painted over it, and
// whether each round adds up. It touches no page.
import { anchor, apply, marksOf } from "./edits.js";

export class Model {
  // data is a page's chart as internal/chart's Page writes it.
  constructor(data) {
    this.data = data;
    this.ops = new Map(data.ops.map((op) => [op.code, op]));
    this.yarns = new Map(data.yarns.map((yarn) => [yarn.id, yarn]));
    this.marks = marksOf(data.marks ?? []);
    this.places = new Map(); // "round x" → cell
    for (const row of data.rows) {
      for (const cell of row.cells) this.places.set(`${row.round} ${cell.x}`, { ...cell, round: row.round });
    }
  }

  get rounds() {
    return this.data.rows.length;
  }

  row(round) {
    return this.data.rows[round - 1];
  }

  // at is the cell at a place of the drawing; undefined where there is none.
  at(round, x) {
    return this.places.get(`${round} ${x}`);
  }

  // mark is what is painted on a cell.
  mark(round, column) {
    return this.marks.get(anchor({ section: this.data.section, round, column })) ?? { stitch: "", colour: "" };
  }

  // op is what a cell shows on this hand.
  op(round, cell) {
    const { stitch } = this.mark(round, cell.column);
    return this.ops.get(stitch === "" ? cell.op : this.shown(stitch));
  }

  // shown turns a stored operation into the one that this hand shows, and
  // back: marks speak of the right hand.
  shown(code) {
    return this.data.mirrored ? this.ops.get(code).twin : code;
  }

  yarn(round, cell) {
    return this.mark(round, cell.column).colour || this.data.yarns[0].id;
  }

  painted(round, cell) {
    const mark = this.mark(round, cell.column);
    return mark.stitch !== "" || mark.colour !== "";
  }

  // edit makes the edit that gives a cell a value as seen on this hand; an
  // operation that the plan has there anyway is taken back to the plan.
  // Undefined if the cell has the value already.
  edit(round, cell, layer, value) {
    let stored = value;
    if (layer === "stitch" && value !== "") stored = value === cell.op ? "" : this.shown(value);
    if (layer === "colour" && value === this.data.yarns[0].id) stored = "";
    if (this.mark(round, cell.column)[layer] === stored) return undefined;
    return { section: this.data.section, round, column: cell.column, layer, value: stored };
  }

  apply(edits) {
    return apply(this.marks, edits);
  }

  // totals are the loops that a whole round eats and makes.
  totals(round) {
    const row = this.row(round);
    let eats = row.rest_in;
    let makes = row.rest_out;
    for (const cell of row.cells) {
      const op = this.op(round, cell);
      eats += op.in;
      makes += op.out;
    }
    return { eats, makes };
  }

  // faults says in words which rounds don't add up, as internal/chart does.
  faults() {
    const list = [];
    let left = this.data.start;
    for (let round = 1; round <= this.rounds; round++) {
      const { eats, makes } = this.totals(round);
      if (eats !== left) {
        const words = round === 1
          ? `${left} stitches are on the needles, round 1 needs ${eats}`
          : `round ${round - 1} makes ${left} stitches, round ${round} needs ${eats}`;
        list.push({ round, words });
      }
      left = makes;
    }
    if (left !== this.data.end) {
      list.push({ round: 0, words: `round ${this.rounds} makes ${left} stitches, the round after the gusset needs ${this.data.end}` });
    }
    return list;
  }

  // describe reads a cell out.
  describe(round, x) {
    const cell = this.at(round, x);
    if (!cell) return "";
    const place = this.row(round).cells.findIndex((c) => c.x === x) + 1;
    const parts = [`round ${round}`, `stitch ${place}`, this.op(round, cell).words, born(cell.column), this.yarns.get(this.yarn(round, cell)).name];
    if (this.painted(round, cell)) parts.push("painted");
    return parts.join(", ");
  }
}

const families = { B: "of the base", A: "made at the first edge", Z: "made at the other edge", H: "of the hand" };

// born says where a column comes from: "3rd made at the first edge".
export function born(column) {
  const n = Number(column.slice(1));
  const ends = ["th", "st", "nd", "rd"];
  const end = n % 100 > 10 && n % 100 < 14 ? "th" : (ends[n % 10] ?? "th");
  return `${n}${end} ${families[column[0]]}`;
}

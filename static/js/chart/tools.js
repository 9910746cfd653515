// What the pointer does: it paints a stitch or a colour, or takes a cell back
// to the plan.
import { rounds } from "./history.js";

export class Brush {
  constructor(model, history) {
    this.model = model;
    this.history = history;
    this.tool = { layer: "stitch", value: "p" };
    this.stroke = undefined;
  }

  choose(tool) {
    this.tool = tool;
  }

  // edits are what the tool does to one cell.
  edits(round, x) {
    const cell = this.model.at(round, x);
    if (!cell) return [];
    const wanted = this.tool.erase
      ? [["stitch", ""], ["colour", ""]]
      : [[this.tool.layer, this.tool.value]];
    return wanted.map(([layer, value]) => this.model.edit(round, cell, layer, value)).filter(Boolean);
  }

  // once paints one cell as a stroke of its own.
  once(round, x) {
    this.history.stroke(this.edits(round, x));
  }

  // begin, move and end are one stroke of the pointer; it is one edit group.
  begin(round, x) {
    this.stroke = { edits: [], inverse: [], round, x };
    this.history.open = this.stroke;
    return this.touch(round, x);
  }

  // move paints every cell between two places, however fast the pointer was,
  // and gives the rounds that it changed.
  move(round, x) {
    if (!this.stroke) return [];
    const touched = new Set();
    for (const [r, c] of between(this.stroke.round, this.stroke.x, round, x)) {
      for (const changed of this.touch(r, c)) touched.add(changed);
    }
    this.stroke.round = round;
    this.stroke.x = x;
    return [...touched];
  }

  touch(round, x) {
    const edits = this.edits(round, x);
    if (edits.length === 0) return [];
    this.stroke.inverse.unshift(...this.model.apply(edits));
    this.stroke.edits.push(...edits);
    return [round];
  }

  // end hands the stroke over: it is taken back and done again as one group.
  end() {
    const stroke = this.close();
    if (!stroke || stroke.edits.length === 0) return;
    this.model.apply(stroke.inverse);
    this.history.stroke(stroke.edits);
  }

  // drop takes a stroke back that is not finished.
  drop() {
    const stroke = this.close();
    if (!stroke) return [];
    this.model.apply(stroke.inverse);
    return rounds(stroke.edits);
  }

  close() {
    const stroke = this.stroke;
    this.stroke = this.history.open = undefined;
    return stroke;
  }
}

// between lists the cells of a straight line, without the first.
export function between(r0, x0, r1, x1) {
  const steps = Math.max(Math.abs(r1 - r0), Math.abs(x1 - x0));
  const cells = [];
  for (let i = 1; i <= steps; i++) {
    cells.push([Math.round(r0 + ((r1 - r0) * i) / steps), Math.round(x0 + ((x1 - x0) * i) / steps)]);
  }
  return cells;
}

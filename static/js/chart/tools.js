// What the pointer does: it paints freely, along a line, over a rectangle or an
// area, stamps a piece, or selects. One stroke of the pointer is one group of
// edits.
import { area, between, line, mirrored, rectangle } from "./cells.js";
import { paste } from "./commands.js";

const needsCell = new Set(["fill", "stamp"]); // shapes that are put down on a cell

export class Brush {
  constructor(model, history) {
    this.model = model;
    this.history = history;
    this.tool = { shape: "free", layer: "stitch", value: "p" };
    this.stroke = undefined;
  }

  choose(tool) {
    this.tool = { shape: "free", ...tool };
  }

  // edits returns what the tool does to one cell, and, with the mirror brush,
  // to the one across the gusset.
  edits(y, x) {
    const list = this.paint(y, x, this.tool.value);
    const other = this.tool.mirror && mirrored(this.model, y, x);
    if (other && other[1] !== x) {
      const twin = this.tool.layer === "stitch" && this.tool.value ? this.model.ops.get(this.tool.value).twin : this.tool.value;
      list.push(...this.paint(...other, twin));
    }
    return list;
  }

  paint(y, x, value) {
    const cell = this.model.at(y, x);
    if (!cell) return [];
    return this.model.edits(y, cell, this.tool.erase ? { stitch: "", colour: "" } : { [this.tool.layer]: value });
  }

  over(places) {
    return places.flatMap(([y, x]) => this.edits(y, x));
  }

  // once paints one cell as a stroke of its own.
  once(y, x) {
    this.history.stroke(this.edits(y, x));
  }

  // begin, move and end make up one stroke of the pointer. Each returns the rows
  // that it changed.
  begin(y, x) {
    this.stroke = { edits: [], inverse: [], from: [y, x], at: [y, x] };
    this.history.open = this.stroke;
    if (this.tool.shape === "free") return this.touch([[y, x]]);
    return this.redraw(y, x);
  }

  move(y, x) {
    const { stroke } = this;
    if (!stroke || (stroke.at[0] === y && stroke.at[1] === x)) return [];
    if (needsCell.has(this.tool.shape) && !this.model.at(y, x)) return []; // the piece stays on the last cell
    const before = stroke.at;
    stroke.at = [y, x];
    if (this.tool.shape === "free") return this.touch(between(...before, y, x));
    return this.redraw(y, x);
  }

  touch(places) {
    const changed = new Set();
    for (const [y, x] of places) {
      const edits = this.edits(y, x);
      if (edits.length === 0) continue;
      this.stroke.inverse.unshift(...this.model.apply(edits));
      this.stroke.edits.push(...edits);
      for (const row of this.model.touched(edits)) changed.add(row);
    }
    return [...changed];
  }

  // redraw takes back what the stroke drew, and draws it anew from where it
  // began to where it is now.
  redraw(y, x) {
    const { stroke, model } = this;
    const changed = new Set(model.touched(stroke.edits));
    model.apply(stroke.inverse);
    stroke.edits = unique(this.shape(...stroke.from, y, x));
    stroke.inverse = model.apply(stroke.edits);
    for (const row of model.touched(stroke.edits)) changed.add(row);
    return [...changed];
  }

  shape(y0, x0, y1, x1) {
    switch (this.tool.shape) {
      case "line": return this.over(line(y0, x0, y1, x1));
      case "rectangle": return this.over(rectangle(y0, x0, y1, x1));
      case "fill": return this.over(area(this.model, y1, x1));
      case "stamp": return paste(this.model, this.tool.piece ?? [], y1, x1);
    }
    return [];
  }

  // end finishes the stroke: it is taken back, and done again as one group.
  end() {
    const stroke = this.close();
    if (!stroke || stroke.edits.length === 0) return;
    this.model.apply(stroke.inverse);
    this.history.stroke(stroke.edits);
  }

  // drop takes back a stroke that is not finished.
  drop() {
    const stroke = this.close();
    if (!stroke) return [];
    this.model.apply(stroke.inverse);
    return this.model.touched(stroke.edits);
  }

  close() {
    const { stroke } = this;
    this.stroke = this.history.open = undefined;
    return stroke;
  }
}

// unique keeps only the last edit of each layer of each cell.
function unique(edits) {
  const last = new Map(edits.map((e) => [`${e.section} ${e.round} ${e.column} ${e.layer}`, e]));
  return [...last.values()];
}

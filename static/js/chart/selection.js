// The selected cells, by their anchors, so that the selection outlives a change
// of view, of layout and of plan.
import { rectangle } from "./cells.js";
import { anchor } from "./edits.js";

export class Selection {
  constructor() {
    this.keys = new Set();
  }

  get empty() {
    return this.keys.size === 0;
  }

  clear() {
    this.keys = new Set();
  }

  // copy and restore serve a selection that is tried out and taken back.
  copy() {
    return new Set(this.keys);
  }

  restore(keys) {
    this.keys = new Set(keys);
  }

  has(model, y, x) {
    const at = model.anchor(y, x);
    return at !== undefined && this.keys.has(anchor(at));
  }

  // set selects places of the drawing instead of what was selected.
  set(model, places) {
    this.keys = new Set();
    for (const [y, x] of places) {
      const at = model.anchor(y, x);
      if (at) this.keys.add(anchor(at));
    }
  }

  rectangle(model, from, to) {
    this.set(model, rectangle(from.y, from.x, to.y, to.x));
  }

  round(model, y) {
    this.set(model, model.row(y).shown.map((c) => [y, c.x]));
  }

  column(model, y, x) {
    const name = model.at(y, x)?.column;
    this.set(model, model.rows.flatMap((row) => {
      const cell = row.column(name);
      return cell && cell.x >= 0 ? [[row.y, cell.x]] : [];
    }));
  }

  all(model) {
    this.set(model, model.rows.flatMap((row) => row.shown.map((c) => [row.y, c.x])));
  }

  // places returns where the selected cells stand in this view, from the bottom
  // and from the left.
  places(model) {
    if (this.known?.keys !== this.keys || this.known.model !== model) this.known = { keys: this.keys, model, places: this.find(model) };
    return this.known.places;
  }

  // find looks only at the rows of which anything is selected.
  find(model) {
    const rows = new Set();
    for (const key of this.keys) rows.add(key.slice(0, key.lastIndexOf(" ")));
    const list = [];
    for (const row of model.rows) {
      if (!rows.has(row.key)) continue;
      for (const c of row.shown) if (this.keys.has(`${row.key} ${c.column}`)) list.push([row.y, c.x]);
    }
    return list;
  }

  // box returns the rectangle around the selected cells, or undefined if there
  // are none.
  box(model) {
    const places = this.places(model);
    if (places.length === 0) return undefined;
    const ys = places.map(([y]) => y);
    const xs = places.map(([, x]) => x);
    return { low: Math.min(...ys), high: Math.max(...ys), left: Math.min(...xs), right: Math.max(...xs) };
  }
}

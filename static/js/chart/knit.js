// Coloured stitches drawn as knitting. Only rows in view wear it, from a size at
// which it can be seen; the others have the plain colours of their yarns.
import { parse, round3 } from "./paths.js";

const smallest = 7; // px of a stitch that is drawn as knitting
const spare = 4; // rows above and below the view

export class Knit {
  // redraw draws a row anew.
  constructor(view, frame, redraw) {
    const { svg, model } = view;
    Object.assign(this, { view, svg, model, redraw, low: 1, high: 0 });
    this.layer = svg.querySelector('[data-layer="knit"]');
    this.rows = [];
    this.shapes = shapes(model.data);
    this.dyed = this.isDyed();
    // ask looks in the next frame which rows are in view.
    this.ask = frame.add({ read: () => (svg.isConnected ? this.inView() : undefined), write: (rows) => rows && this.show(rows) });
    const away = new AbortController();
    const look = () => {
      if (svg.isConnected) this.ask();
      else away.abort(); // the chart was replaced
    };
    document.addEventListener("scroll", look, { capture: true, passive: true, signal: away.signal });
    window.addEventListener("resize", look, { signal: away.signal });
    new ResizeObserver(look).observe(svg);
    this.ask();
  }

  // isDyed reports whether any yarn that the chart shows has a colour, or the
  // mitt's yarns were given colours of their own.
  isDyed() {
    const { yarns, marks, data, repeats } = this.model;
    if (repeats.some((r) => r.yarns?.some((row) => [...row].some((letter) => yarns.get(letter)?.fill)))) return true;
    if (this.svg.closest("[data-dyed]") || data.yarns[0].fill) return true;
    for (const mark of marks.values()) if (mark.colour && yarns.get(mark.colour)?.fill) return true;
    return false;
  }

  // wears reports whether a row is drawn as knitting.
  wears(y) {
    return y >= this.low && y <= this.high;
  }

  // dye looks again whether the chart has any colour, after a row was drawn that
  // has some or none.
  dye(some) {
    if (some === this.dyed || (!some && this.isDyed())) return;
    this.dyed = some;
    if (some) this.told?.("Colours are shown as knitting.");
    this.ask();
  }

  // inView returns the rows that wear knitting, as [lowest, highest].
  inView() {
    const matrix = this.svg.getScreenCTM();
    const d = this.model.data;
    if (!matrix || !this.dyed || matrix.a * d.cell_width < smallest) return [1, 0];
    const frame = this.svg.parentElement.getBoundingClientRect();
    const row = (y) => (d.bottom - (y - matrix.f) / matrix.d) / d.cell_height;
    const low = Math.floor(row(Math.min(frame.bottom, innerHeight))) + 1 - spare;
    const high = Math.ceil(row(Math.max(frame.top, 0))) + spare;
    return [Math.max(low, 1), Math.min(high, this.model.height)];
  }

  // show draws the rows that come into view as knitting, and those that leave it
  // plain.
  show([low, high]) {
    const before = [this.low, this.high];
    if (low === before[0] && high === before[1]) return;
    [this.low, this.high] = [low, high];
    for (const svg of [this.svg, this.view.over.layer]) svg.classList.toggle("knitted", high >= low);
    for (let y = Math.min(low, before[0]); y <= Math.max(high, before[1]); y++) {
      if ((y >= before[0] && y <= before[1]) !== this.wears(y)) this.redraw(y);
    }
  }

  // row returns the place of a row's knitting. Each row lies over the one below.
  row(y) {
    if (this.rows.length === 0) {
      this.rows = this.model.rows.map(() => document.createElementNS(this.svg.namespaceURI, "g"));
      this.layer.replaceChildren(...this.rows);
    }
    return this.rows[y - 1];
  }

  // path adds the stitches of a yarn in a row.
  path(y) {
    const d = this.model.data;
    const top = d.bottom - y * d.cell_height;
    const at = (shape) => shape.map((part) => ({ x: d.left + part.x, rest: ` ${round3(top + part.y)}${part.rest}` }));
    const kinds = { knit: at(this.shapes.knit), end: at(this.shapes.end), purl: at(this.shapes.purl) };
    return (x, purl) => {
      const kind = purl ? "purl" : this.model.at(y + 1, x) ? "knit" : "end";
      let out = "";
      for (const part of kinds[kind]) out += `M${round3(part.x + x * d.cell_width)}${part.rest}`;
      return out;
    };
  }
}

// shapes turns the shapes of a page into what is written for each stitch: where
// each piece begins in the cell, and the rest of it from there.
export function shapes({ shapes: of, cell_width: w, cell_height: h }) {
  return Object.fromEntries(Object.entries(of).map(([name, path]) => [name, pieces(path, w, h)]));
}

function pieces(path, w, h) {
  const list = [];
  let [x, y] = [0, 0]; // where the pen is
  let letter = "";
  let numbers = [];
  const flush = () => {
    const to = numbers.map((n, i) => n * (i % 2 === 0 ? w : h));
    if (letter === "M") {
      [x, y] = to;
      list.push({ x, y, rest: "" });
    } else if (letter !== "") {
      const part = list.at(-1);
      part.rest += letter.toLowerCase() + to.map((n, i) => round3(n - (i % 2 === 0 ? x : y))).join(" ");
      if (letter !== "Z") [x, y] = to.slice(-2);
    }
    numbers = [];
  };
  for (const p of parse(path)) {
    if (typeof p === "string") {
      flush();
      letter = p;
    } else numbers.push(p.n);
  }
  flush();
  return list;
}

// A row of the chart is one round, unpacked from its runs when it is needed.

export class Row {
  constructor(data, y, repeats = []) {
    Object.assign(this, { data, section: data.section, name: data.name, round: data.round, runs: data.runs, y, repeats });
    this.key = `${data.section} ${data.round}`;
  }

  // cells are all cells of the round from its first, a row's from the right. Those
  // that the view doesn't show have x = −1.
  get cells() {
    this.unpacked ??= this.lay(this.runs.flatMap(unpack));
    return this.unpacked;
  }

  // lay gives the cells that a repeat sets what it sets there: { repeat, right, up,
  // yarn, stitch }, of which yarn and stitch may be empty. Others may be kept as they were
  // knitted: { yarn, stitch }.
  lay(cells) {
    for (const { i, n, r, x, s, y: up } of this.data.laid ?? []) {
      const { wide, high, yarns, stitches } = this.repeats[r];
      for (let k = 0; k < n; k++) {
        const right = (((x + s * k) % wide) + wide) % wide;
        const letter = (rows) => (rows?.[high - 1 - up][wide - 1 - right] ?? ".").replace(".", "");
        const cell = cells[i + k];
        const stitch = ["k", "p"].includes(cell.op) ? textures[letter(stitches)] : undefined;
        cell.laid = { repeat: r, right, up, yarn: letter(yarns), stitch };
      }
    }
    for (const { i, n, yarn, stitch } of this.data.kept ?? []) {
      for (let k = 0; k < n; k++) cells[i + k].kept = { yarn, stitch };
    }
    return cells;
  }

  // worked are all cells in the order in which the hands work them. The cells of
  // a wrong-side row stand as they look on the right side.
  get worked() {
    this.inOrder ??= this.behind ? [...this.cells].reverse() : this.cells;
    return this.inOrder;
  }

  // behind tells whether the wrong side faces.
  get behind() {
    return this.data.side === "wrong side";
  }

  // noun is what a sentence calls it.
  get noun() {
    return this.data.side ? "row" : "round";
  }

  // numbered are the cells that have a number in the order worked: not those that are only
  // set aside for what this view does not show.
  get numbered() {
    this.inNumbers ??= this.worked.filter((c) => c.op !== "hold" || c.x >= 0);
    return this.inNumbers;
  }

  // place returns the number of a cell in the order worked.
  place(cell) {
    return this.numbered.indexOf(cell) + 1;
  }

  // shown are the cells that the view shows, from the left.
  get shown() {
    this.visible ??= this.cells.filter((c) => c.x >= 0).sort((a, b) => a.x - b.x);
    return this.visible;
  }

  at(x) {
    this.places ??= new Map(this.shown.map((c) => [c.x, c]));
    return this.places.get(x);
  }

  column(name) {
    this.columns ??= new Map(this.cells.map((c) => [c.column, c]));
    return this.columns.get(name);
  }

  // span is from where to where the shown cells reach.
  get span() {
    return this.shown.length === 0 ? undefined : { low: this.shown[0].x, high: this.shown.at(-1).x };
  }
}

// textures are the stitches that a motif may set, by their letters in its drawing.
export const textures = { k: "k", p: "p", t: "ktbl", s: "sl" };

function unpack(run) {
  const family = run.column.slice(0, 1);
  const first = Number(run.column.slice(1));
  return Array.from({ length: run.n }, (_, i) => ({
    column: family === "" ? "" : family + (first + i * run.step),
    x: run.x < 0 ? -1 : run.x - i,
    op: run.op,
  }));
}

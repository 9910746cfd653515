// A row of the chart is one round, unpacked from its runs when it is needed.

export class Row {
  constructor(data, y) {
    Object.assign(this, { data, section: data.section, name: data.name, round: data.round, runs: data.runs, y });
    this.key = `${data.section} ${data.round}`;
  }

  // cells are all cells of the round in the order worked. Those that the view
  // doesn't show have x = −1.
  get cells() {
    this.unpacked ??= this.runs.flatMap(unpack);
    return this.unpacked;
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

function unpack(run) {
  const family = run.column.slice(0, 1);
  const first = Number(run.column.slice(1));
  return Array.from({ length: run.n }, (_, i) => ({
    column: family === "" ? "" : family + (first + i * run.step),
    x: run.x < 0 ? -1 : run.x - i,
    op: run.op,
  }));
}

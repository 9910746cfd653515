// Where in the mitt one is: the small mitt in the rail, and the way to its other
// parts.

export class Place {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root.querySelector(".whole");
    for (const link of this.root.querySelectorAll("[data-go]")) {
      link.addEventListener("click", (event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey) return;
        event.preventDefault();
        editor.ask({ view: link.dataset.go, middle: "" });
      });
    }
    this.root.addEventListener("pointerdown", (event) => this.press(event));
  }

  parts() {
    return [...this.root.querySelectorAll("[data-mini-part]")].map((e) => ({
      part: e.dataset.miniPart, view: e.dataset.miniView, rounds: Number(e.dataset.rounds),
      x: Number(e.getAttribute("x")), y: Number(e.getAttribute("y")), w: Number(e.getAttribute("width")), h: Number(e.getAttribute("height")),
    }));
  }

  // press leads to the round that is pressed, in another view if this one lacks
  // it.
  press(event) {
    const svg = event.target.closest?.("[data-mini]");
    if (!svg) return;
    event.preventDefault();
    const p = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    const part = this.parts().find((q) => p.x >= q.x && p.x <= q.x + q.w && p.y >= q.y && p.y <= q.y + q.h);
    if (!part) return;
    const { editor } = this;
    const round = Math.min(Math.floor(((part.y + part.h - p.y) / part.h) * part.rounds) + 1, part.rounds);
    const row = editor.model.byKey.get(`${part.part} ${round}`);
    if (row?.span) editor.point(row.y, editor.model.row(row.y).shown[0].x);
    else editor.ask({ view: part.view, middle: "" });
  }

  // show frames what is seen of the chart now, and marks the round in hand.
  show(at, y) {
    const { model } = this.editor;
    const rows = { low: Math.max(1, Math.floor((at.y(0) - at.height) / at.h) + 1), high: Math.min(model.height, Math.ceil(at.y(0) / at.h)) };
    const columns = { from: Math.max(0, -at.x(0) / at.w), to: Math.min(model.data.width, (at.width - at.x(0)) / at.w) };
    const parts = new Map(this.parts().map((p) => [p.part, p]));
    const spot = (n) => {
      const row = model.row(n);
      const part = parts.get(row?.section);
      if (!part) return undefined;
      const high = part.h / part.rounds;
      return { part, top: part.y + part.h - row.round * high, high };
    };
    const [low, high, here] = [spot(rows.low), spot(rows.high), spot(y)];
    const seen = this.root.querySelector(".mini-seen");
    const line = this.root.querySelector(".mini-round");
    if (!low || !high || !here) return;
    const [left, right] = [columns.from / model.data.width, columns.to / model.data.width].map((share) => here.part.x + share * here.part.w);
    seen.setAttribute("d", `M${left} ${high.top}H${right}V${low.top + low.high}H${left}z`);
    line.setAttribute("d", `M${here.part.x - 1} ${here.top + here.high / 2}h${here.part.w + 2}`);
  }
}

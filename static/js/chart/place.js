// Where in the mitt one is: the small mitt in the rail, and the way to its other
// parts.
import { goTo } from "./arrive.js";
import { changes } from "./frame.js";

export class Place {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root.querySelector(".whole");
    this.fresh = changes();
    for (const link of this.root.querySelectorAll("[data-go]")) {
      link.addEventListener("click", (event) => {
        if (event.ctrlKey || event.metaKey || event.shiftKey) return;
        event.preventDefault();
        goTo(editor, link.dataset.go);
      });
    }
    this.root.addEventListener("pointerdown", (event) => this.press(event));
  }

  // take takes up the small mitt, which may have been replaced.
  take() {
    const mini = this.root.querySelector("[data-mini]");
    if (mini === this.mini) return;
    this.mini = mini;
    this.seen = mini?.querySelector(".mini-seen");
    this.line = mini?.querySelector(".mini-round");
    this.parts = [...(mini?.querySelectorAll("[data-mini-part]") ?? [])].map((e) => ({
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
    this.take();
    const part = this.parts.find((q) => p.x >= q.x && p.x <= q.x + q.w && p.y >= q.y && p.y <= q.y + q.h);
    if (!part) return;
    const { editor } = this;
    const round = Math.min(Math.floor(((part.y + part.h - p.y) / part.h) * part.rounds) + 1, part.rounds);
    const { view } = editor.model.data;
    const here = editor.model.byKey.get(`${part.part} ${round}`)?.span;
    goTo(editor, here ? view : part.view, part.part, round);
  }

  // show frames what is seen of the chart now, and marks the round in hand.
  show(at, y) {
    const { model } = this.editor;
    this.take();
    if (!this.fresh(at, y, this.mini)) return;
    const spot = (n) => {
      const row = model.row(n);
      const part = this.parts.find((p) => p.part === row?.section);
      if (!part) return undefined;
      const high = part.h / part.rounds;
      return { part, top: part.y + part.h - row.round * high, high };
    };
    const [low, high, here] = [spot(at.low), spot(at.high), spot(y)];
    if (!low || !high || !here) return;
    const [left, right] = [at.from, at.to].map((column) => here.part.x + (column / model.data.width) * here.part.w);
    this.seen.setAttribute("d", `M${left} ${high.top}H${right}V${low.top + low.high}H${left}z`);
    this.line.setAttribute("d", `M${here.part.x - 1} ${here.top + here.high / 2}h${here.part.w + 2}`);
  }
}

// What is about to be laid down, where it would come to lie: faint stitches that
// go with the pointer, or with the cursor. They are drawn once, and then moved.
import { notches } from "./marks.js";
import { rect, symbol } from "./paths.js";
import { draw } from "./svg.js";

export class Ghost {
  constructor(editor) {
    this.editor = editor;
    this.group = draw("g", { class: "ghost" });
    editor.view.over.layer.append(this.group);
    this.move = editor.frame.add({ write: () => this.put() });
  }

  // show shows a piece, or none.
  show(piece) {
    if (piece === this.piece) return;
    this.piece = piece;
    this.group.replaceChildren(...(piece ? this.drawn(piece) : []));
    this.at(this.editor.cursor);
  }

  // at moves the piece's lower right corner to a place of the chart.
  at(place) {
    if (!this.piece) return;
    this.place = place;
    this.move();
  }

  // put runs in a frame. Under a press the chart itself shows the piece.
  put() {
    const { view, brush } = this.editor;
    this.group.classList.toggle("pressed", brush.stroke !== undefined);
    if (!this.piece) return;
    const { x, y } = view.box(this.place.y, this.place.x);
    this.group.setAttribute("transform", `translate(${x} ${y})`);
  }

  // drawn draws a piece with the upper left of its lower right cell at the origin.
  drawn(piece) {
    const { model } = this.editor;
    const { cell_width: w, cell_height: h } = model.data;
    const box = (up, x) => ({ x: x * w, y: -up * h, w, h });
    const fills = new Map();
    let symbols = "";
    const runs = [];
    for (const { left, up, stitch, colour } of [...piece].sort((a, b) => a.up - b.up || b.left - a.left)) {
      const yarn = model.yarns.get(colour) ?? model.data.yarns[0];
      const b = box(up, -left);
      fills.set(yarn, `${fills.get(yarn) ?? ""}${rect(b.x, b.y, w, h)} `);
      const op = stitch && model.ops.get(stitch);
      if (op?.path) symbols += symbol(op.path, b);
      const last = runs.at(-1);
      if (last?.y === up && last.to === -left - 1) last.to = -left;
      else runs.push({ y: up, from: -left, to: -left });
    }
    return [
      ...[...fills].map(([yarn, d]) => draw("path", { class: `yarn yarn-${yarn.id}${yarn.fill ? "" : " ground"}`, fill: yarn.fill || undefined, d })),
      draw("path", { class: "symbol", "stroke-width": w / 12, d: symbols.trim() }),
      draw("path", { class: "ghost-edge", "stroke-width": w / 12, d: notches(runs, box) }),
    ];
  }
}

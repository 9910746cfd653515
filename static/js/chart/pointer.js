// The pointer on the chart: the first finger alone acts; a second one paints
// nothing and doesn't break off the stroke of the first.

export class Pointer {
  constructor(editor) {
    this.editor = editor;
    this.from = undefined; // where a selection or a move began
    const { svg } = editor.view;
    svg.addEventListener("pointerdown", (event) => this.down(event));
    svg.addEventListener("pointermove", (event) => event.isPrimary && this.move(event));
    svg.addEventListener("pointerup", (event) => event.isPrimary && this.up(event));
    svg.addEventListener("pointercancel", (event) => event.isPrimary && this.cancel());
    svg.addEventListener("pointerleave", (event) => event.isPrimary && this.editor.leave());
  }

  place(event) {
    return this.editor.view.cellAt(event.clientX, event.clientY);
  }

  down(event) {
    const { editor } = this;
    if (!event.isPrimary || event.button !== 0) return;
    const at = this.place(event);
    if (!at || !editor.model.at(at.y, at.x)) return;
    if (editor.tool.shape !== "look") editor.view.svg.setPointerCapture(event.pointerId);
    switch (editor.tool.shape) {
      case "look": break;
      case "select":
        this.from = event.shiftKey ? { ...editor.cursor } : at;
        editor.select((s) => s.rectangle(editor.model, this.from, at));
        break;
      case "move":
        this.from = at;
        break;
      default:
        editor.dirty(editor.brush.begin(at.y, at.x));
    }
    editor.point(at.y, at.x, false);
  }

  move(event) {
    const { editor } = this;
    const at = this.place(event);
    if (!at) return;
    if (editor.brush.stroke) editor.dirty(editor.brush.move(at.y, at.x));
    else if (this.from && editor.tool.shape === "select") editor.select((s) => s.rectangle(editor.model, this.from, at));
    if (editor.model.row(at.y)) editor.light(at.y);
  }

  up(event) {
    const { editor, from } = this;
    this.from = undefined;
    if (editor.brush.stroke) {
      editor.brush.end();
      editor.settle();
    } else if (from && editor.tool.shape === "move") {
      const at = this.place(event);
      if (at && at.y !== from.y) editor.changeFrom(from.y, at.y);
    }
  }

  cancel() {
    this.from = undefined;
    this.editor.dirty(this.editor.brush.drop());
  }
}

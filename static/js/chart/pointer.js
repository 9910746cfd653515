// The pointer on the chart. The first finger, the pen or the mouse acts; a
// second finger beside a stroke paints nothing, and two that move together move
// and enlarge the chart (see pinch.js). A press belongs to the chart until it
// is let go, wherever that is, and never selects or drags text.
import { between } from "./cells.js";
import { moved } from "./keys.js";
import { Pinch } from "./pinch.js";
import { laidDown } from "./tracing.js";

const spanning = new Set(["line", "rectangle", "select"]); // tools with two ends

export class Pointer {
  constructor(editor) {
    this.editor = editor;
    this.foot = editor.root.querySelector(".foot");
    this.held = undefined; // the press that acts: { id, type, pressed, at, from, shift, chosen }
    const { svg } = editor.view;
    this.frame = editor.zoom.frame;
    this.area = this.frame.closest("[data-canvas]"); // with the rulers
    this.pinch = new Pinch(editor.zoom, () => {
      this.drop();
      editor.told.moved();
    });
    const on = (name, act) => this.area.addEventListener(name, (event) => act(event));
    on("pointerdown", (event) => this.down(event));
    editor.sight.rulers.tapped = (event) => this.number(event);
    on("pointermove", (event) => this.move(event));
    on("pointerup", (event) => this.up(event));
    on("pointercancel", (event) => this.cancel(event));
    on("lostpointercapture", (event) => this.lost(event));
    on("pointerleave", (event) => event.isPrimary && !this.held && editor.leave());
    on("mousedown", (event) => this.own(event));
    on("dragstart", (event) => event.preventDefault());
    on("contextmenu", (event) => this.held && event.preventDefault());
    svg.addEventListener("focus", () => editor.point(editor.cursor.y, editor.cursor.x, !this.held));
  }

  get held() {
    return this.press;
  }

  // While a press lasts, what is said under the chart does not change its height:
  // the stitches would move under the finger.
  set held(press) {
    this.foot.style.height = press ? `${this.foot.offsetHeight}px` : "";
    this.press = press;
  }

  place(event) {
    return this.editor.view.cellAt(event.clientX, event.clientY);
  }

  cell(at) {
    return at && this.editor.model.at(at.y, at.x);
  }

  // ours reports whether a press belongs to the drawing, rather than to the
  // frame's scroll bars or to a finger beside the drawing, which scrolls.
  ours(event) {
    if (event.target.closest("[data-rule]")) return event.pointerType !== "touch";
    if (event.target !== this.frame) return true;
    const inside = event.offsetX < this.frame.clientWidth && event.offsetY < this.frame.clientHeight;
    return inside && event.pointerType !== "touch";
  }

  // own keeps the browser from selecting or dragging what is pressed, and gives
  // the chart the keyboard focus, as the browser would have.
  own(event) {
    if (event.button !== 0 || !this.ours(event)) return;
    event.preventDefault();
    this.editor.view.svg.focus({ preventScroll: true });
  }

  down(event) {
    const { editor } = this;
    if (!this.ours(event)) return;
    const looks = editor.tool.shape === "look"; // the browser's own scrolling
    if (event.pointerType === "touch" && !looks && this.pinch.down(event)) return;
    if (this.held || !event.isPrimary || event.button !== 0) return;
    if (editor.byRule.grab(event)) return;
    window.getSelection()?.removeAllRanges();
    const at = this.place(event);
    this.held = { id: event.pointerId, type: event.pointerType, rule: event.target.closest("[data-rule]"), pressed: at, at, shift: event.shiftKey, chosen: editor.selection.copy(), cursor: editor.cursor };
    editor.view.svg.setPointerCapture(event.pointerId);
    if (this.cell(at)) this.begin(at);
  }

  // begin acts at the first cell that a press comes to. A tool with two ends
  // begins at the press itself, which may lie beside the grid.
  begin(at) {
    const { editor, held } = this;
    held.from = this.origin(at);
    switch (editor.tool.shape) {
      case "look": case "move": break;
      case "select":
        if (held.shift) held.from = { ...editor.cursor };
        editor.select((s) => s.rectangle(editor.model, held.from, at));
        break;
      default:
        editor.stroking(editor.brush.begin(held.from.y, held.from.x));
    }
    editor.point(at.y, at.x, false);
  }

  // origin returns the place from which a press acts whose first cell is at.
  origin(at) {
    const { editor, held } = this;
    const { shape } = editor.tool;
    const pressed = held.pressed ?? at;
    if (shape === "move") return editor.model.row(pressed.y) ? pressed : at;
    return spanning.has(shape) ? pressed : at;
  }

  move(event) {
    const { editor, held } = this;
    if (this.pinch.move(event)) {
      editor.sized();
      return;
    }
    const at = this.place(event);
    if (!at) return;
    if (held?.id === event.pointerId) {
      if (held.type === "mouse" && (event.buttons & 1) === 0) this.keep("The press was broken off"); // it was let go outside the window
      else this.draw(at);
    }
    if (!event.isPrimary) return;
    if (editor.model.row(at.y)) editor.light(at.y);
    if (this.cell(at)) editor.ghost.at(at);
  }

  // number points at the round whose number was pressed, or at the stitch.
  number({ clientX, clientY, target }) {
    const { editor } = this;
    const at = editor.view.cellAt(clientX, clientY);
    const { cursor, model } = editor;
    if (!at) return;
    if (target.closest("[data-rule]")?.dataset.rule === "stitches") {
      if (model.at(cursor.y, at.x)) editor.point(cursor.y, at.x, false);
    } else if (model.row(at.y)?.span) {
      const to = moved(model, cursor, [at.y - cursor.y, 0]);
      editor.point(to.y, to.x, false);
    }
  }

  // draw goes on to a place. A press that comes from outside begins at the
  // first cell on its way.
  draw(at) {
    const { editor, held } = this;
    if (!held.from && held.at) {
      const first = between(held.at.y, held.at.x, at.y, at.x).find(([y, x]) => editor.model.at(y, x));
      if (first) this.begin({ y: first[0], x: first[1] });
    }
    const still = held.at?.y === at.y && held.at.x === at.x;
    held.at = at;
    if (!held.from || still) return;
    if (editor.brush.stroke) editor.stroking(editor.brush.move(at.y, at.x));
    else if (editor.tool.shape === "select") editor.select((s) => s.rectangle(editor.model, held.from, at));
  }

  up(event) {
    this.pinch.up(event);
    const { editor, held } = this;
    if (held?.id !== event.pointerId) return;
    const at = this.place(event) ?? held.at;
    if (at) this.draw(at);
    this.held = undefined;
    if (held.rule && !held.from) this.number(event);
    if (editor.brush.stroke) this.finish();
    else if (held.from && editor.tool.shape === "move" && at && at.y !== held.from.y) editor.changeFrom(held.from.y, at.y);
  }

  finish() {
    const { editor } = this;
    editor.brush.end();
    editor.drawSoon();
    if (editor.tool.shape === "stamp") laidDown(editor);
    else editor.toolbar.show();
  }

  // cancel runs when the browser takes a pointer away. Where fingers scroll, it
  // does so to scroll, and there was no stroke.
  cancel(event) {
    this.pinch.up(event);
    if (this.held?.id !== event.pointerId) return;
    const scrolls = this.held.type === "touch" && getComputedStyle(this.editor.view.svg).touchAction !== "none";
    if (scrolls) this.drop();
    else this.keep("The press was broken off");
  }

  lost(event) {
    if (this.held?.id === event.pointerId) this.keep("The press was broken off");
  }

  // keep ends a press that was broken off. What it drew stays.
  keep(why) {
    const { editor, held } = this;
    this.held = undefined;
    if (editor.brush.stroke) {
      this.finish();
      editor.announce(`${why}; what was drawn is kept`);
    } else if (held.from && editor.tool.shape === "move") editor.announce(`${why}; the increase stays where it was`);
  }

  // drop forgets a press that meant nothing: what it drew or selected is taken
  // back, and what was in hand before stays in hand.
  drop() {
    const { editor, held } = this;
    this.held = undefined;
    if (!held) return;
    editor.dirty(editor.brush.drop());
    if (held.from && editor.tool.shape === "select") editor.select((s) => s.restore(held.chosen));
    if (held.from) editor.point(held.cursor.y, held.cursor.x, false);
  }
}

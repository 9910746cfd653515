// Takes the chart of the page over. The page comes complete from the server;
// without this script it can be read, with it it can be painted.
import { History } from "./history.js";
import { act, moved } from "./keys.js";
import { Model } from "./model.js";
import { Line, kept, post } from "./save.js";
import { Brush } from "./tools.js";
import { View } from "./view.js";

const lines = new Map(); // one line of strokes for each chart, kept over swaps
let chosen = { layer: "stitch", value: "p" }; // the tool outlives a swap, too
let editor;

export function start(root) {
  const place = root.querySelector("[data-chart-editor]");
  const data = root.querySelector("#chart-data");
  if (!place || !data) return;
  editor?.brush.end(); // what is under the pointer when the chart is swapped is kept
  editor = new Editor(place, JSON.parse(data.textContent));
}

class Editor {
  constructor(root, data) {
    this.root = root;
    this.model = new Model(data);
    this.view = new View(root, this.model);
    this.line = this.lineOf(data);
    this.history = new History(this.model, this.line, (rounds) => this.show(rounds));
    this.brush = new Brush(this.model, this.history);
    this.brush.choose(chosen);
    this.history.takeUp();
    this.pointer();
    this.keyboard();
    this.toolbar();
    this.view.draw();
    this.buttons();
    if (this.line.unsent) this.say("unsaved");
  }

  // lineOf finds the line of this chart, or begins it with what an earlier
  // visit could not deliver.
  lineOf(data) {
    let line = lines.get(data.href);
    if (!line) {
      line = new Line({
        href: data.href, revision: data.revision, send: post, keep: kept(`thenar:strokes:${data.href}`),
        later: (f, ms) => setTimeout(f, ms), on: (what, detail) => editor?.on(what, detail),
      });
      lines.set(data.href, line);
      queueMicrotask(() => line.push());
    }
    return line;
  }

  // on hears what becomes of the strokes.
  on(what, detail) {
    if (what === "applied") this.history.applied(detail);
    if (what === "refused") {
      this.history.refused(detail);
      this.announce(detail.message);
    }
    if (what === "saving" || what === "saved" || what === "unsaved") this.say(what);
    if (what === "saved") document.dispatchEvent(new CustomEvent("thenar:painted"));
    this.buttons();
  }

  say(state) {
    const place = this.root.querySelector("#chart-saved");
    const now = new Date().toTimeString().slice(0, 5);
    place.textContent = { saving: "saving…", saved: `saved ${now}`, unsaved: "not saved: no connection; kept here" }[state];
    place.dataset.state = state;
  }

  announce(text) {
    this.root.querySelector("#chart-says").textContent = text;
  }

  show(rounds) {
    this.view.draw(rounds);
    const { round, x } = this.view.cursor;
    if (rounds.includes(round)) this.announce(this.model.describe(round, x));
    this.buttons();
  }

  // point moves the cursor and reads the cell out; other views light the round.
  point(round, x) {
    this.announce(this.view.point(round, x));
    this.light(round);
  }

  // light draws the thread through a round, here and in the other views.
  light(round) {
    this.view.thread(round);
    if (round === this.lit) return;
    this.lit = round;
    document.dispatchEvent(new CustomEvent("thenar:round", { detail: { section: this.model.data.section, round, by: "chart" } }));
  }

  // pointer listens to the first finger alone: a second one paints nothing and
  // doesn't break off the stroke of the first.
  pointer() {
    const { svg } = this.view;
    svg.addEventListener("pointerdown", (event) => {
      if (!event.isPrimary || event.button !== 0) return;
      const cell = this.view.cell(event.clientX, event.clientY);
      if (!cell || !this.model.at(cell.round, cell.x)) return;
      svg.setPointerCapture(event.pointerId);
      this.view.draw(this.brush.begin(cell.round, cell.x));
      this.point(cell.round, cell.x);
    });
    svg.addEventListener("pointermove", (event) => {
      if (!event.isPrimary) return;
      const cell = this.view.cell(event.clientX, event.clientY);
      if (!cell) return;
      if (this.brush.stroke) this.view.draw(this.brush.move(cell.round, cell.x));
      if (this.model.row(cell.round)) this.light(cell.round);
    });
    svg.addEventListener("pointerup", (event) => event.isPrimary && this.brush.end());
    svg.addEventListener("pointercancel", (event) => event.isPrimary && this.view.draw(this.brush.drop()));
    svg.addEventListener("pointerleave", (event) => event.isPrimary && this.leave());
  }

  // leave lets the thread go back to the cursor, if the keys are on the chart.
  leave() {
    if (document.activeElement === this.view.svg) this.light(this.view.cursor.round);
    else {
      this.view.thread(0);
      this.lit = undefined;
    }
  }

  keyboard() {
    const { svg } = this.view;
    svg.addEventListener("focus", () => this.point(this.view.cursor.round, this.view.cursor.x));
    svg.addEventListener("keydown", (event) => {
      const asked = act(event);
      if (!asked) return;
      event.preventDefault();
      const { round, x } = this.view.cursor;
      if (asked.move) {
        const to = moved(this.model, this.view.cursor, asked.move);
        this.point(to.round, to.x);
      }
      if (asked.paint) this.paint(round, x, chosen);
      if (asked.erase) this.paint(round, x, { erase: true });
      if (asked.undo) this.history.undo();
      if (asked.redo) this.history.redo();
      if (asked.drop) this.view.draw(this.brush.drop());
    });
  }

  paint(round, x, tool) {
    this.brush.choose(tool);
    this.brush.once(round, x);
    this.brush.choose(chosen);
    this.point(round, x);
  }

  toolbar() {
    for (const button of this.root.querySelectorAll("[data-tool-op], [data-tool-colour], [data-tool]")) {
      button.addEventListener("click", () => {
        chosen = toolOf(button.dataset);
        this.brush.choose(chosen);
        this.buttons();
      });
    }
    this.root.querySelector('[data-do="undo"]').addEventListener("click", () => this.history.undo());
    this.root.querySelector('[data-do="redo"]').addEventListener("click", () => this.history.redo());
  }

  // buttons shows which tool is chosen and whether there is anything to undo.
  buttons() {
    for (const button of this.root.querySelectorAll("[data-tool-op], [data-tool-colour], [data-tool]")) {
      button.setAttribute("aria-pressed", String(JSON.stringify(toolOf(button.dataset)) === JSON.stringify(chosen)));
    }
    this.root.querySelector('[data-do="undo"]').disabled = !this.history.canUndo;
    this.root.querySelector('[data-do="redo"]').disabled = !this.history.canRedo;
  }
}

function toolOf(data) {
  if (data.tool === "erase") return { erase: true };
  if (data.toolColour) return { layer: "colour", value: data.toolColour };
  return { layer: "stitch", value: data.toolOp };
}

document.addEventListener("thenar:swapped", (event) => start(event.detail.root));
document.addEventListener("thenar:round", (event) => {
  if (event.detail.by === "chart" || !editor) return;
  editor.lit = undefined;
  editor.view.thread(event.detail.section === editor.model.data.section ? event.detail.round : 0);
});
window.addEventListener("online", () => editor?.line.push());
window.addEventListener("beforeunload", (event) => {
  if (editor?.line.unsent) event.preventDefault();
});
start(document);

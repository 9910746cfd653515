// The buttons around the chart: what the pointer paints and how, and some of
// the commands.
import { goTo } from "./arrive.js";
import { amount, reaching } from "./sentence.js";

export class Toolbar {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root;
    this.brushes = [...this.root.querySelectorAll("[data-tool-op], [data-tool-colour], [data-tool]")];
    this.shapes = [...this.root.querySelectorAll("[data-shape]")];
    this.mirror = this.root.querySelector("[data-mirror]");
    this.selected = this.root.querySelector("[data-selected]");
    this.round = this.root.querySelector("[data-round-now]");
    this.roundPart = this.root.querySelector("[data-round-part]");
    this.traced = this.root.querySelector("[data-traced]");
    this.undo = this.root.querySelector('[data-do="undo"]');
    this.redo = this.root.querySelector('[data-do="redo"]');
    for (const b of this.brushes) b.addEventListener("click", () => this.take(b));
    this.root.querySelector("[data-name-yarn]").addEventListener("click", (event) => this.nameYarn(event));
    for (const b of this.shapes) b.addEventListener("click", () => editor.reach(b.dataset.shape));
    for (const b of this.root.querySelectorAll("[data-run]")) b.addEventListener("click", (event) => {
      event.preventDefault(); // some are links, for a page without a script
      this.run(b);
    });
    this.mirror.addEventListener("click", () => editor.choose({ mirror: !editor.tool.mirror }));
    this.undo.addEventListener("click", () => editor.history.undo());
    this.redo.addEventListener("click", () => editor.history.redo());
    this.fold();
    for (const select of this.root.querySelectorAll("[data-view]")) {
      select.addEventListener("change", () => (select.dataset.view === "view" ? goTo(editor, select.value) : editor.ask({ [select.dataset.view]: select.value })));
    }
  }

  // fold puts the reaches behind one control, and the rounds behind another,
  // where there is no room for a row.
  fold() {
    [this.lead, this.now] = this.root.querySelectorAll("[data-reach-lead], [data-reach-now]");
    const list = this.root.querySelector("#chart-reaches");
    const openers = [...this.root.querySelectorAll("[data-folds]")];
    const open = (what) => {
      list.dataset.open = what;
      for (const b of openers) b.setAttribute("aria-expanded", String(b.dataset.folds === what));
    };
    for (const b of openers) b.addEventListener("click", () => open(b.dataset.folds === list.dataset.open ? "" : b.dataset.folds));
    list.addEventListener("click", (event) => event.target.closest("button") && open(""));
  }

  // run runs a button's command. A button in the list of commands closes the
  // list as well.
  run(button) {
    if (button.getAttribute("aria-expanded") === "true") this.editor.panel.toggle(false);
    else this.editor.run(button.dataset.run);
  }

  // picked says how much is marked off and what can be done with it, in the place
  // of the reaches. What was traced can be laid down without.
  picked() {
    const { selection, clipboard, model } = this.editor;
    this.selected.hidden = selection.empty;
    this.selected.querySelector('[data-run="lay"]').hidden = !clipboard;
    this.traced.hidden = !clipboard || !selection.empty;
    if (!selection.empty) this.selected.querySelector("[data-picked]").textContent = amount(selection.places(model));
  }

  // point says at which round the plan would be changed.
  point(y) {
    const { model } = this.editor;
    this.round.textContent = model.name(y);
    this.roundPart.textContent = model.name(y, true).slice(model.name(y).length);
  }

  // take takes up a brush. Pressing the yarn that is in hand asks for its name and
  // colour.
  take(brush) {
    if (brush.dataset.yarnField && brush.getAttribute("aria-pressed") === "true") this.editor.panel.askYarn(brush.dataset);
    else this.editor.choose(toolOf(brush.dataset));
  }

  // takeYarn takes up a yarn by its number, and says which it is.
  takeYarn(n) {
    const hank = this.brushes.filter((b) => b.dataset.yarnField)[n - 1];
    if (!hank) return;
    this.editor.choose(toolOf(hank.dataset));
    this.editor.told.count(`${this.editor.model.yarns.get(hank.dataset.toolColour).name} in hand.`);
  }

  // nameYarn asks for the name and colour of the yarn in hand, or of the main one.
  nameYarn(event) {
    event.preventDefault();
    event.stopPropagation();
    const hanks = this.brushes.filter((b) => b.dataset.yarnField);
    this.editor.panel.askYarn((hanks.find((b) => b.getAttribute("aria-pressed") === "true") ?? hanks[0]).dataset);
  }

  // show marks what is chosen, and whether there is something to undo or redo.
  show() {
    const { tool, history } = this.editor;
    for (const b of this.brushes) press(b, same(toolOf(b.dataset), tool));
    for (const b of this.shapes) press(b, b.dataset.shape === tool.shape);
    press(this.mirror, Boolean(tool.mirror));
    const reach = this.shapes.find((b) => b.dataset.shape === tool.shape)?.firstElementChild.textContent;
    [this.lead.textContent, this.now.textContent] = reaching(tool.shape, reach, tool.mirror);
    this.picked();
    this.undo.disabled = !history.canUndo;
    this.redo.disabled = !history.canRedo;
    this.editor.view.svg.dataset.shape = tool.shape;
    this.editor.strip.ask();
  }
}

function press(button, on) {
  const value = String(on);
  if (button.getAttribute("aria-pressed") !== value) button.setAttribute("aria-pressed", value);
}

function same(brush, tool) {
  if (brush.erase || tool.erase) return Boolean(brush.erase) === Boolean(tool.erase);
  return brush.layer === tool.layer && brush.value === tool.value;
}

export function toolOf(data) {
  if (data.tool === "erase") return { erase: true };
  if (data.toolColour) return { layer: "colour", value: data.toolColour };
  return { layer: "stitch", value: data.toolOp };
}

// The margin beside the chart: whether it lies open, what is seen on the chart,
// notes, and the strands to look at. It stays when the chart is replaced.
import { floatWords } from "./float.js";
import { button, item } from "./panel.js";
import { remembered } from "./remember.js";

const wide = 1400; // px of a window in which the margin lies open unless it was folded
const fewFloats = 8; // how many are listed in words

export class Margin {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root.querySelector("[data-margin]");
    this.parts = this.root.querySelector("[data-margin-parts]");
    if (!this.root.dataset.set) this.set();
    this.lost = this.root.querySelector("[data-look-here]");
    if (this.lost && !matchMedia("(max-width: 46rem)").matches) this.open();
    this.seeing();
  }

  // set puts the margin as it was left, once for the page.
  set() {
    const kept = remembered("margin");
    this.root.dataset.set = "yes";
    if (kept.get() === "open" || (kept.get() === undefined && innerWidth >= wide)) this.root.open = true;
    this.root.firstElementChild.addEventListener("click", () => kept.set(this.root.open ? "folded" : "open"));
  }

  open(part) {
    this.root.open = true;
    if (part) part.open = true;
    part?.scrollIntoView({ block: "nearest" });
  }

  // seeing shows on the chart what is ticked, and no more.
  seeing() {
    const ticks = [...this.root.querySelectorAll("[data-sight]")];
    const kept = remembered("seeing");
    const off = new Set(kept.get() ?? ["float"]);
    const show = () => {
      for (const t of ticks) {
        if (t.dataset.sight === "float") this.editor.view.showStrands(t.checked);
        else this.editor.view.svg.classList.toggle(`without-${t.dataset.sight}`, !t.checked);
      }
      const seen = this.editor.root.querySelector("[data-seen]");
      seen.textContent = ticks.filter((t) => t.checked).map((t) => t.dataset.sightName).join(", ");
    };
    for (const t of ticks) {
      t.checked = !off.has(t.dataset.sight);
      t.addEventListener("change", () => {
        kept.set(ticks.filter((one) => !one.checked).map((one) => one.dataset.sight));
        show();
        this.editor.look();
      });
    }
    show();
  }

  // sees reports whether something is ticked.
  sees(sight) {
    return this.root.querySelector(`[data-sight="${sight}"]`)?.checked ?? true;
  }

  floats() {
    const words = floatWords(this.editor.model);
    const place = this.root.querySelector("#chart-floats");
    const print = words.join("\n");
    if (print === place.dataset.print) return;
    place.dataset.print = print;
    const first = words.slice(0, fewFloats).map((w) => item(w, "look"));
    if (words.length > fewFloats) first.push(item(`and ${words.length - fewFloats} more`, "look"));
    place.replaceChildren(...first);
    this.tell();
  }

  // notes lists the notes in this view. Pressing one leads to its place.
  notes() {
    const { editor } = this;
    const { model } = editor;
    const list = [];
    for (const row of model.rows) {
      const of = model.mark(row.y, "").note;
      if (of !== "") list.push({ y: row.y, x: row.span?.low, words: `${model.name(row.y, model.several)}: ${of}` });
      for (const c of row.shown) {
        const { note } = model.mark(row.y, c.column);
        if (note !== "") list.push({ y: row.y, x: c.x, words: `${model.name(row.y, model.several)}, stitch ${row.cells.indexOf(c) + 1}: ${note}` });
      }
    }
    this.root.querySelector("#chart-notes").replaceChildren(...list.map(({ y, x, words }) => {
      const li = document.createElement("li");
      li.append(button(`Note, ${words}`, () => {
        editor.view.svg.focus({ preventScroll: true });
        editor.point(y, x);
      }));
      return li;
    }));
    this.tell();
  }

  // tell says on the folded margin what lies in it.
  tell() {
    const count = (selector) => this.root.querySelectorAll(selector).length;
    const parts = [["notes", count("#chart-notes li")], ["sampler", count("[data-motifs] li")], ["strands", count("#chart-floats li")]];
    if (this.lost) parts.unshift(["look here", 0]);
    const words = [...parts.map(([name, n]) => (n > 0 ? `${name} ${n}` : name)), "key"];
    this.parts.replaceChildren(...words.map((w) => {
      const span = document.createElement("span");
      span.textContent = w;
      return span;
    }));
  }
}

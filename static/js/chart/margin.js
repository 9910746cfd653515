// The margin beside the chart: whether it lies open, what is seen on the chart,
// notes, and the strands to look at. It stays when the chart is replaced.
import { fileAlike, isBoxed, whole } from "./boxed.js";
import { Carried } from "./carried.js";
import { button } from "./page.js";
import { remembered } from "./remember.js";

const wide = 1400; // px of a window in which the margin lies open unless it was folded

// narrow reports whether the window is a phone's, as the style sheet has it.
const narrow = () => matchMedia("(max-width: 46rem)").matches;

// leads are the parts of the margin, by the words for them on the folded one.
const leads = { show: "#chart-seeing", notes: "#chart-noted", laid: "#chart-laid", sampler: "#chart-sampler", strands: "#chart-strands", key: "#chart-key" };

export class Margin {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root.querySelector("[data-margin]");
    this.parts = this.root.querySelector("[data-margin-parts]");
    if (!this.root.dataset.set) this.set();
    if (this.root.querySelector("[data-look-here]")) this.lookHere();
    this.seeing();
    this.boxed();
  }

  // boxed ticks for the file what is shown, when that has changed.
  boxed() {
    const { kept } = this.editor;
    const now = isBoxed(this.editor);
    if (now !== Boolean(kept.boxed)) fileAlike(this.editor, now);
    kept.boxed = now;
  }

  // set puts the margin as it was left, once for the page. On a phone it would take the place
  // of the tools, so there it is pulled up when it is wanted.
  set() {
    const kept = remembered("margin");
    this.root.dataset.set = "yes";
    if (!narrow() && (kept.get() === "open" || (kept.get() === undefined && innerWidth >= wide))) this.root.open = true;
    this.root.firstElementChild.addEventListener("click", (event) => {
      if (this.meantBelow(event)) {
        event.preventDefault();
        return;
      }
      kept.set(this.root.open ? "folded" : "open");
      const part = !this.root.open && this.root.querySelector(leads[event.target.dataset.leads]);
      if (!part) return;
      part.open = true;
      requestAnimationFrame(() => part.scrollIntoView({ block: "start" }));
    });
  }

  // meantBelow reports whether a press on the line over the open margin was meant for what has
  // scrolled under it: only the words at its end fold the margin away then.
  meantBelow({ detail, clientX, currentTarget }) {
    const folds = 90; // px that these words take
    return this.root.open && this.root.scrollTop > 0 && detail > 0 && clientX < currentTarget.getBoundingClientRect().right - folds;
  }

  // lookHere says that something in the margin is to be decided. Where there is
  // room for both, the margin opens.
  lookHere() {
    this.lost = true;
    if (!narrow()) this.open();
    this.tell();
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
    };
    for (const t of ticks) {
      t.checked = !off.has(t.dataset.sight);
      t.addEventListener("change", () => {
        kept.set(ticks.filter((one) => !one.checked).map((one) => one.dataset.sight));
        show();
      });
    }
    show();
  }

  // strands lists what is to be looked at behind the fabric.
  strands(list) {
    this.carried ??= new Carried(this.editor);
    if (this.carried.show(this.root.querySelector("#chart-floats"), list)) this.tell();
  }

  // notes lists the notes in this view, in the order of their numbers. Pressing
  // one leads to its place.
  notes() {
    const { editor } = this;
    const list = editor.view.notes();
    this.root.querySelector("#chart-notes").replaceChildren(...list.map(({ y, x, words }, i) => {
      const li = document.createElement("li");
      li.append(button(`Note ${i + 1}, ${words}`, () => {
        editor.view.svg.focus({ preventScroll: true });
        editor.point(y, x);
        whole(editor);
      }));
      return li;
    }));
    this.tell();
  }

  // tell says on the folded margin what lies in it.
  tell() {
    const count = (selector) => this.root.querySelectorAll(selector).length;
    const parts = [["notes", count("#chart-notes li")], ["laid", count("[data-laid-form]")], ["sampler", count("[data-motifs] li")], ["strands", count("#chart-floats > .look")]];
    if (this.lost) parts.unshift(["look here", 0]);
    parts.unshift(["show", 0]);
    parts.push(["key", 0]);
    this.parts.replaceChildren(...parts.map(([name, n]) => {
      const span = document.createElement("span");
      span.dataset.leads = name;
      span.textContent = n > 0 ? `${name} ${n}` : name;
      return span;
    }));
  }
}

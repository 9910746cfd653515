// The stitches in the rail, by what they do to the round under the cursor.
import { offers } from "./ledger.js";
import { stitches } from "./tracing.js";

const shown = { keep: 4, more: 4, fewer: 2 }; // how many of each set stand in the rail; the others are a press away

export class Strip {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root.querySelector("[data-strip]");
    this.buttons = new Map([...this.root.querySelectorAll("[data-tool-op]")].map((b) => [b.dataset.toolOp, b]));
    this.parts = new Map([...this.root.querySelectorAll("[data-strip-part]")].map((p) => [p.dataset.stripPart, p]));
    this.more = this.root.querySelector("[data-strip-more]");
    this.more.addEventListener("click", () => this.open(this.parts.get("other").hidden));
    this.name();
    this.ask = editor.frame.add({ write: () => !editor.brush.stroke && this.offer() }); // after a stroke, not in it
  }

  open(open) {
    this.parts.get("other").hidden = !open;
    this.more.setAttribute("aria-expanded", String(open));
  }

  // offer sorts the stitches for the one under the cursor: those that keep its
  // round in balance, those that make it one more or one fewer, all others. It
  // moves nothing under the keyboard.
  offer() {
    const { model, cursor, tool } = this.editor;
    if (this.root.contains(document.activeElement)) return;
    const cell = model.at(cursor.y, cursor.x);
    if (cell && !model.op(cursor.y, cell).paint) return; // nobody paints over what is picked up or cast on
    const list = offers(model, cursor.y, cursor.x);
    const print = JSON.stringify([list, tool.value]);
    if (print === this.offered || list.length === 0) return;
    this.offered = print;
    const sets = { keep: [], more: [], fewer: [], other: [] };
    for (const o of list) {
      const set = setOf(o);
      sets[sets[set].length < (shown[set] ?? Infinity) || o.code === tool.value ? set : "other"].push(o);
    }
    const { makes } = model.totals(cursor.y);
    const heads = { keep: sets.keep.some((o) => o.balanced) ? "as many" : `nothing keeps ${makes}`, more: "one more", fewer: "one fewer" };
    for (const [name, part] of this.parts) {
      part.querySelector(".stitches").replaceChildren(...sets[name].map((o) => this.button(o)));
      if (!heads[name]) continue;
      part.hidden = sets[name].length === 0;
      part.querySelector(".strip-head").textContent = heads[name];
    }
    this.name();
  }

  button({ code, here, words }) {
    const b = this.buttons.get(code);
    const { words: name } = this.editor.model.ops.get(code);
    b.title = [name, here ? "is there" : words].filter(Boolean).join(": ");
    return b;
  }

  name() {
    const n = this.parts.get("other").querySelectorAll("button").length;
    this.more.textContent = `${n} other ${n === 1 ? "stitch" : "stitches"}`;
    this.more.hidden = n === 0;
  }
}

// setOf returns the set to which an offered stitch belongs.
function setOf({ balanced, net }) {
  if (balanced) return "keep";
  return { 1: "more", "-1": "fewer" }[net] ?? "other";
}

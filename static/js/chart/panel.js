// What is shown around the chart: the strip of stitches, what does not add up
// and how to mend it, floats, marks that lost their place, the list of
// commands.
import { dropped, putBack } from "./commands.js";
import { floatWords } from "./float.js";
import { mends, offers } from "./ledger.js";
import { commands } from "./menu.js";

const fewFloats = 8; // how many are listed in words; all are drawn

export class Panel {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root;
    this.strip = this.root.querySelector("[data-strip]");
    this.list = this.root.querySelector("#chart-commands");
    this.lost();
    this.strange();
    this.menu();
    this.question();
  }

  // ledger lists in words what does not add up, with offers to mend it.
  ledger(faults) {
    const { editor } = this;
    const place = this.root.querySelector("#chart-ledger");
    const words = faults.map((f) => f.words);
    const print = words.join("\n");
    if (print === this.print) return;
    const first = this.print === undefined;
    this.print = print;
    const items = faults.map((f) => {
      const li = item(f.words, "bad");
      if (faults.length <= 12) {
        for (const way of mends(editor.model, f).slice(0, 3)) li.append(" ", button(`Mend it: ${way.words}`, () => editor.history.stroke(way.edits)));
      }
      return li;
    });
    place.replaceChildren(...(items.length > 0 ? items : [item("every round adds up")]));
    if (!first) editor.announce(words[0] ?? "every round adds up");
  }

  floats() {
    const words = floatWords(this.editor.model);
    const print = words.join("\n");
    const place = this.root.querySelector("#chart-floats");
    if (print === place.dataset.print) return;
    place.dataset.print = print;
    const first = words.slice(0, fewFloats).map((w) => item(w, "look"));
    if (words.length > fewFloats) first.push(item(`and ${words.length - fewFloats} more`, "look"));
    place.replaceChildren(...first);
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
  }

  // offer puts first the stitches that keep the round under the cursor in
  // balance, and says what the others would change.
  offer() {
    const { model, cursor } = this.editor;
    if (!this.strip || this.strip.contains(document.activeElement)) return;
    const list = offers(model, cursor.y, cursor.x);
    const print = JSON.stringify(list);
    if (print === this.offered || list.length === 0) return;
    this.offered = print;
    const buttons = new Map([...this.strip.querySelectorAll("[data-tool-op]")].map((b) => [b.dataset.toolOp, b]));
    const [keep, change] = this.strip.querySelectorAll("[data-strip-part]");
    for (const o of list) {
      const b = buttons.get(o.code);
      b.querySelector(".tip").textContent = o.here ? "is there" : o.words;
      (o.balanced ? keep : change).append(b);
    }
    const round = model.name(cursor.y, model.several);
    keep.querySelector(".strip-head").textContent = list.some((o) => o.balanced) ? `keeps ${round} in balance` : `nothing alone keeps ${round} in balance`;
    change.querySelector(".strip-head").textContent = `would change ${round}`;
  }

  // lost lets the person put back marks that have no place in this plan.
  lost() {
    const { editor } = this;
    const list = editor.model.data.lost ?? [];
    for (const b of this.root.querySelectorAll("[data-put-back]")) {
      b.addEventListener("click", () => {
        editor.history.stroke(putBack(editor.model, list[Number(b.dataset.putBack)], editor.cursor.y, editor.cursor.x));
        b.closest("li").remove();
      });
    }
    for (const b of this.root.querySelectorAll("[data-drop]")) {
      b.addEventListener("click", () => {
        editor.history.stroke([dropped(list[Number(b.dataset.drop)])]);
        b.closest("li").remove();
      });
    }
  }

  // strange offers what was drawn on another mitt that had this number before a
  // backup was put back.
  strange() {
    const { editor } = this;
    const { outbox, history } = editor;
    const strokes = outbox.strange.filter((r) => r.edits);
    const place = this.root.querySelector("[data-strange]");
    place.hidden = strokes.length === 0;
    if (place.hidden) return;
    const words = document.createElement("p");
    const one = strokes.length === 1;
    words.textContent = `${strokes.length} ${one ? "stroke was" : "strokes were"} drawn on another mitt that is no longer here. ${one ? "It is" : "They are"} kept in this browser.`;
    const lay = button(`Lay ${one ? "it" : "them"} on this one`, () => {
      outbox.late = strokes.length;
      for (const r of strokes) history.stroke(r.edits);
      outbox.forget();
      this.strange();
    });
    const drop = button(`Drop ${one ? "it" : "them"}`, () => {
      outbox.forget();
      this.strange();
    });
    place.replaceChildren(words, lay, " ", drop);
  }

  menu() {
    const { editor, list } = this;
    const place = list.querySelector("[data-commands]");
    const groups = Map.groupBy(commands, (c) => c.group);
    place.replaceChildren(...[...groups].map(([name, all]) => {
      const ul = document.createElement("ul");
      ul.setAttribute("aria-label", name);
      for (const c of all) {
        const li = document.createElement("li");
        const b = button(c.words, () => {
          this.toggle(false);
          editor.run(c.name);
        });
        b.dataset.command = c.name;
        if (c.key) {
          const key = document.createElement("kbd");
          key.textContent = c.key;
          b.append(" ", key);
        }
        li.append(b);
        ul.append(li);
      }
      return ul;
    }));
    const filter = list.querySelector("input");
    filter.addEventListener("input", () => {
      if (filter.value.startsWith("?")) filter.value = filter.value.slice(1); // the key that opened the list
      this.sift(filter.value);
    });
    list.addEventListener("keydown", (event) => event.key === "Escape" && this.toggle(false));
    onEnter(filter, () => place.querySelector("li:not([hidden]) button")?.click());
  }

  // sift shows the commands that contain every word typed.
  sift(text) {
    const typed = text.toLowerCase().split(" ").filter(Boolean);
    for (const li of this.list.querySelectorAll("li")) {
      const words = li.textContent.toLowerCase();
      li.hidden = !typed.every((w) => words.includes(w));
    }
  }

  toggle(open = this.list.hidden) {
    this.list.hidden = !open;
    this.root.querySelector('[data-run="commands"]')?.setAttribute("aria-expanded", String(open));
    if (!open) {
      this.editor.view.svg.focus({ preventScroll: true });
      return;
    }
    const filter = this.list.querySelector("input");
    filter.value = "";
    this.sift("");
    filter.focus();
  }

  // question sets up the line below the chart in which a name or a note is
  // typed.
  question() {
    const form = this.root.querySelector("#chart-ask");
    const close = () => {
      form.hidden = true;
      this.editor.view.svg.focus({ preventScroll: true });
    };
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      const text = form.elements.text.value.trim();
      close();
      this.answered?.(text);
    });
    form.addEventListener("keydown", (event) => event.key === "Escape" && close());
    form.querySelector("[data-cancel]").addEventListener("click", close);
  }

  askFor(label, value, maxLength, answered) {
    const form = this.root.querySelector("#chart-ask");
    form.querySelector("[data-label]").textContent = label;
    form.elements.text.value = value;
    form.elements.text.maxLength = maxLength;
    this.answered = answered;
    form.hidden = false;
    form.elements.text.focus();
  }
}

// onEnter acts when the Enter key, pressed down in a field, is let go. Acting
// on the press would let what it opens take the key for its own.
function onEnter(field, act) {
  let down = false;
  field.addEventListener("keydown", (event) => {
    down = event.key === "Enter";
    if (down) event.preventDefault();
  });
  field.addEventListener("keyup", (event) => {
    if (event.key === "Enter" && down) act();
    down = false;
  });
}

function item(text, name) {
  const li = document.createElement("li");
  li.textContent = text;
  if (name) li.classList.add(name);
  return li;
}

export function button(text, click) {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = text;
  b.addEventListener("click", click);
  return b;
}

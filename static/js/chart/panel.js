// What is said around the chart: what does not add up and how to mend it, the list of commands.
import { here } from "./here.js";
import { mends } from "./ledger.js";
import { Lost } from "./lost.js";
import { commands } from "./menu.js";
import { button, byTouch, item } from "./page.js";

export class Panel {
  constructor(editor) {
    this.editor = editor;
    this.root = editor.root;
    this.list = this.root.querySelector("#chart-commands");
    this.lost = new Lost(editor);
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
    const allWell = `every ${editor.model.rows.every((row) => row.noun === "row") ? "row" : "round"} adds up`;
    const items = faults.map((f) => {
      const li = item(f.words, "bad");
      if (faults.length <= 12) {
        for (const way of mends(editor.model, f).slice(0, 3)) li.append(" ", button(`Mend it: ${way.words}`, () => editor.history.stroke(way.edits)));
      }
      return li;
    });
    place.replaceChildren(...(items.length > 0 ? items : [item(allWell)]));
    if (!first && !editor.told.offers) editor.told.count(words[0] ?? allWell);
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
    editor.margin.lookHere();
    const words = document.createElement("p");
    const one = strokes.length === 1;
    words.textContent = `${strokes.length} ${one ? "stroke was" : "strokes were"} drawn on another mitt that is no longer here. ${one ? "It is" : "They are"} kept in this browser.`;
    const lay = button(`Lay ${one ? "it" : "them"} on this one`, () => {
      outbox.late = strokes.length;
      for (const r of strokes) history.stroke(r.edits);
      outbox.forget();
      this.strange();
    });
    const drop = button(`Forget ${one ? "it" : "them"}`, () => {
      outbox.forget();
      this.strange();
    });
    place.replaceChildren(words, lay, " ", drop);
  }

  // menu lists all else that can be done, under headings that open.
  menu() {
    const { editor, list } = this;
    const groups = Map.groupBy(commands, (c) => c.group);
    list.querySelector("[data-commands]").replaceChildren(...[...groups].map(([name, all]) => {
      const fold = document.createElement("details");
      const head = document.createElement("summary");
      head.textContent = name;
      const ul = document.createElement("ul");
      for (const c of all) {
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
        const li = document.createElement("li");
        li.append(b);
        ul.append(li);
      }
      fold.append(head, ul);
      return fold;
    }));
    leave(list, () => this.toggle(false));
  }

  // named calls each command by what lies under the cursor: a round, or a row.
  named() {
    const row = this.editor.model.row(this.editor.cursor.y)?.noun === "row";
    for (const c of commands) this.list.querySelector(`[data-command="${c.name}"]`).firstChild.textContent = (row && c.rows) || c.words;
  }

  toggle(open = this.list.hidden) {
    this.list.hidden = !open;
    if (open) {
      this.named();
      this.editor.margin.open();
    }
    this.root.querySelector('[data-run="commands"]')?.setAttribute("aria-expanded", String(open));
    if (!open) {
      this.editor.view.svg.focus({ preventScroll: true });
      return;
    }
    this.here();
    this.list.querySelector("#chart-can").focus();
  }

  // here says what can be done at the cursor, while that is asked.
  here() {
    if (this.list.hidden) return;
    const { model, cursor, selection } = this.editor;
    this.list.querySelector("[data-here]").replaceChildren(...here(model, cursor.y, cursor.x, { touch: byTouch(), marked: !selection.empty }).map((w) => item(w)));
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
    leave(form, close);
    form.querySelector("[data-cancel]").addEventListener("click", close);
  }

  // askYarn asks for the name and the colour of a yarn, and types them into the
  // fields of the form, which saves them.
  askYarn({ toolColour: id, yarnField }) {
    const form = this.root.querySelector("#chart-yarn");
    const yarn = this.editor.model.yarns.get(id);
    const fields = [yarnField, yarnField.replace(/name$/, "colour")].map((field) => document.getElementById(field));
    const [name, colour] = [form.elements.name, form.elements.colour];
    form.querySelector("[data-label]").textContent = `Yarn ${id.toUpperCase()}`;
    name.value = fields[0].value;
    name.placeholder = yarn.name;
    colour.value = yarn.fill || "#ffffff";
    const before = colour.value;
    const close = () => {
      form.hidden = true;
      this.root.querySelector(`[data-tool-colour="${id}"]`).focus({ preventScroll: true });
    };
    form.onsubmit = (event) => {
      event.preventDefault();
      type(fields[0], name.value.trim());
      if (colour.value !== before) type(fields[1], colour.value.toUpperCase());
      close();
    };
    form.onkeydown = onEscape(close);
    form.querySelector("[data-cancel]").onclick = close;
    form.querySelector("a").onclick = () => { form.hidden = true; };
    this.root.querySelector("#chart-ask").hidden = true;
    form.hidden = false;
    name.focus();
    name.select();
  }

  askFor(label, value, maxLength, answered) {
    const form = this.root.querySelector("#chart-ask");
    this.root.querySelector("#chart-yarn").hidden = true;
    form.querySelector("[data-label]").textContent = label;
    form.elements.text.value = value;
    form.elements.text.maxLength = maxLength;
    this.answered = answered;
    form.hidden = false;
    form.elements.text.focus();
  }
}

// type types a text into a field, as a person does.
function type(field, text) {
  if (field.value === text) return;
  field.value = text;
  for (const name of ["input", "change"]) field.dispatchEvent(new Event(name, { bubbles: true }));
}

// leave calls a function when a part of the page is left with Escape.
function leave(place, close) {
  place.addEventListener("keydown", onEscape(close));
}

function onEscape(close) {
  return (event) => {
    if (event.key !== "Escape") return;
    event.preventDefault();
    close();
  };
}

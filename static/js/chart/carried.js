// The list of strands to look at, and under it those that are meant to be long: a press
// beside a strand says so, another takes it back.
import { mean, meant } from "./float.js";
import { button, item } from "./page.js";
import { crowded, groups, wanted } from "./strands.js";

export class Carried {
  constructor(editor) {
    this.editor = editor;
  }

  // show lists strands in a place, and reports whether the list is another one now.
  show(place, list) {
    const { model } = this.editor;
    const kept = meant(model);
    const look = [...groups(model, list), ...crowded(model)];
    const print = JSON.stringify([look, kept]);
    if (place === this.place && print === this.print) return false;
    Object.assign(this, { place, print });
    const open = new Set([...place.querySelectorAll("details[open] > summary")].map((s) => s.textContent));
    const held = place.contains(document.activeElement);
    place.replaceChildren(...look.map((g) => this.group(g, open)));
    if (look.length === 0 && kept.length === 0) place.append(item("No strand is too long."));
    if (kept.length > 0) place.append(this.wanted(kept));
    if (held) place.querySelector("summary, button")?.focus({ preventScroll: true }); // its button is gone
    return true;
  }

  // group is a line that opens to its rounds.
  group({ head, lines, list }, open) {
    const li = opens(head, lines.map(({ words, list: of }) => this.line(words, lines.length > 1 ? of : [], true)));
    li.className = "look";
    li.firstElementChild.open = open.has(head);
    if (list.length > 0) li.append(this.press(list, true, head));
    return li;
  }

  // wanted only counts the strands that are meant. Their line opens to them.
  wanted(list) {
    const head = list.length === 1 ? "1 strand left long" : `${list.length} strands left long`;
    const lines = wanted(this.editor.model, list);
    const li = opens(head, lines.map(({ words, list: of }) => this.line(words, lines.length > 1 ? of : [], false)));
    li.className = "meant";
    li.append(this.press(list, false, head));
    return li;
  }

  line(words, list, is) {
    const li = item(words);
    if (list.length > 0) li.append(" ", this.press(list, is, words));
    return li;
  }

  // press is the button that means strands, or takes that back, in one stroke.
  press(list, is, of) {
    const one = list.length === 1;
    const b = button(words(one, is), () => {
      this.editor.history.stroke(list.map((f) => mean(this.editor.model, f, is)).filter((e) => e.column !== ""));
    });
    b.classList.add("word");
    b.setAttribute("aria-label", `${b.textContent}: ${of}`);
    return b;
  }
}

function words(one, is) {
  if (is) return one ? "leave it long" : "leave them long";
  return one ? "look at it again" : "look at them again";
}

// opens is a list item with a line that opens to others.
function opens(head, lines) {
  const details = document.createElement("details");
  const summary = document.createElement("summary");
  summary.textContent = head;
  const ul = document.createElement("ul");
  ul.append(...lines);
  details.append(summary, ul);
  const li = document.createElement("li");
  li.append(details);
  return li;
}

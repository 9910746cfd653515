// The list of a class: what is typed beside a student is saved at once, a student
// is dragged to another place by the grip before their name, and what printing the
// class takes is counted after the page is there. The form below the table does
// the same without a script, and for the keyboard.
import { Outbox, postForm } from "./outbox.js";

const edge = 56; // px from the window's upper and lower end within which a drag scrolls
const pace = 9; // px a frame
const order = "order"; // what a move is of; a remark is of a student

// placeAt returns before which of the boxes, from top to bottom, something is put
// down at y; their number means after the last.
export function placeAt(boxes, y) {
  const at = boxes.findIndex((box) => y < (box.top + box.bottom) / 2);
  return at < 0 ? boxes.length : at;
}

// reorder returns a list with one of its items moved before another, or to its end
// if that is undefined.
export function reorder(list, item, before) {
  const rest = list.filter((other) => other !== item);
  const at = before === undefined ? rest.length : rest.indexOf(before);
  return at < 0 ? list : [...rest.slice(0, at), item, ...rest.slice(at)];
}

class Roster {
  constructor(form, table) {
    Object.assign(this, { form, table, said: form.querySelector("[data-said]"), drag: undefined, words: "", refused: new Map() });
    this.outbox = new Outbox({
      href: form.action, send: postForm, notNow: new Set([401, 408, 421, 425, 429]), arrived: (reply) => reply?.saved,
      wire: (request) => request.body, on: (what, detail) => this.heard(what, detail),
    });
    this.save = form.querySelector('[value="save"]');
    this.save.hidden = true;
    document.addEventListener("change", ({ target }) => {
      if (target.form === form && target.closest("tbody")) this.keep(target.closest("tbody"));
    });
    form.addEventListener("submit", (event) => this.submitted(event));
    window.addEventListener("online", () => this.outbox.push());
    window.addEventListener("beforeunload", (event) => this.outbox.unsent && event.preventDefault());
    document.addEventListener("keydown", (event) => event.key === "Escape" && this.drop());
    if (this.students.length > 1) for (const body of this.students) this.grip(body);
  }

  get students() {
    return [...this.table.tBodies];
  }

  student(id) {
    return this.students.find((body) => body.dataset.student === id);
  }

  // keep saves what stands beside a student. What is saved then is noted at once,
  // for what is typed next comes after it.
  keep(body) {
    const id = body.dataset.student;
    const field = (name) => this.form.elements.namedItem(`${name}-${id}`);
    const fields = ["knits-was", "note-was", "knits", "note"];
    const value = (input) => (input.type === "checkbox" && !input.checked ? "" : input.value);
    const request = new URLSearchParams({ student: id });
    for (const name of fields) request.set(`${name}-${id}`, value(field(name)));
    const was = ["knits", "note"].map((name) => field(`${name}-was`).value);
    for (const name of ["knits", "note"]) field(`${name}-was`).value = value(field(name));
    this.refused.delete(id);
    this.mark(id, "");
    this.words = "Saved.";
    this.outbox.add({
      body: request,
      of: id,
      undo: () => ["knits", "note"].forEach((name, i) => (field(`${name}-was`).value = was[i])),
    });
  }

  submitted(event) {
    if (event.submitter?.value === "move") {
      event.preventDefault();
      const { move, before } = this.form.elements;
      this.move(this.student(move.value), this.student(before.value));
    } else if (this.save.hidden) {
      event.preventDefault(); // it was saved as it was typed
    }
  }

  // move moves a student before another one, or to the end, here and on the server.
  move(body, before) {
    const list = this.students;
    const moved = reorder(list, body, before);
    if (moved.every((other, i) => other === list[i])) return this.say("The list stays as it is.");
    this.show(moved);
    this.refused.delete(order);
    const name = (one) => one.dataset.name;
    this.words = before ? `${name(body)} stands before ${name(before)} now.` : `${name(body)} stands at the end now.`;
    this.outbox.add({
      body: new URLSearchParams({ do: "move", move: body.dataset.student, before: before?.dataset.student ?? "" }),
      of: order,
      undo: () => this.show(list),
    });
  }

  // show puts the students, and their names in the choices, in an order.
  show(list) {
    this.table.append(...list);
    for (const select of this.form.querySelectorAll("select")) {
      const chosen = select.value;
      const options = new Map([...select.options].map((option) => [option.value, option]));
      select.prepend(...list.map((body) => options.get(body.dataset.student)));
      select.value = chosen;
    }
  }

  heard(what, detail) {
    if (what === "saving") this.say("saving…");
    if (what === "unsaved") this.say(`Not saved yet: ${detail.why}.`, "unsaved");
    if (what === "refused") {
      detail.request.undo();
      const why = detail.lines.join(" ");
      this.refused.set(detail.request.of, `Not saved: ${why}`);
      if (detail.request.of !== order) this.mark(detail.request.of, why);
    }
    if (what !== "saved") return;
    const [trouble] = this.refused.values();
    this.save.hidden = ![...this.refused.keys()].some((of) => of !== order); // its answer shows both versions
    this.say(trouble ?? this.words, trouble && "unsaved");
  }

  // mark puts a message at the note on a student, or takes it away.
  mark(id, text) {
    const cell = this.form.elements.namedItem(`note-${id}`).closest("td");
    cell.classList.toggle("has-fault", text !== "");
    cell.querySelector(".fault-message").textContent = text;
  }

  say(text, state = "") {
    this.said.textContent = text;
    this.said.dataset.state = state;
  }

  // grip gives a student something to be dragged by. The choices below the table
  // are for everybody else.
  grip(body) {
    const grip = document.createElement("span");
    grip.className = "grip";
    grip.setAttribute("aria-hidden", "true");
    body.querySelector("th").prepend(grip);
    grip.addEventListener("pointerdown", (event) => {
      if (event.button !== 0) return;
      event.preventDefault(); // of selecting text
      grip.setPointerCapture(event.pointerId);
      this.drag = { body, y: event.clientY };
      body.classList.add("is-moved");
      this.follow();
    });
    grip.addEventListener("pointermove", (event) => this.drag && (this.drag.y = event.clientY));
    grip.addEventListener("pointerup", (event) => {
      if (!this.drag) return;
      this.drag.y = event.clientY;
      const { before } = this.target();
      this.drop();
      this.move(body, before);
    });
    grip.addEventListener("lostpointercapture", () => this.drop());
  }

  // target returns the student before whom the dragged one would stand, undefined
  // at the end of the list.
  target() {
    const list = this.students;
    return { before: list[placeAt(list.map((body) => body.getBoundingClientRect()), this.drag.y)] };
  }

  // follow marks where the student would stand, frame by frame, and scrolls at the
  // window's ends.
  follow() {
    if (!this.drag) return;
    const { before } = this.target();
    for (const body of this.students) body.classList.toggle("is-before", body === before);
    this.table.classList.toggle("is-at-end", !before);
    if (this.drag.y < edge) window.scrollBy(0, -pace);
    if (this.drag.y > window.innerHeight - edge) window.scrollBy(0, pace);
    requestAnimationFrame(() => this.follow());
  }

  drop() {
    this.drag = undefined;
    this.table.classList.remove("is-at-end");
    for (const body of this.students) body.classList.remove("is-moved", "is-before");
  }
}

// count puts what printing takes in the place of the link that asks for it.
async function count(link) {
  const answer = await fetch(link.href, { headers: { Accept: "application/json" } });
  const { cost } = answer.ok ? await answer.json() : {};
  if (cost) link.replaceWith(cost);
}

if (globalThis.document) {
  const form = document.getElementById("roster");
  if (form) new Roster(form, document.querySelector(".class-table"));
  const link = document.querySelector("[data-count]");
  if (link) count(link).catch(() => {}); // the link stays, for the person to press
}

// The rounds at the elbow, and what opens and ends each part: one target goes
// on, one goes back. The page has all of them, so it goes on without the
// server; what was counted and noted waits until it can be delivered.
import { Outbox, postJSON } from "./outbox.js";
import { kept } from "./storage.js";

const about = 2; // rows of the strip on each side

// Elbow knows where the work stands and what there is to say of it.
export class Elbow {
  constructor(tasks, nth, side) {
    this.tasks = tasks;
    this.nth = nth;
    this.side = side;
  }

  get now() {
    return this.tasks[this.nth];
  }

  get last() {
    return this.tasks[this.nth - 1];
  }

  // go counts a task more or less; it gives what is to be delivered, or
  // nothing at either end.
  go(step) {
    const nth = Math.min(Math.max(this.nth + step, 0), this.tasks.length);
    if (nth === this.nth) return undefined;
    this.nth = nth;
    return { side: this.side, section: this.last?.section ?? "", round: this.last?.round ?? 0 };
  }

  // note writes on the present round; only a round has notes.
  note(text) {
    if (!this.now?.is_round) return undefined;
    this.now.note = text;
    return { side: this.side, note: text, section: this.now.section, round: this.now.round };
  }

  // follow takes over where the work stands elsewhere, with its notes; it gives
  // false where the mitt is planned otherwise by now.
  follow({ nth, tasks }) {
    const bare = (list) => JSON.stringify(list.map(({ note: _, ...rest }) => rest));
    if (bare(tasks) !== bare(this.tasks)) return false;
    this.tasks = tasks;
    this.nth = nth;
    return true;
  }

  // recall goes to where undelivered counts left off, and puts their notes back.
  recall(waiting) {
    for (const { side, section, round, note } of waiting) {
      if (note !== undefined) {
        const of = this.tasks.find((t) => t.section === section && t.round === round);
        if (of) of.note = note;
      } else if (side === this.side) {
        const at = this.tasks.findIndex((t) => t.section === section && t.round === round);
        if (at >= 0 || section === "") this.nth = at + 1;
      }
    }
  }
}

// windowOf is the part of a strip about a row, as a viewBox.
export function windowOf(strip, row) {
  const low = Math.max(row - about, 1);
  const high = Math.min(row + about, strip.rows);
  return [0, strip.bottom - high * strip.cell_height, strip.width, (high - low + 1) * strip.cell_height];
}

function start(root) {
  const data = (id) => JSON.parse(document.getElementById(id).textContent);
  const strips = new Map(data("strips").map((s) => [s.view, s]));
  const elbow = new Elbow(data("tasks"), Number(root.dataset.nth), root.dataset.side);
  const outbox = new Outbox({ href: root.dataset.href, send: postJSON, keep: kept(`thenar:needles:${root.dataset.href}`), on: heard });
  elbow.recall(outbox.waiting);
  const find = (name) => root.querySelector(`[data-${name}]`);
  const note = root.querySelector("#note");

  function show() {
    const { now, last } = elbow;
    find("title").replaceChildren(now ? `${now.title} ` : "Done ", small(now?.place ?? "all rounds are knitted"));
    find("say").textContent = now?.words ?? "";
    find("counts").textContent = now?.counts ?? "";
    find("changed").hidden = !now?.changed;
    list(find("first"), now?.first ?? []);
    list(find("then"), now ? [] : (last?.then ?? []));
    find("made").textContent = `${last?.knitted ?? 0} of ${elbow.tasks.at(-1).knitted} rounds knitted`;
    note.value = now?.note ?? "";
    find("note").hidden = !now?.is_round;
    find("done").hidden = Boolean(now);
    root.querySelector(".back").disabled = elbow.nth === 0;
    root.querySelector(".forward").disabled = !now;
    root.querySelector(".forward").textContent = now?.press ?? "Done";
    strip(now ?? last);
  }

  // strip shows the rows about a task, lit where it is the round that is next.
  function strip(task) {
    for (const place of root.querySelectorAll("[data-strip]")) {
      place.hidden = place.dataset.strip !== task?.view;
      if (place.hidden) continue;
      const of = strips.get(task.view);
      const svg = place.querySelector("svg");
      svg.setAttribute("viewBox", windowOf(of, task.row).join(" "));
      const top = of.bottom - task.row * of.cell_height;
      svg.querySelector(".now").setAttribute("d", elbow.now?.is_round ? `M0 ${top}H${of.width}V${top + of.cell_height}H0Z` : "");
    }
  }

  function heard(what, detail) {
    const place = document.getElementById("kept");
    if (what === "saved") place.textContent = `kept ${new Date().toTimeString().slice(0, 5)}`;
    if (what === "unsaved") place.textContent = `${detail.why.replace(/\.$/, "")}: ${outbox.waiting.length} kept in this browser`;
    if (what === "refused") place.textContent = `not kept: ${detail.lines.join(" ")}`;
    if (["saved", "unsaved", "refused"].includes(what)) place.dataset.state = what === "saved" ? "saved" : "unsaved";
  }

  for (const form of root.querySelectorAll("[data-press]")) {
    form.addEventListener("submit", (event) => {
      event.preventDefault();
      keepNote();
      const count = elbow.go(Number(form.dataset.press));
      if (count) outbox.add(count);
      show();
    });
  }
  function keepNote() {
    if (elbow.now?.is_round && note.value !== elbow.now.note) outbox.add(elbow.note(note.value));
  }
  find("note").addEventListener("submit", (event) => {
    event.preventDefault();
    keepNote();
  });
  note.addEventListener("change", keepNote);
  // The page may go while a note is being written: it is loaded again, or the
  // phone is put away and the browser ended.
  window.addEventListener("pagehide", keepNote);
  document.addEventListener("visibilitychange", () => document.hidden && keepNote());
  // What another device counted or planned meanwhile is taken over when the
  // page is looked at again, unless something waits here.
  async function look() {
    if (document.hidden || outbox.unsent) return;
    const reply = await fetch(`${root.dataset.href}?side=${elbow.side}`, { headers: { Accept: "application/json" } }).catch(() => undefined);
    const now = reply?.ok ? await reply.json().catch(() => undefined) : undefined;
    if (!now?.tasks || outbox.unsent || document.activeElement === note) return;
    if (elbow.follow(now)) show();
    else location.reload();
  }

  window.addEventListener("online", () => outbox.push());
  document.addEventListener("visibilitychange", look);
  window.addEventListener("pageshow", (event) => event.persisted && look());
  show();
  outbox.push();
  awake();
}

function small(text) {
  const element = document.createElement("small");
  element.textContent = text;
  return element;
}

function list(place, texts) {
  place.replaceChildren(...texts.map((text) => {
    const item = document.createElement("li");
    item.textContent = text;
    return item;
  }));
}

// awake keeps the screen on while the page is looked at, where the browser
// lets it: it asks again each time the page comes back.
async function awake() {
  const say = (text) => (document.getElementById("awake").textContent = text);
  if (!navigator.wakeLock) {
    say("This browser lets no page keep the screen on here: set the screen’s own time-out.");
    return;
  }
  const ask = async () => {
    if (document.hidden) return;
    try {
      await navigator.wakeLock.request("screen");
      say("The screen stays on.");
    } catch {
      say("The screen may go dark: the browser did not let the page keep it on.");
    }
  };
  document.addEventListener("visibilitychange", ask);
  await ask();
}

const root = globalThis.document?.getElementById("round");
if (root) start(root);

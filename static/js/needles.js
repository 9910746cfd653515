// The page at the needles: the rounds, and what opens and ends each part. One
// button goes on, one goes back. The page has all of them, so it works without
// the server; counts and notes wait until they can be delivered.
import { Outbox, postJSON } from "./outbox.js";
import { kept } from "./storage.js";

const nearRows = 2; // rows of the strip on each side of the present one

// Needles is where the work stands, and what there is to say about it.
export class Needles {
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

  // go counts one task more or less, and returns what is to be delivered, or
  // undefined at either end.
  go(step) {
    const nth = Math.min(Math.max(this.nth + step, 0), this.tasks.length);
    if (nth === this.nth) return undefined;
    this.nth = nth;
    return { side: this.side, section: this.last?.section ?? "", round: this.last?.round ?? 0 };
  }

  // note writes on the present round, and returns what is to be delivered. Only
  // a round has notes.
  note(text) {
    if (!this.now?.is_round) return undefined;
    this.now.note = text;
    return { side: this.side, note: text, section: this.now.section, round: this.now.round };
  }

  // follow takes over the place of the work, and the notes, from another
  // device. It returns false if the mitt is planned otherwise by now.
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

// windowOf returns the part of a strip around a row, as a viewBox.
export function windowOf(strip, row) {
  const low = Math.max(row - nearRows, 1);
  const high = Math.min(row + nearRows, strip.rows);
  return [0, strip.bottom - high * strip.cell_height, strip.width, (high - low + 1) * strip.cell_height];
}

function start(root) {
  const data = (id) => JSON.parse(document.getElementById(id).textContent);
  const strips = new Map(data("strips").map((s) => [s.view, s]));
  const needles = new Needles(data("tasks"), Number(root.dataset.nth), root.dataset.side);
  const outbox = new Outbox({ href: root.dataset.href, send: postJSON, keep: kept(`thenar:needles:${root.dataset.href}`), on: heard });
  needles.recall(outbox.waiting);
  const find = (name) => root.querySelector(`[data-${name}]`);
  const note = root.querySelector("#note");

  function show() {
    const { now, last } = needles;
    find("title").replaceChildren(now ? `${now.title} ` : "Done ", small(now?.place ?? "all rounds are knitted"));
    find("say").textContent = now?.words ?? "";
    find("counts").textContent = now?.counts ?? "";
    find("changed").hidden = !now?.changed;
    list(find("first"), now?.first ?? []);
    list(find("then"), now ? [] : (last?.then ?? []));
    find("made").textContent = `${last?.knitted ?? 0} of ${needles.tasks.at(-1).knitted} rounds knitted`;
    note.value = now?.note ?? "";
    find("note").hidden = !now?.is_round;
    find("done").hidden = Boolean(now);
    root.querySelector(".back").disabled = needles.nth === 0;
    root.querySelector(".forward").disabled = !now;
    root.querySelector(".forward").textContent = now?.press ?? "Done";
    strip(now ?? last);
  }

  // strip shows the rows around a task. The row is lit if the task is a round.
  function strip(task) {
    for (const place of root.querySelectorAll("[data-strip]")) {
      place.hidden = place.dataset.strip !== task?.view;
      if (place.hidden) continue;
      const of = strips.get(task.view);
      const svg = place.querySelector("svg");
      svg.setAttribute("viewBox", windowOf(of, task.row).join(" "));
      const top = of.bottom - task.row * of.cell_height;
      svg.querySelector(".now").setAttribute("d", needles.now?.is_round ? `M0 ${top}H${of.width}V${top + of.cell_height}H0Z` : "");
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
      const count = needles.go(Number(form.dataset.press));
      if (count) outbox.add(count);
      show();
    });
  }
  function keepNote() {
    if (needles.now?.is_round && note.value !== needles.now.note) outbox.add(needles.note(note.value));
  }
  find("note").addEventListener("submit", (event) => {
    event.preventDefault();
    keepNote();
  });
  note.addEventListener("change", keepNote);
  // The page may vanish while a note is being written: it is loaded again, or
  // the phone is put away and the browser ended.
  window.addEventListener("pagehide", keepNote);
  document.addEventListener("visibilitychange", () => document.hidden && keepNote());
  // When the page is looked at again, it takes over what another device counted
  // or planned meanwhile, unless something waits here.
  async function look() {
    if (document.hidden || outbox.unsent) return;
    const reply = await fetch(`${root.dataset.href}?side=${needles.side}`, { headers: { Accept: "application/json" } }).catch(() => undefined);
    const now = reply?.ok ? await reply.json().catch(() => undefined) : undefined;
    if (!now?.tasks || outbox.unsent || document.activeElement === note) return;
    if (needles.follow(now)) show();
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

// awake keeps the screen on while the page is looked at, if the browser allows
// it. The browser forgets that when the page is left, so awake asks again.
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

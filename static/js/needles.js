// The page at the needles: the rounds, and what opens and ends each part. One
// button goes on, one goes back. The page has all of them, so it works without
// the server; counts and notes wait until they can be delivered. The charts come
// right after it, and until then it has the rows about the present round.
import { Outbox, noConnection, postJSON } from "./outbox.js";
import { kept } from "./storage.js";
import { Strips, toned, windowOf } from "./strips.js";

const longSay = 150; // letters from which on words are shown smaller
const laterTasks = 2; // tasks that stand below the present one
const goesDark = "The screen may go dark: set a longer time-out."; // where no page may keep it on

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

  // made says how much of the mitt is knitted, or which of its rounds is next.
  get made() {
    const all = this.tasks.at(-1).knitted;
    const noun = this.tasks.every((t) => !t.is_round || t.noun === "row") ? "row" : "round";
    return this.now?.is_round ? `${noun} ${this.now.knitted} of ${all}` : `${this.last?.knitted ?? 0} of ${all} ${noun}s knitted`;
  }

  // madeOf says what a stitch on the strip of progress stands for.
  get madeOf() {
    const at = this.now ?? this.last;
    return at ? `each stitch: a ${at.noun} of the ${at.part}` : "";
  }

  // terms are those of the trade that the present task, or the next one, uses.
  get terms() {
    return this.tasks.slice(this.nth, this.nth + 2).flatMap((t) => t.terms);
  }

  // onward says what comes after the present task.
  get onward() {
    if (!this.now) return "";
    const next = this.tasks[this.nth + 1];
    if (!next) return "then this hand is done";
    return next.is_round ? `then ${next.name}, ${next.after} ${next.after === 1 ? "stitch" : "stitches"}` : `then ${next.name}`;
  }

  // backward says to what the other button goes back.
  get backward() {
    return this.last ? `to ${this.last.name}` : "";
  }

  // later is the next tasks after the present one.
  get later() {
    return this.tasks.slice(this.nth + 1, this.nth + 1 + laterTasks);
  }

  // pinned is the next note ahead, with its round, or "".
  get pinned() {
    const of = this.tasks.slice(this.nth + 1).find((t) => t.note);
    return of ? `${of.noun === "row" ? "Row" : "Round"} ${of.round} of the ${of.part}: ${of.note}` : "";
  }

  // stitches returns how each round of a section is shown on the strip of
  // progress: as knitted, as the present one, or as one to come.
  stitches(section, rounds) {
    const done = Math.max(0, ...this.tasks.slice(0, this.nth).filter((t) => t.is_round && t.section === section).map((t) => t.round));
    const present = this.now?.is_round && this.now.section === section ? this.now.round : 0;
    return Array.from({ length: rounds }, (_, i) => (i < done ? "knitted" : i + 1 === present ? "present" : "to-come"));
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

function start(root) {
  const data = (id) => JSON.parse(document.getElementById(id).textContent);
  const strips = new Strips(data("strips"), root.dataset.strips);
  const needles = new Needles(data("tasks"), Number(root.dataset.nth), root.dataset.side);
  const outbox = new Outbox({ href: root.dataset.href, send: postJSON, keep: kept(`thenar:needles:${root.dataset.href}`), on: heard });
  needles.recall(outbox.waiting);
  const find = (name) => root.querySelector(`[data-${name}]`);
  const note = root.querySelector("#note");
  const awakeSays = document.getElementById("awake");
  const keep = find("note").querySelector("button");

  function show() {
    const { now, last } = needles;
    find("title").replaceChildren(now ? `${now.title} ` : "Done ", small(now?.place ?? "all rounds are knitted"));
    find("say").replaceChildren(...(now?.say ?? []).map(said));
    find("say").classList.toggle("long", (now?.words ?? "").length > longSay);
    find("counts").textContent = now?.counts ?? "";
    find("changed").hidden = !now?.changed;
    list(find("first"), now?.first ?? []);
    list(find("then"), (now ?? last)?.then ?? []);
    find("later").replaceChildren(...needles.later.map((t) => item(strong(t.title), ` ${t.words}`)));
    for (const name of ["made", "onward", "backward"]) find(name).textContent = needles[name];
    find("made-of").textContent = needles.madeOf;
    for (const term of root.querySelectorAll("[data-term]")) term.hidden = !needles.terms.includes(term.dataset.term);
    find("pinned").textContent = needles.pinned;
    find("pinned").hidden = needles.pinned === "";
    note.value = now?.note ?? "";
    keep.textContent = note.value === "" ? "Keep it" : "Kept";
    find("note").hidden = !now?.is_round;
    find("done").hidden = Boolean(now);
    root.querySelector(".back").disabled = needles.nth === 0;
    root.querySelector(".forward").disabled = !now;
    root.querySelector(".forward").textContent = now?.press ?? "Done";
    strip(now ?? last);
    progress(now ?? last);
  }

  // strip shows the rows around a task, if they are here. The row is lit if the
  // task is a round. A wide page shows the whole round.
  function strip(task) {
    find("gaps").hidden = true;
    for (const place of root.querySelectorAll("[data-strip]")) {
      const { strip: view } = place.dataset;
      const wide = view === task?.wide;
      const row = wide ? task.wide_row : task?.row;
      place.hidden = (!wide && view !== task?.view) || !strips.has(view, row);
      if (place.hidden) continue;
      place.dataset.on = wide ? "wide" : task.wide ? "narrow" : "all";
      place.classList.toggle("with-needle", Boolean(needles.now?.on_needle));
      turn(place.querySelector("svg"), strips.get(view), row);
      if (toned(strips.get(view), row)) find("gaps").hidden = false;
    }
  }

  // bring puts the whole strips in place of those that came with the page.
  async function bring() {
    const came = await strips.fetch();
    for (const place of came ? root.querySelectorAll("[data-strip]") : []) {
      const svg = new DOMParser().parseFromString(strips.get(place.dataset.strip)?.svg ?? "", "image/svg+xml").documentElement;
      if (svg.localName === "svg") place.replaceChildren(svg);
    }
    if (came) strip(needles.now ?? needles.last);
  }

  function turn(svg, of, row) {
    const onNeedle = Boolean(needles.now?.on_needle);
    svg.setAttribute("viewBox", windowOf(of, row, onNeedle).join(" "));
    for (const needle of svg.querySelectorAll("[data-needle]")) needle.toggleAttribute("hidden", !onNeedle || Number(needle.dataset.needle) !== row);
    const top = of.bottom - row * of.cell_height;
    const lit = needles.now?.is_round;
    svg.querySelector(".now").setAttribute("d", lit ? `M0 ${top}H${of.width}V${top + of.cell_height}H0Z` : "");
    svg.querySelector(".ahead").setAttribute("d", lit ? `M0 0H${of.width}V${top}H0Z` : "");
  }

  // progress shows how far the part of a task is.
  function progress(task) {
    for (const place of root.querySelectorAll("[data-progress]")) {
      const here = place.dataset.progress === task?.section;
      place.toggleAttribute("hidden", !here);
      if (!here) continue;
      const paths = [...place.querySelectorAll("path")];
      needles.stitches(task.section, paths.length).forEach((state, i) => paths[i].setAttribute("class", state));
    }
  }

  function heard(what, detail) {
    const place = document.getElementById("kept");
    if (what === "saved") bring(); // the server is there, if it was not before
    if (what === "saved") place.textContent = `kept ${new Date().toTimeString().slice(0, 5)}`;
    if (what === "saved" && note.value !== "" && note.value === needles.now?.note) keep.textContent = "Kept";
    if (what === "unsaved") place.textContent = waits(detail.why, outbox.waiting.length);
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
      if (awakeSays.textContent === goesDark) awakeSays.textContent = ""; // once is enough
    });
  }
  function keepNote() {
    if (needles.now?.is_round && note.value !== needles.now.note) outbox.add(needles.note(note.value));
  }
  find("note").addEventListener("submit", (event) => {
    event.preventDefault();
    keepNote();
  });
  note.addEventListener("input", () => (keep.textContent = "Keep it"));
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
  window.addEventListener("online", bring);
  document.addEventListener("visibilitychange", look);
  window.addEventListener("pageshow", (event) => event.persisted && look());
  show();
  bring();
  outbox.push();
  awake();
}

function list(place, texts) {
  place.replaceChildren(...texts.map((text) => item(text)));
}

// waits says why rounds are not sent yet, and how many wait.
export function waits(why, count) {
  if (why === noConnection) return `Offline: keep this page open; rounds are sent later. ${count} wait${count === 1 ? "s" : ""}.`;
  const said = why.replace(/\.$/, "").replace(/^./, (first) => first.toUpperCase());
  return `${said}: keep this page open; ${count} wait${count === 1 ? "s" : ""} here.`;
}

function element(name, ...children) {
  const made = document.createElement(name);
  made.append(...children);
  return made;
}

const item = (...children) => element("li", ...children);
const strong = (text) => element("b", text);
const small = (text) => element("small", text);

// said returns a run of words. The name of a yarn is underlined by it.
function said({ text, yarn, fill, strong: read, break: next }) {
  if (next) return element("br");
  if (!yarn) return read ? strong(text) : text;
  const word = element("span", text);
  word.className = "yarn-word";
  const svg = (name, attributes) => {
    const made = document.createElementNS("http://www.w3.org/2000/svg", name);
    for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
    return made;
  };
  const thread = svg("svg", { class: "thread", viewBox: "0 0 1 1", preserveAspectRatio: "none", "aria-hidden": "true" });
  thread.append(svg("path", { d: "M0 0h1v1h-1z", fill: fill || "none" }));
  word.append(thread);
  return word;
}

// awake keeps the screen on while the page is looked at, if the browser allows
// it. The browser forgets that when the page is left, so awake asks again.
async function awake() {
  const say = (text) => (document.getElementById("awake").textContent = text);
  if (!navigator.wakeLock) {
    say(goesDark);
    return;
  }
  let refused = false;
  const ask = async () => {
    if (document.hidden) return;
    try {
      await navigator.wakeLock.request("screen");
      say("The screen stays on.");
    } catch {
      if (!refused) say(goesDark);
      refused = true;
    }
  };
  document.addEventListener("visibilitychange", ask);
  await ask();
}

const root = globalThis.document?.getElementById("round");
if (root) start(root);

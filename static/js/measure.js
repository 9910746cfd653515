// The measure form. After every change it asks the server for the parts of the
// page that follow from it, and replaces those; the fields themselves are never
// touched. What is typed is saved after a short rest.
import * as events from "./events.js";
import { startNumbers } from "./numbers.js";
import { noConnection, Outbox, postForm } from "./outbox.js";
import { ensure, startRows } from "./rows.js";
import { makeRoom, openFolds, startSlips, toLadder } from "./slips.js";
import { Drafts } from "./storage.js";

const rest = 700; // ms without a key press before saving
const again = 4 * rest; // ms before what could not be saved is sent again

// settled() waits for the strokes that are on their way; undefined: none is.
export function startMeasure(document, settled) {
  const form = document.getElementById("measure-form");
  if (!form) return;
  const page = new Measure(document, form);
  startRows(form);
  startNumbers(document, form);
  startSlips(document);
  form.addEventListener("input", () => page.changed());
  form.addEventListener("change", () => page.save());
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    page.toPlan = true;
    page.save(true);
  });
  form.addEventListener("focusin", (event) => page.light(event.target.dataset.field));
  form.addEventListener("focusout", () => page.light(undefined));
  document.addEventListener("click", (event) => {
    const tape = event.target.closest?.(".tape[data-field]");
    if (tape) document.getElementById(`field-${tape.dataset.field}`)?.focus();
    const link = event.target.closest?.("a[href]");
    const elsewhere = link && !(link.pathname === location.pathname && link.hash) && !event.ctrlKey && !event.metaKey && !event.shiftKey;
    const drawing = elsewhere && settled();
    if (elsewhere && (page.unsaved || drawing)) {
      event.preventDefault();
      page.leave(link.href, drawing);
    }
  });
  document.querySelector(".conflict")?.addEventListener("click", ({ target }) => {
    if (target.dataset.take) page.take(target);
  });
  events.painted.hear(() => page.ask(true));
  events.view.hear(() => page.ask());
  events.sheet.hear((detail) => page.rewritten(detail));
  events.decided.hear(({ revision }) => page.decided(revision));
  events.restored.hear((_, event) => page.restored(!event.defaultPrevented));
  window.addEventListener("online", () => page.save());
  window.addEventListener("beforeunload", (event) => {
    if (page.unsaved) event.preventDefault();
  });
  page.recover();
}

// outboxOf returns the outbox of the form, which always sends the form as it is
// then. An answer without a reply did not come from Thenar.
function outboxOf(form, page) {
  return new Outbox({
    href: form.action, notNow: new Set(), first: again, longest: again,
    wire: (request) => (request.body = page.body()),
    send: async (href, body) => {
      const answer = await postForm(href, body);
      return answer.reply && answer;
    },
    on: (what, detail) => page.heard(what, detail),
  });
}

class Measure {
  constructor(document, form) {
    this.document = document;
    this.form = form;
    this.drafts = new Drafts(form.action);
    this.asked = 0; // the number of the newest request
    this.shown = 0; // the number of the newest answer on the page
    this.asking = false;
    this.again = false;
    this.painted = true; // only strokes have changed since the last request
    this.owed = false; // an answer to the form did not come: the next brings all parts
    this.unsaved = false;
    this.outbox = outboxOf(form, this);
    this.timer = 0;
    this.focus = undefined;
    this.toPlan = false; // Save was pressed: a phone shows the plan next
    // The page shows two versions: nothing is saved until the person asks for it.
    this.conflict = document.querySelector(".conflict");
    if (this.conflict) this.say("not saved yet", "unsaved");
  }

  body() {
    return new URLSearchParams(new FormData(this.form));
  }

  // changed runs on every key press: it asks at once, and saves after a rest.
  changed() {
    this.unsaved = true;
    const draft = this.body();
    if (this.conflict) draft.set("after", "0"); // makes another window ask, too, which version counts
    this.drafts.keep(draft);
    if (!this.conflict) this.say("saving…", "waiting");
    this.ask();
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.save(), rest);
  }

  // ask has one request under way; a change meanwhile is asked about next.
  // After a stroke the chart is drawn already: only the parts that follow from
  // it are asked for.
  async ask(painted = false) {
    if (this.asking) {
      this.again = true;
      this.painted &&= painted;
      return;
    }
    this.busy(true);
    this.painted = true;
    const number = ++this.asked;
    const to = new URL(this.form.dataset.preview, location.href);
    for (const [name, text] of new URLSearchParams(location.search)) to.searchParams.set(name, text);
    const parts = painted && !this.owed;
    if (parts) to.searchParams.set("after", "stroke");
    else this.owed = true;
    try {
      const reply = await fetch(to, { method: "POST", body: this.body() });
      if (reply.ok) {
        this.show(number, await reply.text(), parts);
        if (!parts) this.owed = false;
      }
    } catch {
      // Saving tells that there is no connection.
    }
    this.busy(false);
    this.arrive();
    if (this.again) {
      this.again = false;
      this.ask(this.painted);
    }
  }

  // busy shows that an answer is on its way.
  busy(asking) {
    this.asking = asking;
    this.document.getElementById("main").setAttribute("aria-busy", String(asking));
  }

  // show replaces parts of the page by those of an answer, unless a newer one
  // is shown already. A part that was asked for and did not come is out of
  // date.
  show(number, html, parts) {
    if (number < this.shown) return;
    this.shown = number;
    const answer = new DOMParser().parseFromString(html, "text/html");
    const state = JSON.parse(answer.getElementById("answer-state").textContent);
    const fragments = [...answer.querySelectorAll("[data-fragment]")];
    const focus = this.holdFocus();
    const shown = fragments.filter((f) => !this.keeps(f));
    const names = shown.map((f) => f.dataset.fragment);
    for (const place of this.document.querySelectorAll("[data-fragment]:not(.bar *)")) {
      if (!parts) place.classList.toggle("stale", !names.includes(place.dataset.fragment));
    }
    for (const fragment of shown) { // the chart comes after the margin that it has a part in
      const name = fragment.dataset.fragment;
      const place = this.document.querySelector(name === "key" ? "main .chart .key" : `[data-fragment="${name}"]`);
      const unfold = place && openFolds(place);
      place?.replaceChildren(...fragment.childNodes);
      unfold?.();
      if (place && name === "chart") {
        events.swapped.tell({ root: place });
      }
    }
    events.replaced.tell();
    this.fields(state);
    makeRoom(this.document);
    this.light(this.focus);
    focus();
  }

  // arrive shows the plan once Save was pressed, all is saved and answered, and
  // the form stands in front of it.
  arrive() {
    if (!this.toPlan || this.unsaved || this.asking) return;
    this.toPlan = false;
    const ladder = this.document.getElementById("ladder");
    if (ladder && getComputedStyle(ladder).display === "none") toLadder(this.document);
  }

  // keeps reports whether the page keeps a part rather than take the one that
  // came: numbers that don't go together leave the ladder and the drawing of
  // those that did where they are.
  keeps(fragment) {
    return fragment.querySelector("[data-bare]") !== null && this.document.querySelector(".ladder") !== null;
  }

  // holdFocus remembers the number that is pressed or typed over, and returns a
  // function that goes back to it once the part around it was replaced.
  holdFocus() {
    const active = this.document.activeElement;
    const keep = active?.dataset?.keep ?? active?.closest?.(".number")?.querySelector("[data-keep]")?.dataset.keep;
    if (!keep || !active.closest("[data-fragment]")) return () => {};
    const typed = active.matches("input") ? [active.value, active.selectionStart, active.selectionEnd] : undefined;
    return () => {
      const place = this.document.querySelector(`[data-keep="${keep}"]`);
      if (!place) return;
      place.focus({ preventScroll: true });
      (place.closest(".number") ?? place).scrollIntoView({ block: "nearest" }); // the part may have become shorter meanwhile
      if (!typed || !place.matches("input")) return;
      place.value = typed[0];
      place.setSelectionRange(typed[1], typed[2]);
    };
  }

  // fields shows messages, filled values and the unit at the fields.
  fields(state) {
    for (const place of this.document.querySelectorAll("[data-fault-for]")) {
      const path = place.dataset.faultFor;
      const message = state.faults[path] ?? "";
      const said = message.replace(/^is missing; /, "");
      if (place.textContent !== said) place.textContent = said;
      if (!this.form.contains(place)) continue; // beside a number of the plan
      place.closest(".field").classList.toggle("has-fault", message !== "");
      place.closest(".field").classList.toggle("is-missing", message.startsWith("is missing"));
      this.document.getElementById(`field-${path}`)?.setAttribute("aria-invalid", String(message !== ""));
    }
    for (const place of this.form.querySelectorAll("[data-filled-for]")) {
      const filled = state.filled[place.dataset.filledFor];
      const told = filled ? `filled in: ${filled.value}, ${filled.told}` : "";
      // What is typed into keeps its line, so that nothing moves under the pointer.
      const held = told === "" && place.textContent !== "" && place.closest(".field")?.contains(this.document.activeElement);
      if (!held) place.textContent = told;
      const path = place.dataset.filledFor;
      this.document.getElementById(`field-${path}`)?.setAttribute("placeholder", filled?.value ?? state.planned[path] ?? "");
    }
    this.call(state.called);
    for (const need of this.form.querySelectorAll(".need")) need.hidden = need.closest(".field").querySelector("input").value.trim() !== "";
    for (const place of this.form.querySelectorAll("[data-unit]")) place.textContent = state.unit;
  }

  // call calls fields as the mitt does that is made so. It hides those that are of no use to it
  // and hold nothing, and choices that the hand is not offered.
  call(called) {
    for (const place of this.form.querySelectorAll("[data-called]")) {
      const { label, useless, without = [] } = called[place.dataset.called];
      if (place.textContent !== label) place.textContent = label;
      const field = place.closest(".field");
      const holds = field.querySelector("input, select").value.trim() !== "" || field.classList.contains("has-fault") || field.contains(this.document.activeElement);
      field.hidden = useless && !holds;
      for (const option of field.querySelectorAll("option")) option.hidden = option.disabled = without.includes(option.value) && !option.selected;
    }
    for (const place of this.form.querySelectorAll("[data-called-help]")) place.textContent = called[place.dataset.calledHelp].help;
  }

  // rewritten takes over what a stroke of the chart changed in the sheet. That
  // is saved already.
  rewritten({ edits, revision }) {
    for (const { column, value } of edits) this.fill(column, value);
    this.form.elements.after.value = String(Math.max(Number(this.form.elements.after.value), revision));
    this.ask();
  }

  fill(name, text) {
    place(this.form, name).value = text;
  }

  // take copies a value of the other version into its field.
  take(button) {
    this.fill(button.dataset.take, button.dataset.value);
    button.closest("tr").remove();
    this.changed();
    (this.conflict?.querySelector("[data-take]") ?? document.getElementById(`field-${button.dataset.take}`))?.focus();
  }

  // decided runs when another window saved the form. If nothing was typed here,
  // that version is taken over; otherwise saving will tell that there are two.
  async decided(revision) {
    if (revision <= Number(this.form.elements.after.value) || this.unsaved || this.outbox.sending || this.conflict || this.taking) return;
    this.taking = true;
    try {
      const page = new DOMParser().parseFromString(await (await fetch(this.form.dataset.page)).text(), "text/html");
      const form = page.getElementById("measure-form");
      if (form && !this.unsaved) {
        for (const [name, text] of new FormData(form)) this.fill(name, text);
        this.ask();
        events.stored.tell();
      }
    } catch {
      // Without a connection, the next news brings it.
    }
    this.taking = false;
  }

  // restored runs when a backup was put back. If something was typed here,
  // saving will tell that it is another version; otherwise the page is loaded
  // anew, if it may be. If it may not, its chart is brought up to date.
  restored(may) {
    if (may && !this.unsaved && !this.conflict) {
      location.reload();
      return;
    }
    if (this.unsaved) this.save();
    this.ask();
  }

  // light marks the tape of the field in focus.
  light(field) {
    this.focus = field;
    for (const tape of this.document.querySelectorAll(".tape[data-field]")) {
      tape.classList.toggle("lit", tape.dataset.field === field);
    }
  }

  // save sends the form. If that fails, this browser keeps it until it works.
  async save(asked = false) {
    clearTimeout(this.timer);
    if (!asked && (!this.unsaved || this.conflict)) return;
    if (this.outbox.sending) this.timer = setTimeout(() => this.save(asked), rest);
    else await (this.outbox.unsent ? this.outbox.push() : this.outbox.add({}));
  }

  // leave saves before one of its links leaves the page, and lets what is drawn
  // arrive.
  async leave(href, drawing) {
    await drawing;
    await this.outbox.answered;
    await this.save();
    location.assign(href); // the browser asks about what could not be saved
  }

  // heard is told what becomes of the form in the outbox.
  heard(what, detail) {
    if (what === "delivered") this.saved(detail.reply, detail.request.body);
    if (what === "refused") this.refused(detail);
    if (what !== "unsaved") return;
    const { why, again: byItself } = detail;
    const more = byItself ? " Kept here, and sent again by itself." : "";
    this.say(`not saved: ${why === noConnection ? `${why}; kept here` : why + more}`, "unsaved");
  }

  saved(said, body) {
    this.form.elements.after.value = said.revision;
    if (body.toString() !== this.bodyBut(body)) return; // something was typed since: that is saved next
    this.unsaved = false;
    this.conflict?.remove();
    this.conflict = undefined;
    this.drafts.drop();
    this.say(`saved ${said.saved}`, "saved");
    events.stored.tell();
    this.arrive();
  }

  // bodyBut returns the form as it is now, but with the revision that body was
  // sent with.
  bodyBut(body) {
    const now = this.body();
    now.set("after", body.get("after"));
    return now.toString();
  }

  refused({ status, lines }) {
    this.say(`not saved: ${lines.join(" ")}`, "unsaved");
    if (status !== 409) return;
    const over = this.document.createElement("button");
    over.type = "button";
    over.textContent = "Decide which stands";
    over.addEventListener("click", () => {
      this.unsaved = false;
      this.form.submit(); // the page that answers shows both versions
    });
    this.document.getElementById("saved").append(" ", over);
  }

  say(text, state) {
    const place = this.document.getElementById("saved");
    if (place.textContent !== text) place.textContent = text;
    place.dataset.state = state;
  }

  // recover puts back what an earlier visit could not save, with the revision
  // it was made from, so that the server can tell whether another came since.
  recover() {
    const draft = this.drafts.kept();
    if (!draft || this.conflict) return;
    for (const [name, text] of draft) this.fill(name, text);
    this.changed();
  }
}

// place returns the field of a name. A row that the page doesn't show gets a
// field that isn't seen, so that it is sent with the rest.
function place(form, name) {
  ensure(form, name);
  const field = form.elements.namedItem(name);
  if (field) return field;
  const unseen = form.ownerDocument.createElement("input");
  Object.assign(unseen, { type: "hidden", name, id: `field-${name}` });
  form.append(unseen);
  return unseen;
}

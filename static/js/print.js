// Sheets to print. A choice that changes lays them out anew by itself: the parts
// of the page that follow from it are replaced, the choices are not touched.
import * as events from "./events.js";

const rest = 500; // ms without a key press before a number is used
const pause = 4 * rest; // ms without a stroke of another window before the sheets show them

class Proofs {
  constructor(document, form) {
    this.document = document;
    this.form = form;
    this.place = document.querySelector('[data-part="sheets"]');
    this.timer = 0;
  }

  start() {
    this.form.querySelector(".lay-out").hidden = true;
    this.form.addEventListener("change", () => this.layOut());
    this.form.addEventListener("input", (event) => {
      if (event.target.matches('[type="radio"], [type="checkbox"], select')) return; // these tell a change, too
      this.later(rest);
    });
    this.form.addEventListener("submit", (event) => {
      event.preventDefault();
      this.layOut();
    });
    events.stored.hear(() => this.layOut());
    events.painted.hear(() => this.later(pause));
    this.place.addEventListener("scroll", () => this.mark(), { passive: true });
    this.fetchRest();
    this.mark();
  }

  later(time) {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.layOut(), time);
  }

  // layOut asks for the page as it is with the present choices. A newer question
  // ends an older one.
  async layOut() {
    clearTimeout(this.timer);
    this.asking?.abort();
    const asking = (this.asking = new AbortController());
    const to = new URL(this.form.action);
    to.search = new URLSearchParams(new FormData(this.form));
    this.place.setAttribute("aria-busy", "true");
    try {
      const answer = await fetch(to, { signal: asking.signal });
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      if (!page.querySelector('[data-part="sheets"]')) throw new Error(answer.statusText);
      this.show(page);
      history.replaceState(history.state, "", to);
      await this.keep(asking.signal);
    } catch {
      if (asking.signal.aborted) return;
      this.say("No connection: these pages are as they were.");
    }
    this.place.removeAttribute("aria-busy");
    await this.fetchRest(asking.signal);
  }

  // show takes over the parts of another page, its paper, and the messages at the
  // choices.
  show(page) {
    const seen = this.first();
    this.document.body.className = page.body.className;
    for (const part of this.document.querySelectorAll("[data-part]")) {
      part.replaceChildren(...page.querySelector(`[data-part="${part.dataset.part}"]`).childNodes);
    }
    this.place.dataset.rest = page.querySelector('[data-part="sheets"]').dataset.rest;
    for (const place of this.form.querySelectorAll("[data-fault-of]")) {
      const message = page.querySelector(`[data-fault-of="${place.dataset.faultOf}"]`)?.textContent ?? "";
      place.textContent = message;
      place.closest(".one-of, .print-field")?.classList.toggle("has-fault", message !== "");
    }
    this.sheets()[seen]?.scrollIntoView({ block: "nearest", inline: "nearest" });
    this.mark();
  }

  // keep keeps what was chosen, for the next time and for other devices. Where that
  // fails, the button stays that does it.
  async keep(signal) {
    const form = this.document.querySelector(".keep-layout");
    if (!form?.querySelector("button") || this.form.querySelector(".has-fault")) return;
    const answer = await fetch(form.action, { method: "POST", body: new URLSearchParams(new FormData(form)), headers: { Accept: "application/json" }, redirect: "manual", signal });
    if (answer.ok) events.sheet.tell({ edits: [], revision: (await answer.json()).revision });
    else if (answer.type !== "opaqueredirect") return; // to the page itself, as from a class
    const told = this.document.createElement("p");
    told.className = "soft";
    told.textContent = "Your choices are kept.";
    form.querySelector("button").replaceWith(told);
  }

  // fetchRest fetches the sheets that did not come with the page.
  async fetchRest(signal) {
    const { rest } = this.place.dataset;
    if (!rest) return;
    try {
      const answer = await fetch(rest, { signal });
      if (!answer.ok) return;
      const page = new DOMParser().parseFromString(await answer.text(), "text/html");
      for (const sheet of page.querySelectorAll(".sheet")) this.document.getElementById(sheet.id)?.replaceWith(sheet);
    } catch {
      // The empty sheet has a link that shows all of them.
    }
  }

  say(text) {
    this.document.querySelector(".page-count").textContent = text;
  }

  sheets() {
    return [...this.place.querySelectorAll(".sheet")];
  }

  // first returns which sheet is the first that is seen.
  first() {
    const { left, top } = this.place.getBoundingClientRect();
    return this.sheets().findIndex((sheet) => {
      const box = sheet.getBoundingClientRect();
      return box.bottom > Math.max(top, 0) + box.height / 3 && box.right > left + box.width / 3;
    });
  }

  // mark shows in the numbers which sheets are seen.
  mark() {
    const at = this.place.getBoundingClientRect();
    const seen = new Set(this.sheets().filter((sheet) => {
      const box = sheet.getBoundingClientRect();
      const x = (box.left + box.right) / 2;
      const y = (box.top + box.bottom) / 2;
      return x > at.left && x < at.right && y > at.top && y < at.bottom;
    }).map((sheet) => `#${sheet.id}`));
    for (const link of this.document.querySelectorAll(".page-numbers a")) {
      if (seen.has(link.hash)) link.setAttribute("aria-current", "true");
      else link.removeAttribute("aria-current");
    }
  }
}

document.addEventListener("click", (event) => {
  if (event.target.closest?.("[data-print]")) window.print();
});

const form = document.querySelector("form[data-lays-out]");
if (form) new Proofs(document, form).start();

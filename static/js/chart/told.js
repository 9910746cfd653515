// The line under the chart that says what has just happened, with what can be
// done about it. What changes the plan is said loudly.
import { careful } from "../storage.js";
import { button, byTouch } from "./page.js";

const known = "thenar:chart:two-fingers"; // in the store of the browser, once two fingers have moved a chart

const twoRows = 70; // letters that a phone has room for in two rows, beside a button

export class Told {
  constructor(root) {
    this.root = root.querySelector("[data-told]");
    this.chart = root.querySelector("svg[data-chart]");
    this.words = this.root.querySelector("#chart-announce");
    this.place = this.root.querySelector("[data-acts]");
  }

  // say says something, with buttons { words, run } beside it, which last if what
  // is painted does not change what they do.
  say(text, acts = [], { loud = false, lasting = false } = {}) {
    this.lasting = lasting;
    if (this.place.contains(document.activeElement)) this.chart.focus({ preventScroll: true }); // its button goes
    this.words.textContent = text;
    this.place.replaceChildren(...acts.map(({ words, run }) => button(words, run)));
    this.root.classList.toggle("loud", loud);
    this.root.classList.toggle("long", text.length > twoRows);
    this.root.classList.toggle("quiet", text === "");
  }

  // offers reports whether something can be done about what is said.
  get offers() {
    return this.place.childElementCount > 0;
  }

  // count says what the page shows elsewhere, to those who hear it.
  count(text) {
    this.say(text);
    this.root.classList.add("quiet");
  }

  // hint says once how fingers move the chart, until they have done so.
  hint() {
    if (byTouch() && this.words.textContent === "" && !careful(() => localStorage.getItem(known))) this.say("One finger marks; two move the chart.");
  }

  // moved is called when two fingers have moved the chart.
  moved() {
    if (careful(() => localStorage.getItem(known))) return;
    careful(() => localStorage.setItem(known, "yes"));
    this.say("");
  }

  // forget drops what is said once something else was done: its buttons would
  // act on that.
  forget() {
    if (this.offers && !this.lasting) this.say("");
  }
}

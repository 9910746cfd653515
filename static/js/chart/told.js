// The line under the chart that says what has just happened, with what can be
// done about it. What changes the plan is said loudly.
import { button } from "./page.js";

export class Told {
  constructor(root) {
    this.root = root.querySelector("[data-told]");
    this.words = this.root.querySelector("#chart-announce");
    this.place = this.root.querySelector("[data-acts]");
  }

  // say says something, with buttons { words, run } beside it.
  say(text, acts = [], loud = false) {
    this.words.textContent = text;
    this.place.replaceChildren(...acts.map(({ words, run }) => button(words, run)));
    this.root.classList.toggle("loud", loud);
    this.root.classList.remove("quiet");
  }

  // count says what the page shows elsewhere, to those who hear it.
  count(text) {
    this.say(text);
    this.root.classList.add("quiet");
  }

  // forget drops what is said once something else was done: its buttons would
  // act on that.
  forget() {
    if (this.place.childElementCount > 0) this.say("");
  }
}

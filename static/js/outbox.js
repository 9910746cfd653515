// The one queue of what is sent until it arrives: strokes of a chart, counts at
// the needles, forms. One request is under way at a time, in order, each under
// a key of its own, so that one whose answer was lost is carried out once.
import { nowhere } from "./storage.js";

export const noConnection = "no connection";

// Statuses that are no fault of the request: it may work later.
const notNow = new Set([401, 404, 408, 421, 425, 429]);

// What is answered to one who is let out, or too slow: nothing is wrong with
// what was sent, but sending it again by itself would come to the same.
const held = { 403: "this device is not let in", 413: "this is too slow or too large to send" };

export class Outbox {
  // options:
  //   href, send(href, body) → { status, reply }
  //   keep               a store that outlives the page (storage.js)
  //   notNow             statuses after which it is tried again
  //   first, longest     ms of the first and of the longest pause before that
  //   wire, arrived, key, later    in the place of those below
  //   on(what, detail)   hears what becomes of it:
  //     saving                              a request is on its way
  //     delivered { request, reply }        the server has it
  //     refused { request, status, lines }  it never will, and says why
  //     unsaved { why, again }              not now; again: tried by itself
  //     stale                               the page has to be made anew first
  //     saved                               nothing waits any more
  constructor(options) {
    Object.assign(this, { keep: nowhere, notNow, first: 1000, longest: 30_000 }, options);
    this.waiting = this.keep.get(); // the first is under way or next
    this.sending = false;
    this.answered = undefined; // settles with the answer to the request under way
    this.stale = false; // nothing is sent until the page was made anew
    this.turn = 0; // an answer that was asked for in an earlier one is none
    this.pause = this.first;
    this.timer = undefined; // of the next try
  }

  // wire is a request as the server takes it.
  wire(request) {
    return request;
  }

  // arrived reports whether a good answer is the server's own: a sign-in page
  // of the network, say, is no delivery.
  arrived(reply) {
    return Number.isInteger(reply?.revision);
  }

  key() {
    return Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");
  }

  later(f, ms) {
    setTimeout(f, ms);
  }

  get unsent() {
    return this.waiting.length > 0;
  }

  // kept reports whether all that waits outlives the page.
  get kept() {
    return this.waiting.every((r) => this.keep.has(r.key));
  }

  // add puts a request behind what waits.
  add(request) {
    const keyed = { ...request, key: this.key() };
    this.waiting.push(keyed);
    this.keep.put(keyed);
    return this.push();
  }

  // replace puts a request in the place of one that did not arrive yet; while
  // that is to be tried again, it goes out with the next try.
  replace(request) {
    if (!this.unsent) return this.add(request);
    Object.assign(this.waiting[0], request);
    return this.timer ? undefined : this.push();
  }

  // push sends what stands first, then the next. What it returns settles with
  // the answer to what is under way.
  push() {
    if (!this.sending && !this.stale && this.unsent) this.answered = this.attempt();
    return this.answered;
  }

  async attempt() {
    const { turn } = this;
    const [request] = this.waiting;
    this.sending = true;
    this.on("saving");
    let answer;
    try {
      answer = await this.send(this.href, this.wire(request));
    } catch {
      answer = undefined;
    }
    this.sending = false;
    if (turn === this.turn) this.take(request, answer);
    else this.push(); // what was asked is gone: it is asked anew
  }

  // take does what an answer means; undefined is none.
  take(request, answer) {
    const { status, reply } = answer ?? {};
    const said = reply?.error;
    if (held[status]) {
      this.on("unsaved", { why: said?.join(" ") ?? held[status], again: false });
    } else if (!answer || status >= 500 || this.notNow.has(status) || (status < 400 && !this.arrived(reply))) {
      this.retry(said?.join(" ") ?? noConnection);
    } else if (reply?.stale) {
      this.outdated();
    } else {
      this.pause = this.first;
      this.timer = undefined;
      this.waiting = this.waiting.filter((r) => r !== request);
      this.keep.drop(request.key);
      if (status >= 400) this.on("refused", { request, status, lines: said ?? ["this was refused"] });
      else this.settle(request, reply);
      if (this.unsent) this.push();
      else this.on("saved");
    }
  }

  settle(request, reply) {
    this.on("delivered", { request, reply });
  }

  // retry tries again later, each time after a longer pause. What is added
  // meanwhile is tried at once, and changes nothing of that.
  retry(why) {
    this.on("unsaved", { why, again: true });
    if (this.timer) return;
    const timer = {};
    this.timer = timer;
    this.later(() => {
      if (this.timer !== timer) return;
      this.timer = undefined;
      this.push();
    }, this.lengthen());
  }

  // outdated asks for the page anew, again and again until it is there; what
  // waits is kept for it.
  outdated() {
    this.stale = true;
    this.on("stale");
    this.later(() => this.stale && this.outdated(), this.lengthen());
  }

  lengthen() {
    const { pause } = this;
    this.pause = Math.min(2 * pause, this.longest);
    return pause;
  }
}

const post = async (href, body, headers) => {
  const response = await fetch(href, { method: "POST", body, headers });
  return { status: response.status, reply: await response.json().catch(() => undefined) };
};

export const postJSON = (href, body) => post(href, JSON.stringify(body), { "Content-Type": "application/json" });
export const postForm = (href, body) => post(href, body, { Accept: "application/json" });

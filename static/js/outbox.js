// The queue of requests that are sent until they arrive: strokes of a chart,
// counts at the needles, forms. One is under way at a time, in order. Each has
// a key of its own, so that one whose answer was lost and that is sent again is
// carried out only once.
import { nowhere } from "./storage.js";

export const noConnection = "no connection";

// Statuses after which the same request may work later.
const notNow = new Set([401, 404, 408, 421, 425, 429]);

// The messages after which a request is kept, but not sent again by itself:
// nothing is wrong with it, but the answer would be the same.
const held = { 403: "this device is not let in", 413: "this is too slow or too large to send" };

export class Outbox {
  // options:
  //   href, send(href, body) → { status, reply }
  //   keep               a store that outlives the page (storage.js)
  //   notNow             statuses after which it is sent again
  //   first, longest     ms of the first and of the longest pause before
  //   wire, arrived, key, later    replace the methods below
  //   on(what, detail)   is told what becomes of a request:
  //     saving                              it is on its way
  //     delivered { request, reply }        the server has it
  //     refused { request, status, lines }  the server will never take it, and says why
  //     unsaved { why, again }              not now; again: it is sent again by itself
  //     stale                               the page has to be loaded anew first
  //     saved                               nothing waits any more
  constructor(options) {
    Object.assign(this, { keep: nowhere, notNow, first: 1000, longest: 30_000 }, options);
    this.waiting = this.keep.get(); // the first is under way or next
    this.sending = false;
    this.answered = undefined; // settles with the answer to the request under way
    this.stale = false; // nothing is sent until the page is loaded anew
    this.turn = 0; // counts reloads: an answer to a request from before one does not count
    this.pause = this.first;
    this.timer = undefined; // of the next attempt
  }

  // wire returns a request in the form that the server takes.
  wire(request) {
    return request;
  }

  // arrived reports whether an answer with a good status is Thenar's own. That
  // of a network's sign-in page, for example, is not.
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

  // kept reports whether everything that waits outlives the page.
  get kept() {
    return this.waiting.every((r) => this.keep.has(r.key));
  }

  // add puts a request at the end of the queue.
  add(request) {
    const keyed = { ...request, key: this.key() };
    this.waiting.push(keyed);
    this.keep.put(keyed);
    return this.push();
  }

  // replace puts a request in the place of one that has not arrived yet. If
  // that waits for its next attempt, so does the new one.
  replace(request) {
    if (!this.unsent) return this.add(request);
    Object.assign(this.waiting[0], request);
    return this.timer ? undefined : this.push();
  }

  // push sends the first request, and then the next. Its promise settles with
  // the answer to the one under way.
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
    else this.push(); // the answer belongs to the page before: ask again
  }

  // take acts on an answer; undefined means that none came.
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

  // retry sends the first request again after a pause, each longer than the one
  // before. A request that is added meanwhile is sent at once, and leaves the
  // pauses as they are.
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

  // outdated asks for the page anew until it comes. What waits is kept for it.
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

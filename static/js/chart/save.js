// The line of strokes on their way to the server: one at a time, in order,
// kept in this browser until it has them. Each has a key of its own, so that
// one whose answer was lost is drawn once, and two windows that share what is
// kept do no harm.

import { carry } from "./carry.js";

const longest = 30_000; // ms between two tries
const remembered = 256; // strokes that a page under way may have missed
const notNow = new Set([401, 404, 408, 421, 425, 429]); // no fault of the stroke: it may work later

// What is answered to one who is let out, or too slow: nothing is wrong with
// what was sent, but sending it again by itself would come to the same.
const held = { 403: "this device is not let in", 413: "this is too slow or too large to send" };

// holds tells why an answer holds a request back: kept, and sent again only
// when something else happens.
export const holds = (answer) => answer && held[answer.status] && (answer.reply?.error?.join(" ") ?? held[answer.status]);

export class Line {
  // options: href, revision, restored (the file that has the revision), mitt,
  // send(href, body) → {status, reply}, keep, later, on(what, detail), key(),
  // wire(request, revision, restored). keep is a small store with get, put and
  // drop. An answer that is no chart's (a sign-in page of the network, say) is
  // no delivery.
  constructor(options) {
    this.key = newKey;
    this.wire = wire;
    Object.assign(this, options);
    this.sending = false;
    this.takeOver(this.keep.get());
  }

  // takeOver begins with what an earlier visit could not deliver, or a page
  // from before a backup was put back.
  takeOver(requests) {
    const { waiting, strange, left } = carry(requests, this);
    for (const r of left) this.keep.drop(r.key);
    this.waiting = waiting;
    this.strange = strange; // of another mitt: they stay where they are kept
    this.late = waiting.filter((r) => r.edits).length; // strokes that an earlier page drew
    this.older = this.late > 0 && waiting.some((r) => r.restored !== undefined && r.restored !== this.restored);
    this.delivered = []; // the latest strokes that the server has, by revision
    this.stale = false; // nothing is sent until the chart was read anew
    this.pause = 1000;
  }

  // renew goes on from a page that was made anew: the chart that the strokes
  // were drawn on is no longer the server's.
  renew({ revision, restored, mitt }) {
    Object.assign(this, { revision, restored, mitt });
    this.takeOver([...this.waiting, ...this.strange]);
    this.push();
  }

  // apart tells whether a page was made from another file than this line.
  apart({ restored, mitt }) {
    return this.stale || restored !== this.restored || mitt !== this.mitt;
  }

  get unsent() {
    return this.waiting.length > 0;
  }

  // kept tells whether all that waits outlives the page.
  get kept() {
    return this.waiting.every((r) => this.keep.has(r.key));
  }

  // forget drops what was drawn on another mitt.
  forget() {
    for (const r of this.strange) this.keep.drop(r.key);
    this.strange = [];
  }

  // add puts a request in line: { edits, inverse }, { undo }, { redo } or
  // { change }.
  add(request) {
    const keyed = { ...request, key: this.key() };
    if (this.mitt !== undefined) Object.assign(keyed, { mitt: this.mitt, restored: this.restored });
    this.waiting.push(keyed);
    this.keep.put(keyed);
    this.push();
  }

  // push sends what stands first, then the next.
  async push() {
    if (this.sending || this.stale || this.waiting.length === 0) return;
    this.sending = true;
    this.on("saving");
    const [request] = this.waiting;
    const { restored } = this;
    let answer;
    try {
      answer = await this.send(this.href, this.wire(request, this.revision, restored));
    } catch {
      answer = undefined;
    }
    this.sending = false;
    if (restored !== this.restored) { // an answer of a file that is gone: it is asked again
      this.push();
      return;
    }
    if (holds(answer)) {
      this.on("unsaved", holds(answer));
      return;
    }
    if (!answer || answer.status >= 500 || notNow.has(answer.status) || (answer.status < 400 && !Number.isInteger(answer.reply?.revision))) {
      this.fail(answer?.reply?.error?.join(" "));
      return;
    }
    if (answer.reply?.stale) {
      this.outdated();
      return;
    }
    this.pause = 1000;
    this.waiting = this.waiting.filter((r) => r !== request);
    this.keep.drop(request.key);
    if (answer.status >= 400) this.on("refused", { request, message: answer.reply?.error?.join(" ") ?? "this was refused" });
    else this.done(request, answer.reply);
    if (this.waiting.length > 0) this.push();
    else this.on("saved");
  }

  // done notes a delivery. Others may have been heard of already that came
  // after it, and one that is sent again has been overtaken long ago: what
  // came later is laid over it again.
  done(request, reply) {
    const late = reply.later?.length > 0 ? reply.later : this.since(reply.revision);
    const edits = [...(reply.between ?? []), ...(request.edits ?? reply.edits ?? [])];
    if (reply.revision > this.revision) {
      this.revision = reply.revision;
      this.remember({ ...reply, edits });
    }
    this.on("applied", { request, reply, late });
  }

  // hear takes what the server tells of others' strokes, and of our own. What
  // is known already is passed over.
  hear({ revision, strokes, decided, ...standing }) {
    const fresh = strokes.filter((s) => s.revision > this.revision);
    for (const s of fresh) this.remember({ ...standing, ...s });
    if (revision > this.revision) {
      this.revision = revision;
      this.on("heard", { edits: fresh.flatMap((s) => s.edits), ...standing });
    }
    this.on("decided", decided);
  }

  remember(stroke) {
    this.delivered = [...this.delivered, stroke].slice(-remembered);
  }

  // since is what was delivered after a revision: a page that the server made
  // before it doesn't have these edits.
  since(revision) {
    return this.delivered.filter((d) => d.revision > revision).flatMap((d) => d.edits);
  }

  // outdated asks for the chart anew, again and again until it is there; the
  // strokes wait for it.
  outdated() {
    this.stale = true;
    this.on("stale");
    this.later(() => this.stale && this.outdated(), this.pause);
    this.pause = Math.min(2 * this.pause, longest);
  }

  // fail tries again later, each time after a longer pause. The server may have
  // said why; else it can't be reached.
  fail(why = "no connection") {
    this.on("unsaved", why);
    this.later(() => this.push(), this.pause);
    this.pause = Math.min(2 * this.pause, longest);
  }
}

// wire is a request as the server takes it.
export function wire({ key, ...request }, after, restored) {
  const known = restored === undefined ? { after, key } : { after, restored, key };
  for (const what of ["undo", "redo", "change"]) if (request[what]) return { ...known, [what]: request[what] };
  return { ...known, edits: request.edits };
}

function newKey() {
  return Array.from(crypto.getRandomValues(new Uint8Array(12)), (b) => b.toString(16).padStart(2, "0")).join("");
}

// kept is a store in localStorage with one entry for each stroke, so that
// windows that share it never write over each other; without one nothing
// outlives the page.
export function kept(prefix) {
  const careful = (f, otherwise) => {
    try {
      return f();
    } catch {
      return otherwise;
    }
  };
  let n = 0;
  return {
    get: () => careful(() => {
      const names = Array.from({ length: localStorage.length }, (_, i) => localStorage.key(i)).filter((name) => name.startsWith(`${prefix}:`));
      const all = names.map((name) => JSON.parse(localStorage.getItem(name)));
      return all.sort((a, b) => a.at - b.at || a.n - b.n).map(({ at, n: _, ...request }) => request);
    }, []),
    put: (request) => careful(() => localStorage.setItem(`${prefix}:${request.key}`, JSON.stringify({ ...request, at: Date.now(), n: n++ }))),
    drop: (key) => careful(() => localStorage.removeItem(`${prefix}:${key}`)),
    has: (key) => careful(() => localStorage.getItem(`${prefix}:${key}`) !== null, false),
  };
}

// post sends a request and reads the reply.
export async function post(href, body) {
  const response = await fetch(href, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
  const reply = await response.json().catch(() => undefined);
  return { status: response.status, reply };
}

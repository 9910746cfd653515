// The line of strokes on their way to the server: one at a time, in order,
// kept in this browser until it has them.

const longest = 30_000; // ms between two tries
const remembered = 64; // replies that a page under way may have missed

export class Line {
  // options: href, revision, send(href, body) → {status, reply}, keep, later,
  // on(what, detail). keep is a small store with get, set and drop. An answer
  // that is no chart's (a sign-in page of the network, say) is no delivery.
  constructor(options) {
    Object.assign(this, options);
    this.waiting = this.keep.get() ?? []; // what an earlier visit could not deliver
    this.delivered = []; // what each of the latest replies changed, by revision
    this.sending = false;
    this.pause = 1000;
  }

  get unsent() {
    return this.waiting.length > 0;
  }

  // add puts a request in line: { edits, inverse }, { undo } or { redo }.
  add(request) {
    this.waiting.push(request);
    this.store();
    this.push();
  }

  store() {
    if (this.waiting.length === 0) this.keep.drop();
    else this.keep.set(this.waiting);
  }

  // push sends what stands first, then the next.
  async push() {
    if (this.sending || this.waiting.length === 0) return;
    this.sending = true;
    this.on("saving");
    const request = this.waiting[0];
    let answer;
    try {
      answer = await this.send(this.href, wire(request, this.revision));
    } catch {
      answer = undefined;
    }
    this.sending = false;
    if (!answer || answer.status >= 500 || (answer.status < 400 && !Number.isInteger(answer.reply?.revision))) {
      this.fail();
      return;
    }
    this.pause = 1000;
    this.waiting.shift();
    this.store();
    if (answer.status >= 400) this.on("refused", { request, message: answer.reply?.error?.join(" ") ?? "this was refused" });
    else this.done(request, answer.reply);
    if (this.waiting.length > 0) this.push();
    else this.on("saved");
  }

  done(request, reply) {
    this.revision = reply.revision;
    const edits = [...(reply.between ?? []), ...(request.edits ?? reply.edits ?? [])];
    this.delivered = [...this.delivered, { ...reply, edits }].slice(-remembered);
    this.on("applied", { request, reply });
  }

  // since is what was delivered after a revision: a page that the server made
  // before it doesn't have these edits.
  since(revision) {
    return this.delivered.filter((d) => d.revision > revision).flatMap((d) => d.edits);
  }

  // fail tries again later, each time after a longer pause.
  fail() {
    this.on("unsaved");
    this.later(() => this.push(), this.pause);
    this.pause = Math.min(2 * this.pause, longest);
  }
}

// wire is a request as the server takes it.
export function wire(request, after) {
  if (request.undo) return { after, undo: true };
  if (request.redo) return { after, redo: true };
  return { after, edits: request.edits };
}

// kept is a store in localStorage; without one nothing outlives the page.
export function kept(key) {
  const careful = (f) => {
    try {
      return f();
    } catch {
      return undefined;
    }
  };
  return {
    get: () => careful(() => JSON.parse(localStorage.getItem(key) ?? "null")),
    set: (value) => careful(() => localStorage.setItem(key, JSON.stringify(value))),
    drop: () => careful(() => localStorage.removeItem(key)),
  };
}

// post sends a request and reads the reply.
export async function post(href, body) {
  const response = await fetch(href, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
  const reply = await response.json().catch(() => undefined);
  return { status: response.status, reply };
}

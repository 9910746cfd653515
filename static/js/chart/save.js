// The line of strokes on their way to the server: one at a time, in order,
// kept in this browser until it has them.

const longest = 30_000; // ms between two tries

export class Line {
  // options: href, revision, send(href, body) → {status, reply}, keep, later,
  // on(what, detail). keep is a small store with get, set and drop.
  constructor(options) {
    Object.assign(this, options);
    this.waiting = [];
    this.sending = false;
    this.pause = 1000;
    this.lastTry = undefined;
  }

  // recover takes up what an earlier visit could not deliver.
  recover() {
    const kept = this.keep.get();
    if (!kept) return [];
    this.waiting = kept;
    this.push();
    return kept;
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
    if (!answer || answer.status >= 500) {
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
    this.on("applied", { request, reply });
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

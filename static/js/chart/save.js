// The line of strokes on their way to the server: one at a time, in order,
// kept in this browser until it has them. Each has a key of its own, so that
// one whose answer was lost is drawn once, and two windows that share what is
// kept do no harm.

const longest = 30_000; // ms between two tries
const remembered = 256; // strokes that a page under way may have missed

// What is answered to one who is let out, or too slow: nothing is wrong with
// what was sent, but sending it again by itself would come to the same.
const held = { 403: "this device is not let in", 413: "this is too slow or too large to send" };

// holds tells why an answer holds a request back: kept, and sent again only
// when something else happens.
export const holds = (answer) => answer && held[answer.status] && (answer.reply?.error?.join(" ") ?? held[answer.status]);

export class Line {
  // options: href, revision, send(href, body) → {status, reply}, keep, later,
  // on(what, detail), key(), wire(request, revision). keep is a small store with get, put and drop. An answer
  // that is no chart's (a sign-in page of the network, say) is no delivery.
  constructor(options) {
    this.key = newKey;
    this.wire = wire;
    Object.assign(this, options);
    this.waiting = this.keep.get(); // what an earlier visit could not deliver
    this.delivered = []; // the latest strokes that the server has, by revision
    this.sending = false;
    this.pause = 1000;
  }

  get unsent() {
    return this.waiting.length > 0;
  }

  // add puts a request in line: { edits, inverse }, { undo }, { redo } or
  // { change }.
  add(request) {
    const keyed = { ...request, key: this.key() };
    this.waiting.push(keyed);
    this.keep.put(keyed);
    this.push();
  }

  // push sends what stands first, then the next.
  async push() {
    if (this.sending || this.waiting.length === 0) return;
    this.sending = true;
    this.on("saving");
    const request = this.waiting[0];
    let answer;
    try {
      answer = await this.send(this.href, this.wire(request, this.revision));
    } catch {
      answer = undefined;
    }
    this.sending = false;
    if (holds(answer)) {
      this.on("unsaved", holds(answer));
      return;
    }
    if (!answer || answer.status >= 500 || answer.status === 429 || (answer.status < 400 && !Number.isInteger(answer.reply?.revision))) {
      this.fail(answer?.reply?.error?.join(" "));
      return;
    }
    this.pause = 1000;
    this.waiting.shift();
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

  // fail tries again later, each time after a longer pause. The server may have
  // said why; else it can't be reached.
  fail(why = "no connection") {
    this.on("unsaved", why);
    this.later(() => this.push(), this.pause);
    this.pause = Math.min(2 * this.pause, longest);
  }
}

// wire is a request as the server takes it.
export function wire({ key, ...request }, after) {
  for (const what of ["undo", "redo", "change"]) if (request[what]) return { after, key, [what]: request[what] };
  return { after, key, edits: request.edits };
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
  };
}

// post sends a request and reads the reply.
export async function post(href, body) {
  const response = await fetch(href, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
  const reply = await response.json().catch(() => undefined);
  return { status: response.status, reply };
}

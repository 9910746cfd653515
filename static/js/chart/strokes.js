// The outbox of a chart's strokes: each goes out after the revision that the
// page knows, and what others drew is told with the answer.
import { Outbox } from "../outbox.js";
import { carry } from "./carry.js";

const remembered = 256; // strokes that a page under way may have missed

// Strokes holds requests: { edits, inverse }, { undo }, { redo } or { change }.
// It tells, beside what every outbox tells:
//   applied { request, reply, late }        in the place of delivered
//   heard { edits, can_undo, can_redo }     others drew
//   decided revision                        the form was saved
export class Strokes extends Outbox {
  // options: those of an outbox, and revision, restored (the file that has the
  // revision) and mitt.
  constructor(options) {
    super(options);
    this.takeOver(this.waiting);
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
  }

  // renew goes on from a page that was made anew: the chart that the strokes
  // were drawn on is no longer the server's.
  renew({ revision, restored, mitt }) {
    Object.assign(this, { revision, restored, mitt, stale: false, pause: this.first });
    this.turn++;
    this.takeOver([...this.waiting, ...this.strange]);
    this.push();
  }

  // apart reports whether a page was made from another file than this outbox.
  apart({ restored, mitt }) {
    return this.stale || restored !== this.restored || mitt !== this.mitt;
  }

  // forget drops what was drawn on another mitt.
  forget() {
    for (const r of this.strange) this.keep.drop(r.key);
    this.strange = [];
  }

  add(request) {
    const { mitt, restored } = this;
    return super.add(mitt === undefined ? request : { ...request, mitt, restored });
  }

  wire({ key, ...request }) {
    const { revision: after, restored } = this;
    const known = restored === undefined ? { after, key } : { after, restored, key };
    for (const what of ["undo", "redo", "change"]) if (request[what]) return { ...known, [what]: request[what] };
    return { ...known, edits: request.edits };
  }

  // settle notes a delivery. Others may have been heard of already that came
  // after it, and one that is sent again has been overtaken long ago: what
  // came later is laid over it again.
  settle(request, reply) {
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
}

// The outbox of a chart's strokes. Each is sent with the revision that the page
// knows, and the answer tells what others drew since.
import { Outbox } from "../outbox.js";
import { carry } from "./carry.js";

const remembered = 256; // how many strokes a page that is being loaded may have missed

// Strokes holds requests: { edits, inverse }, { undo }, { redo } or { change }.
// Besides what every outbox tells, it tells:
//   applied { request, reply, late }        instead of delivered
//   heard { edits, can_undo, can_redo }     others drew
//   decided revision                        the form was saved
export class Strokes extends Outbox {
  // options: those of an outbox, and revision, restored (which file the revision
  // belongs to) and mitt.
  constructor(options) {
    super(options);
    this.takeOver(this.waiting);
  }

  // takeOver begins with what an earlier visit, or a page from before a backup
  // was put back, could not deliver.
  takeOver(requests) {
    const { waiting, strange, left } = carry(requests, this);
    for (const r of left) this.keep.drop(r.key);
    this.waiting = waiting;
    this.strange = strange; // drawn on another mitt: they stay in the store
    this.late = waiting.filter((r) => r.edits).length; // how many strokes an earlier page drew
    this.older = this.late > 0 && waiting.some((r) => r.restored !== undefined && r.restored !== this.restored);
    this.delivered = []; // the latest strokes that the server has, in the order of their revisions
  }

  // renew goes on from a page that was loaded anew, since the chart that the
  // strokes were drawn on is no longer that of the server.
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

  // settle notes a delivery. Others may have drawn over the stroke since, all
  // the more if it had to be sent again; what came later is laid over it once
  // more.
  settle(request, reply) {
    const late = reply.later?.length > 0 ? reply.later : this.since(reply.revision);
    const edits = [...(reply.between ?? []), ...(request.edits ?? reply.edits ?? [])];
    if (reply.revision > this.revision) {
      this.revision = reply.revision;
      this.remember({ ...reply, edits });
    }
    this.on("applied", { request, reply, late });
  }

  // hear takes what the server tells of strokes, those of others and our own,
  // and passes over what is known already.
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

  // since returns what was delivered after a revision. A page that the server
  // made before does not have these edits.
  since(revision) {
    return this.delivered.filter((d) => d.revision > revision).flatMap((d) => d.edits);
  }
}

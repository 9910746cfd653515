// Doing, undoing and redoing strokes. The history itself is on the server, so
// it outlives a reload; this is what the page needs to use it.
import { bound } from "./bound.js";

export class History {
  constructor(model, outbox, show) {
    this.model = model;
    this.outbox = outbox;
    this.show = show; // show(rows, edits) draws these again
    this.laid = undefined; // called with the edits that the person has laid
    this.begun = undefined; // called before the person does something else
    this.open = undefined; // the stroke under the pointer, not yet in the outbox
    this.standing(model.data);
  }

  // takeUp draws what the page lacks: what was delivered while it was being
  // loaded, and what still waits. It returns the rows that changed.
  takeUp() {
    const { revision } = this.model.data;
    const late = this.outbox.since(revision);
    this.model.apply(late);
    const last = this.outbox.delivered.at(-1);
    if (last?.revision > revision) this.standing(last);
    const waiting = this.strokes();
    for (const r of waiting) r.inverse = this.model.apply(r.edits);
    return this.model.touched([...late, ...waiting.flatMap((r) => r.edits)]);
  }

  // standing works out what can be undone and redone, from what the server said
  // last and the strokes that it does not have yet.
  standing({ can_undo: undo, can_redo: redo }) {
    this.server = { can_undo: undo, can_redo: redo };
    const waiting = this.strokes().length > 0;
    this.canUndo = undo || waiting;
    this.canRedo = redo && !waiting;
  }

  strokes() {
    return this.outbox.waiting.filter((r) => r.edits);
  }

  // stroke applies edits at once and puts them in the outbox.
  stroke(laid) {
    if (laid.length === 0) return;
    this.begun?.();
    const edits = bound(this.model, laid);
    const inverse = this.model.apply(edits);
    this.outbox.add({ edits, inverse });
    this.standing(this.server);
    this.show(this.model.touched(edits), edits.filter((e) => e.layer !== "sheet"));
    this.laid?.(edits);
  }

  undo() {
    this.begun?.();
    if (this.canUndo) this.outbox.add({ undo: true });
  }

  redo() {
    this.begun?.();
    if (this.canRedo) this.outbox.add({ redo: true });
  }

  // change asks for one round more or fewer, or for increases in another round.
  // The server works out what that comes to.
  change(change) {
    this.begun?.();
    this.outbox.add({ change });
  }

  // applied takes the server's reply: what an undo did, and what others did
  // since, beneath the strokes that still wait. late is what came after the
  // stroke but was heard of before its reply.
  applied({ request, reply, late = [] }) {
    const others = reply.between ?? [];
    const own = request.edits ?? reply.edits ?? [];
    const drawn = request.edits && others.length === 0 && late.length === 0; // it is drawn already
    this.beneath(drawn ? [] : [...others, ...own, ...late]);
    this.standing(reply);
    if (request.redo) this.laid?.(own);
    const decided = drawn ? own.filter((e) => e.layer === "sheet") : [];
    if (decided.length > 0) this.show([], decided); // the sheet has them now, and the plan follows
  }

  // heard takes what others drew.
  heard({ edits, ...standing }) {
    this.beneath(edits);
    this.standing(standing);
  }

  // refused takes back a stroke that the server does not take. Those drawn over
  // it since stay.
  refused({ request }) {
    this.beneath(request.inverse ?? []);
    this.standing(this.server);
  }

  // beneath applies edits under the strokes that wait and the one that is being
  // drawn.
  beneath(edits) {
    if (edits.length === 0) return;
    const above = this.strokes();
    if (this.open) above.push(this.open);
    for (const r of [...above].reverse()) this.model.apply(r.inverse);
    this.model.apply(edits);
    for (const r of above) r.inverse = this.model.apply(r.edits);
    this.show(this.model.touched(edits), edits);
  }
}

// Strokes done, undone and done again. The history itself lies on the server,
// so it outlives a reload; here is what of it can be asked for now.

export class History {
  constructor(model, line, show) {
    this.model = model;
    this.line = line;
    this.show = show; // show(rounds): draw these again
    this.canUndo = model.data.can_undo;
    this.canRedo = model.data.can_redo;
  }

  // stroke applies edits at once and puts them in line.
  stroke(edits) {
    if (edits.length === 0) return;
    const inverse = this.model.apply(edits);
    this.canUndo = true;
    this.canRedo = false;
    this.line.add({ edits, inverse });
    this.show(rounds(edits));
  }

  undo() {
    if (this.canUndo) this.line.add({ undo: true });
  }

  redo() {
    if (this.canRedo) this.line.add({ redo: true });
  }

  // applied takes the server's reply: what an undo did, and what others did
  // since, beneath the strokes that are still in line.
  applied({ request, reply }) {
    const others = reply.between ?? [];
    const news = request.edits ? others : [...others, ...(reply.edits ?? [])];
    this.beneath(request.edits && others.length > 0 ? [...others, ...request.edits] : news);
    this.canUndo = reply.can_undo || this.line.waiting.some((r) => r.edits);
    this.canRedo = reply.can_redo;
  }

  // refused takes a stroke back that the server does not take.
  refused({ request }) {
    if (!request.edits) return;
    this.model.apply(request.inverse);
    this.show(rounds(request.edits));
  }

  // beneath applies edits under the strokes that wait.
  beneath(edits) {
    if (edits.length === 0) return;
    const waiting = this.line.waiting.filter((r) => r.edits);
    for (const r of [...waiting].reverse()) this.model.apply(r.inverse);
    this.model.apply(edits);
    for (const r of waiting) r.inverse = this.model.apply(r.edits);
    this.show(rounds(edits));
  }
}

// rounds lists the rounds that edits touch.
export function rounds(edits) {
  return [...new Set(edits.map((e) => e.round))];
}

// Which strokes a page takes over from an earlier one, on which they were drawn
// without a connection and not yet sent when it was left or a backup was put
// back.

// carry sorts requests for the file and the mitt of the page that takes them
// over. waiting are sent. strange were drawn on another mitt that had the same
// number. left are undos and redos of strokes that are gone.
//
// A stroke is kept by its columns, so it fits whatever the plan has become. An
// undo means the last stroke before it, so it still means the same only if that
// one waits, too.
export function carry(requests, { mitt, restored }) {
  const waiting = [];
  const strange = [];
  const left = [];
  let done = 0; // how many of the strokes before this one an undo may take back
  let undone = 0;
  for (const r of requests) {
    if (r.mitt !== undefined && r.mitt !== mitt) {
      strange.push(r);
      continue;
    }
    const older = r.restored !== undefined && r.restored !== restored;
    if (older && ((r.undo && done === 0) || (r.redo && undone === 0))) {
      left.push(r);
      continue;
    }
    if (r.undo) [done, undone] = [Math.max(done - 1, 0), undone + 1];
    else if (r.redo) [done, undone] = [done + 1, Math.max(undone - 1, 0)];
    else [done, undone] = [done + 1, 0];
    waiting.push(r);
  }
  return { waiting, strange, left };
}

// What strokes are taken over from an earlier page: drawn without a
// connection, and not yet sent when the page was left or a backup was put back.

// carry parts requests, given the file and the mitt of the page that takes
// them over: waiting are sent on, strange were drawn on another mitt that had
// the same number, left are undos and redos of what is gone. A stroke is laid
// on by its columns, whatever the plan has become. An undo speaks of the last
// stroke before it: it means the same as before only while that one waits, too.
export function carry(requests, { mitt, restored }) {
  const waiting = [];
  const strange = [];
  const left = [];
  let done = 0; // strokes before this one that an undo here may take back
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

// The view of one repeat, boxed, in the place of the canvas: it is looked at, and what is
// drawn is drawn on the whole chart, which lies under it unseen.

export function isBoxed({ place }) {
  return "boxed" in place.dataset;
}

// whole goes back to all of the chart, with the keyboard on it, and reports whether it had to.
export function whole(editor) {
  if (!isBoxed(editor)) return false;
  document.activeElement.blur();
  editor.hadFocus = true; // so the new one takes it
  editor.ask({ boxed: "" });
  return true;
}

// box shows of each motif one, boxed, or all of them.
export function box(editor) {
  if (whole(editor)) return;
  if (editor.model.repeats.length === 0) editor.announce("No motif is laid by rule here.");
  else editor.ask({ boxed: "1" });
}

// fileAlike ticks for the file what is shown.
export function fileAlike(editor, boxed) {
  const tick = editor.root.querySelector('.chart-file [name="boxed"]');
  if (tick) tick.checked = boxed;
}

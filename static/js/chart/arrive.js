// Where one comes to on a chart: to the round that was gone to, or to the one that
// was in hand.

// arrive puts the cursor of a new editor on its round.
export function arrive({ kept, model, view }) {
  const { section, round } = kept.goes ?? {};
  const old = kept.cursor;
  const at = kept.goes ? model.first(section, round) : old && (model.find(old) ?? model.find({ ...old, round: old.round - 1 }));
  if (at) view.cursor = { y: at.y, x: at.x };
  if (kept.goes && at) {
    kept.cursor = model.anchor(at.y, at.x);
    kept.follows = "part";
  }
  kept.goes = undefined;
}

// goTo goes to a round of a part, which may be in another view: it stands at the
// foot of the canvas, its first stitch at the edge where reading begins.
export function goTo(editor, view, section = view, round = 1) {
  if (view !== editor.model.data.view) {
    editor.kept.goes = { section, round };
    editor.ask({ view, middle: "" });
    return;
  }
  const at = editor.model.first(section, round);
  if (!at) return;
  editor.point(at.y, at.x, false);
  editor.sight.follow("part");
}

// Edits, as in internal/chart: one layer of one cell gets a value; the empty
// value takes it back to the plan. Marks are a Map from anchor to
// { stitch, colour }.

export const layers = ["stitch", "colour"];

export function anchor(edit) {
  return `${edit.section} ${edit.round} ${edit.column}`;
}

// apply carries out edits in their order and gives those that take them back,
// in the order in which they do so.
export function apply(marks, edits) {
  const inverse = [];
  for (const edit of edits) {
    const key = anchor(edit);
    const mark = { stitch: "", colour: "", ...marks.get(key) };
    inverse.unshift({ ...edit, value: mark[edit.layer] });
    mark[edit.layer] = edit.value;
    if (mark.stitch === "" && mark.colour === "") marks.delete(key);
    else marks.set(key, mark);
  }
  return inverse;
}

// marksOf paints a list of edits on an empty chart.
export function marksOf(edits) {
  const marks = new Map();
  apply(marks, edits);
  return marks;
}

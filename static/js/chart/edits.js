// Edits, as in internal/chart: one layer of one cell gets a value; the empty
// value takes it back to the plan. An edit without a column is about a whole
// round, and one of the sheet about no cell at all. Marks are a Map from anchor
// to { stitch, colour, note, needles, strand, motif }.

export const layers = ["stitch", "colour", "note", "needles", "strand", "motif"];
export const none = Object.freeze({ stitch: "", colour: "", note: "", needles: "", strand: "", motif: "" });

export function anchor(edit) {
  return `${edit.section} ${edit.round} ${edit.column}`;
}

// apply carries out edits in order, and returns those that take them back, in
// the order to apply them. Edits of the sheet are passed over.
export function apply(marks, edits) {
  const inverse = [];
  for (const edit of edits) {
    if (edit.layer === "sheet") continue;
    const key = anchor(edit);
    const mark = { ...none, ...marks.get(key) };
    inverse.push({ ...edit, value: mark[edit.layer] });
    mark[edit.layer] = edit.value;
    if (layers.every((l) => mark[l] === "")) marks.delete(key);
    else marks.set(key, mark);
  }
  return inverse.reverse();
}

// marksOf returns the marks of an empty chart after a list of edits.
export function marksOf(edits) {
  const marks = new Map();
  apply(marks, edits);
  return marks;
}

// The layout of a chart once colour is laid on it: upright columns, in which a
// motif stays whole.
import { turnUpright } from "./remember.js";

// upright shows upright columns instead of a wedge that nobody chose.
export function upright(editor) {
  if (!turnUpright()) return;
  editor.kept.turned = true;
  editor.ask({ layout: "columns" });
}

// laid sees to the layout of what was laid in colour.
export function laid(editor, edits) {
  const painted = edits.filter((e) => e.layer === "colour" && e.value !== "");
  if (painted.length === 0) return;
  upright(editor);
  const { kept, model } = editor;
  const leans = model.data.layout === "wedge" && painted.some((e) => e.section === "gusset" && e.column[0] === "H");
  if (!leans || kept.turned || kept.leant) return;
  kept.leant = true;
  editor.announce("In the wedge, stitches beside the gusset lean outward with it.", [{ words: "Upright columns", run: () => editor.ask({ layout: "columns" }) }], { lasting: true });
}

// turned says that the chart has turned to upright columns, where that shows.
export function turned(editor) {
  const { kept, model } = editor;
  if (!kept.turned || model.data.layout !== "columns" || new Set(model.rows.map((row) => row.shown.length)).size < 2) return;
  kept.turned = false;
  const next = editor.tool.shape === "stamp" ? " Press where its lower right stitch goes." : "";
  editor.announce(`Upright columns, so that a motif stays whole.${next}`, [{ words: "Show the wedge", run: () => editor.ask({ layout: "wedge" }) }], { lasting: true });
}

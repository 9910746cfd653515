// What is painted over a motif that is laid by rule stays on its own stitch when the motif
// comes to lie elsewhere. Its mark has on which stitch of the motif it was painted, so that
// this can be told. Nothing here touches a page.
import { coversOf } from "./borders.js";
import { anchor, none } from "./edits.js";

const most = 20_000; // edits of a stroke
const drawn = ["stitch", "colour"];

// bound returns a stroke with what says of each painted cell on which stitch of a motif it
// lies. Cells of which the stroke says that already are left alone.
export function bound(model, edits) {
  if (edits.some((e) => e.layer === "motif") || 2 * edits.length > most) return edits;
  const cells = new Map();
  for (const e of edits) {
    if (drawn.includes(e.layer)) cells.set(anchor(e), { ...cells.get(anchor(e)), at: e, [e.layer]: e.value });
  }
  const covers = new Map(); // by row
  const also = [];
  for (const [key, { at, ...values }] of cells) {
    const mark = { ...none, ...model.marks.get(key), ...values };
    let value = "";
    if (mark.stitch !== "" || mark.colour !== "") {
      const row = model.repeats.length > 0 && model.byKey.get(`${at.section} ${at.round}`);
      if (row && !covers.has(row)) covers.set(row, coversOf(row, model));
      value = row ? on(model, covers.get(row).get(row.column(at.column))) : mark.motif;
    }
    if (value !== mark.motif) also.push(motif(at, value));
  }
  return also.length > 0 ? [...edits, ...also] : edits;
}

// on is a stitch of a motif as a mark has it: as this hand has it, with the motif's size.
function on(model, cover) {
  if (!cover) return "";
  const { wide, high } = model.repeats[cover.repeat];
  return `${model.data.mirrored ? "l" : "r"}${wide}x${high}.${cover.right}.${cover.up}`;
}

const motif = ({ section, round, column }, value) => ({ section, round, column, layer: "motif", value });

// taken returns the edits that take painted stitches { at, to } along to where their stitches
// of a motif lie now. Those that lie nowhere stay.
export function taken(model, list) {
  const marks = list.filter(({ to }) => to).map(({ at, to }) => [at, to, { ...none, ...model.marks.get(anchor(at)) }]);
  const layers = [...drawn, "motif"];
  const off = marks.flatMap(([at, , mark]) => layers.filter((l) => mark[l] !== "").map((layer) => ({ ...at, layer, value: "" })));
  return [...off, ...marks.flatMap(([, to, mark]) => layers.filter((l) => mark[l] !== "").map((layer) => ({ ...to, layer, value: mark[layer] })))];
}

// freed returns the edits that leave painted stitches where they are, as stitches of no motif.
export const freed = (list) => list.map(({ at }) => motif(at, ""));

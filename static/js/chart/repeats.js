// Motifs that are laid by rule, as edits of the sheet: laid, moved, stretched, changed, put
// over each other, taken away. A repeat is as the page has it: { at, wide, high, yarns,
// stitches, given }, where given are the texts of the sheet beside its drawing. Nothing here
// touches a page.
import { erase } from "./commands.js";
import { textures } from "./row.js";

const most = 20; // motifs of a mitt
const side = 120; // stitches and rounds of a motif
const keys = ["name", "motif", "stitches", "section", "from", "to", "over", "columns", "set", "offset", "gusset", "left", "cut", "off", "was"];

// field returns the edit that gives a field of a repeat a text.
export function field(at, key, value) {
  return { section: "", round: 0, column: `repeats[${at}].${key}`, layer: "sheet", value: String(value) };
}

// follow gives the page's repeats what edits set of them, before the plan comes anew.
export function follow(model, edits) {
  for (const { layer, column, value } of edits) {
    const [, at, key] = (layer === "sheet" && /^repeats\[(\d+)\]\.(\w+)$/.exec(column)) || [];
    const repeat = model.repeats.find((r) => r.at === Number(at));
    if (!repeat) continue;
    if (key === "motif") repeat.yarns = value === "" ? undefined : value.split("/");
    else if (key === "stitches") repeat.stitches = value === "" ? undefined : value.split("/");
    else if (value === "") delete repeat.given[key];
    else repeat.given[key] = value;
    if (key === "to" && value > 0) repeat.up = Math.max(Math.floor((value - fromOf(repeat) + 1) / repeat.high), 0);
  }
}

// texts returns all that the sheet has of a repeat.
function texts({ given, yarns, stitches }) {
  return { ...given, motif: yarns?.join("/"), stitches: stitches?.join("/") };
}

// put returns the edits that give a repeat these texts and no others.
const put = (at, of) => keys.map((key) => field(at, key, of[key] ?? ""));

// removed returns the edits that take a repeat away.
export const removed = (repeat) => put(repeat.at, {});

// swapped returns the edits by which a repeat comes to lie over the next, or under it;
// none if there is no other.
export function swapped(model, repeat, over) {
  const i = model.repeats.indexOf(repeat);
  const other = model.repeats[i + (over ? 1 : -1)];
  return other ? [...put(repeat.at, texts(other)), ...put(other.at, texts(repeat))] : [];
}

// changed returns the edits that set a field, and those of the fields that have no use with
// it.
export function changed({ at, given }, key, value) {
  const edits = [field(at, key, value)];
  if (key === "over" && value !== "columns" && given.columns) edits.push(field(at, "columns", ""));
  if (key === "over" && value !== "round" && given.set === "multiple") edits.push(field(at, "set", ""));
  if (key !== "gusset" && given.gusset && !meetsGusset({ ...given, [key]: value })) edits.push(field(at, "gusset", ""));
  return edits;
}

// meetsGusset reports whether what is given of a repeat in the gusset has any use.
function meetsGusset({ over = "round", section = "whole", gusset }) {
  if (over === "gusset") return gusset !== "out";
  return over === "round" && ["whole", "gusset"].includes(section);
}

// fromOf and toOf are the rounds of a repeat, counted in what it is laid on.
export const fromOf = ({ given }) => Number(given.from ?? 1);
export const toOf = ({ given }) => Number(given.to ?? -1);

// onTo moves a last round by some; one that is counted from the last stays so.
function onTo(to, by) {
  if (to < 0) return Math.min(to + by, -1);
  return Math.max(to + by, 1);
}

// moved returns the edits that move a repeat by rounds and by stitches in the order in which
// the right hand works them.
export function moved(model, repeat, rounds, stitches) {
  const { at, given, wide } = repeat;
  const edits = [];
  const from = Math.max(fromOf(repeat) + rounds, 1);
  if (from !== fromOf(repeat)) {
    edits.push(field(at, "from", from));
    const to = onTo(toOf(repeat), from - fromOf(repeat));
    if (to !== toOf(repeat)) edits.push(field(at, "to", to));
  }
  const listed = model.data.mirrored ? -stitches : stitches;
  if (stitches !== 0 && given.over === "columns") edits.push(...along(model, repeat, listed, listed));
  else if (stitches !== 0) edits.push(field(at, "offset", (Number(given.offset ?? 0) + stitches) % wide));
  return edits;
}

// along moves the two columns between which a repeat lies by some stitches, if both have one
// there.
function along(model, { at, given }, first, last) {
  const names = given.columns.split("/");
  const cells = model.rows.map((row) => row.cells).find((list) => names.every((name) => list.some((c) => c.column === name)));
  const to = cells && [first, last].map((by, i) => cells[cells.findIndex((c) => c.column === names[i]) + by]?.column);
  return to?.every(Boolean) ? [field(at, "columns", to.join("/"))] : [];
}

// stretched returns the edits that let a repeat end some rounds later: a whole motif if it
// isn't cut off. Between columns, its last column moves.
export function stretched(model, repeat, rounds, stitches) {
  const { at, given, high, up } = repeat;
  const edits = [];
  const last = fromOf(repeat) + up * high - 1;
  const to = given.cut === "true" || up === 0 ? onTo(toOf(repeat), rounds) : last + rounds * high;
  if (rounds !== 0 && (to < 0 || to >= fromOf(repeat))) edits.push(field(at, "to", to));
  const ends = model.data.mirrored ? [-stitches, 0] : [0, stitches]; // the end at the left of the chart
  if (stitches !== 0 && given.over === "columns") edits.push(...along(model, repeat, ...ends));
  return edits;
}

// isDown reports whether a later round is drawn further down.
export function isDown(model) {
  for (let y = 1; y < model.height; y++) {
    const [a, b] = [model.row(y), model.row(y + 1)];
    if (a.section === b.section) return b.round < a.round;
  }
  return false;
}

// drawing returns the rows of a motif, the uppermost first, of cells as they look on the
// chart: { left, up, stitch, colour }. The sheet has it as the right hand does, from its first
// round up. left says how many cells set a stitch that no motif can.
export function drawing(model, cells) {
  const wide = Math.max(...cells.map((c) => c.left)) + 1;
  const high = Math.max(...cells.map((c) => c.up)) + 1;
  if (wide > side || high > side) return { wide, high };
  const blank = () => Array.from({ length: high }, () => Array(wide).fill("."));
  const [yarns, stitches] = [blank(), blank()];
  const down = isDown(model);
  let left = 0;
  for (const c of cells) {
    const row = down ? c.up : high - 1 - c.up;
    const at = model.data.mirrored ? c.left : wide - 1 - c.left;
    if (c.colour) yarns[row][at] = c.colour;
    const letter = Object.keys(textures).find((k) => textures[k] === c.stitch);
    if (letter) stitches[row][at] = letter;
    else if (c.stitch) left++;
  }
  const rows = (list) => (list.some((row) => row.some((letter) => letter !== ".")) ? list.map((row) => row.join("")).join("/") : "");
  return { wide, high, left, motif: rows(yarns), stitches: rows(stitches) };
}

// seen returns places of the chart as cells of a motif: what is painted there, or laid.
export function seen(model, places) {
  const right = Math.max(...places.map(([, x]) => x));
  const low = Math.min(...places.map(([y]) => y));
  return places.map(([y, x]) => {
    const cell = model.at(y, x);
    const mark = model.mark(y, cell.column);
    return {
      left: right - x, up: y - low,
      stitch: model.shown(mark.stitch) || cell.laid?.stitch || "", colour: mark.colour || cell.laid?.yarn || "",
    };
  });
}

// laidAnew returns the edits that lay a motif over all others: { at, edits } or { why }.
// place is the round and cell on which its first stitch comes to lie; without it, it begins
// with the hand. name may be empty.
export function laidAnew(model, cells, name, place) {
  const m = drawing(model, cells);
  if (m.wide > side || m.high > side) return { why: `A motif has at most ${side} stitches and ${side} rounds.` };
  if (!m.motif && !m.stitches) return { why: m.left > 0 ? "A motif sets yarns, and knit, purl, slipped or twisted stitches. There are none here." : "Nothing is painted here yet; paint the motif first." };
  const at = free(model);
  if (at === undefined) return { why: `${most} motifs are the most that can be laid.` };
  const edits = [field(at, "motif", m.motif)];
  const add = (key, value) => value !== "" && edits.push(field(at, key, value));
  add("stitches", m.stitches);
  add("name", name);
  if (place) for (const [key, value] of Object.entries(placed(model, m, place))) add(key, value);
  return { at, left: m.left, edits };
}

// free returns the number of a row of the sheet over all that are laid, or of one between.
function free({ repeats }) {
  if (repeats.length >= most) return undefined;
  const over = Math.max(-1, ...repeats.map((r) => r.at)) + 1;
  return over < most ? over : Array.from({ length: most }, (_, i) => i).find((i) => !repeats.some((r) => r.at === i));
}

// placed returns where a motif of so many stitches lies whose first stitch is a cell.
function placed(model, { wide }, { row, cell }) {
  if (/^[AZ]/.test(cell.column)) return { section: row.section, over: "gusset", gusset: "grow", from: row.round };
  const before = model.data.hand?.[row.section];
  const counted = before === undefined ? row.cells : row.cells.filter((c) => !/^[AZS]/.test(c.column));
  const offset = worked(model, counted, counted.indexOf(cell), wide) % wide;
  return { section: before === undefined ? row.section : "", from: (before ?? 0) + row.round, offset: offset > 0 ? offset : "" };
}

// worked returns how many stitches the right hand works before a motif whose first stitch, as
// this hand works them, is one of a list. The left hand works the thumb's first, too, but both
// these and the others the other way round.
function worked({ data: { mirrored } }, list, first, wide) {
  if (!mirrored || first < 0) return first;
  const thumb = Math.max(list.findIndex((c) => !/^[ABCZ]/.test(c.column)), 0);
  return (2 * list.length - first - wide + thumb) % list.length;
}

// taken returns the edits that take marks off places, since a motif lies there.
export const taken = (model, places) => erase(model, places);

// What lies beside the chart to be decided: marks that have no place in this plan, and painted
// stitches under which their motif moved. Each leaves its list once it is decided; one that
// comes back is listed by the server.
import * as events from "../events.js";
import { freed, taken } from "./bound.js";
import { dropped, putBlockBack } from "./commands.js";
import { anchor, none } from "./edits.js";

export class Lost {
  constructor(editor) {
    this.editor = editor;
    const { lost = [], drifted = [] } = editor.model.data;
    this.lists = {
      lost: lost.map((at) => ({ at, layer: at.layer, value: at.value })),
      drifted: drifted.map(({ at, to }) => ({ at, to, layer: "motif", value: this.mark(at).motif })),
    };
    for (const [name, act] of [["putBack", (b) => this.putBack(b)], ["drop", (b) => this.drop(b)], ["along", (b) => this.along(b)], ["leave", (b) => this.leave(b)]]) {
      const attribute = `[data-${name.replace("B", "-b")}]`;
      for (const b of editor.root.querySelectorAll(`[data-undecided] ${attribute}`)) b.addEventListener("click", () => act(b));
    }
  }

  mark(at) {
    return this.editor.model.marks.get(anchor(at)) ?? none;
  }

  // open reports whether an entry of a list is still to be decided.
  open({ at, layer, value }) {
    return value !== "" && this.mark(at)[layer] === value;
  }

  // of returns the list that an element stands in, and the entries of its block.
  of(element) {
    const list = this.lists[element.closest("[data-undecided]").dataset.undecided];
    return element.closest("[data-block]").dataset.block.split(" ").map((i) => list[Number(i)]);
  }

  putBack(b) {
    const { editor } = this;
    const all = this.of(b).map(({ at }) => at);
    const { edits, found } = putBlockBack(editor.model, all, editor.cursor.y, editor.cursor.x);
    editor.history.stroke(edits);
    if (found.length < all.length) editor.announce(`${found.length} of ${all.length} are back; no stitch lies here for the others.`);
  }

  drop(b) {
    this.editor.history.stroke(this.of(b).map(({ at }) => dropped(at)));
  }

  along(b) {
    this.editor.history.stroke(taken(this.editor.model, this.of(b)));
  }

  leave(b) {
    this.editor.history.stroke(freed(this.of(b)));
  }

  // follow takes off the lists what is decided by now. What came back, as after an undo, has
  // no line any more: then the lists are asked for anew.
  follow() {
    let back = false;
    for (const box of this.editor.root.querySelectorAll("[data-undecided]")) {
      const list = this.lists[box.dataset.undecided];
      const blocks = [...box.querySelectorAll("[data-block]")];
      const shown = new Set(blocks.flatMap(places));
      back ||= list.some((one, i) => !shown.has(i) && this.open(one));
      for (const li of blocks) shorten(li, places(li).filter((i) => this.open(list[i])));
      count(box);
    }
    if (back) events.view.tell();
  }
}

const places = (li) => (li.dataset.block === "" ? [] : li.dataset.block.split(" ").map(Number));

// shorten leaves a block with some of its entries.
function shorten(li, left) {
  li.dataset.block = left.join(" ");
  li.hidden = left.length === 0;
  const n = li.querySelector("[data-many]");
  if (n) n.textContent = left.length === 1 ? "" : ` (${left.length} marks)`;
}

// count says over a list how many are left in it, in the words of the server.
function count(box) {
  const n = [...box.querySelectorAll("[data-block]")].flatMap(places).length;
  box.hidden = n === 0;
  const said = box.querySelector("[data-said]");
  said.textContent = n === 1 ? said.dataset.one : said.dataset.some.replace("0", String(n));
}

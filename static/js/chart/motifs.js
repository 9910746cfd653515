// The person's own motifs: kept on the server, stamped on any chart.
import { piece } from "./commands.js";
import { button } from "./panel.js";

export class Motifs {
  constructor(editor, place) {
    this.editor = editor;
    this.place = place;
    this.load();
  }

  async load() {
    try {
      this.show(await (await fetch("/motifs")).json());
    } catch {
      this.place.textContent = "no connection: motifs can’t be listed now";
    }
  }

  show(list) {
    const { editor } = this;
    const items = list.map((m) => {
      const li = document.createElement("li");
      const stamp = button(`Stamp “${m.name}”`, () => {
        editor.choose({ shape: "stamp", piece: m.cells });
        editor.announce(`${m.name}: press on the chart, or Enter, for its lower right corner`);
      });
      stamp.dataset.motif = m.name;
      li.append(stamp, " ", button("Take it off the list", () => this.remove(m.id)));
      return li;
    });
    this.place.replaceChildren(...items);
    editor.margin.tell();
  }

  // keep asks for a name, and saves the selection as a motif under it.
  keep() {
    const { editor } = this;
    const places = editor.selection.places(editor.model);
    if (places.length === 0) {
      editor.announce("mark off first what is to be kept");
      return;
    }
    const cells = piece(editor.model, places);
    editor.panel.askFor("Name of the motif", "", 60, async (name) => {
      if (!name) return;
      const reply = await fetch("/motifs", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ name, cells }) }).catch(() => undefined);
      editor.announce(reply?.ok ? `${name} is kept` : "not kept: no connection");
      this.load();
    });
  }

  async remove(id) {
    await fetch(`/motifs/${id}/remove`, { method: "POST" }).catch(() => undefined);
    this.load();
  }
}

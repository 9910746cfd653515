// The person's own motifs: kept on the server, stamped on any chart.
import { piece } from "./commands.js";
import { button } from "./page.js";
import { takeInHand } from "./tracing.js";

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
      this.place.textContent = "No connection: the sampler can’t be shown now.";
    }
  }

  show(list) {
    const { editor } = this;
    const items = list.map((m) => {
      const li = document.createElement("li");
      const stamp = button(`Lay “${m.name}” down`, () => {
        takeInHand(editor, m.cells);
      });
      stamp.dataset.motif = m.name;
      li.append(stamp, " ", button("Lay it all round", () => editor.byRule.layHere(m)), " ", button("Take it out", () => this.remove(m.id)));
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
      editor.announce("Mark off first what is to be kept.");
      return;
    }
    const cells = piece(editor.model, places);
    editor.panel.askFor("Name of the motif", "", 60, async (name) => {
      if (!name) return;
      const reply = await fetch("/motifs", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ name, cells }) }).catch(() => undefined);
      editor.announce(reply?.ok ? `${name} is in the sampler.` : "Not kept: no connection.");
      this.load();
    });
  }

  async remove(id) {
    await fetch(`/motifs/${id}/remove`, { method: "POST" }).catch(() => undefined);
    this.load();
  }
}

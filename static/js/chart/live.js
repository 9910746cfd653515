// Listens to what others draw on the same chart, for as long as the window is
// looked at: a browser has few connections, and a hidden window keeps none.
import { restored } from "../events.js";

export class Live {
  constructor(outbox, open = (href) => new EventSource(href)) {
    this.outbox = outbox;
    this.open = open;
    document.addEventListener("visibilitychange", () => this.look());
    window.addEventListener("pagehide", () => this.stop());
    window.addEventListener("pageshow", () => this.look());
    this.look();
  }

  look() {
    if (document.hidden) this.stop();
    else this.start();
  }

  // start asks from the revision that is known now; the browser's own way of
  // asking again would ask from the first one, which does no harm.
  start() {
    if (this.source) return;
    this.source = this.open(`${this.outbox.href}/events?after=${this.outbox.revision}&restored=${this.outbox.restored}`);
    this.source.addEventListener("message", (event) => this.outbox.hear(JSON.parse(event.data)));
    this.source.addEventListener("restored", () => {
      this.source.close(); // and stays there, so that it is not opened again
      restored.tell();
    });
  }

  // renew listens to the file that the outbox knows now.
  renew() {
    this.stop();
    this.look();
  }

  stop() {
    this.source?.close();
    this.source = undefined;
  }
}

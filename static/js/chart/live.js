// Listens to what others draw on the same chart while the window is visible. A
// browser has few connections, so a hidden window keeps none.
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

  // start listens from the revision that is known now. When the browser
  // reconnects by itself it asks from the same revision again, which does no
  // harm.
  start() {
    if (this.source) return;
    this.source = this.open(`${this.outbox.href}/events?after=${this.outbox.revision}&restored=${this.outbox.restored}`);
    this.source.addEventListener("message", (event) => this.outbox.hear(JSON.parse(event.data)));
    this.source.addEventListener("restored", () => {
      this.source.close(); // this.source stays set, so that look does not open another
      restored.tell();
    });
  }

  // renew listens to the file that the outbox belongs to now.
  renew() {
    this.stop();
    this.look();
  }

  stop() {
    this.source?.close();
    this.source = undefined;
  }
}

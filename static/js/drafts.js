// A form's texts that are not saved yet, kept in this browser.
export class Drafts {
  constructor(address) {
    this.key = `thenar:draft:${new URL(address).pathname}`;
  }

  keep(body) {
    try {
      localStorage.setItem(this.key, body.toString());
    } catch {
      // No room or no permission: the page still holds the form.
    }
  }

  kept() {
    try {
      const text = localStorage.getItem(this.key);
      return text === null ? undefined : new URLSearchParams(text);
    } catch {
      return undefined;
    }
  }

  drop() {
    try {
      localStorage.removeItem(this.key);
    } catch {
      // Nothing was kept then.
    }
  }
}

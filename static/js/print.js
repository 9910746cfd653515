// The print page has one button.
document.querySelector("[data-print]")?.addEventListener("click", () => window.print());

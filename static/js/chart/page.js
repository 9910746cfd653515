// Small pieces of the page that the chart's files write, and how it is worked.

export function item(text, name) {
  const li = document.createElement("li");
  li.textContent = text;
  if (name) li.classList.add(name);
  return li;
}

export function button(text, click) {
  const b = document.createElement("button");
  b.type = "button";
  b.textContent = text;
  b.addEventListener("click", click);
  return b;
}

// byTouch reports whether the chart is worked with a finger, which has no keys.
export function byTouch() {
  return matchMedia("(pointer: coarse)").matches;
}

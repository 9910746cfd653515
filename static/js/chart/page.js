// Small pieces of the page that the chart's files write.

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

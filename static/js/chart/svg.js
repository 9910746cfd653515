// Small drawings that the script makes by itself: rulers, needle, the mitt.

const space = "http://www.w3.org/2000/svg";

// draw returns an element of a drawing.
export function draw(name, attributes, text) {
  const element = document.createElementNS(space, name);
  for (const [key, value] of Object.entries(attributes)) if (value !== undefined) element.setAttribute(key, String(value));
  if (text !== undefined) element.textContent = text;
  return element;
}

export function round1(n) {
  return Math.round(n * 10) / 10;
}

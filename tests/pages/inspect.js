// SPDX-License-Identifier: MIT
// Runs in the page, as the body of a function of (medium, width): what a browser sees of the page and a person would stumble over.
// Answers {text, elements, h1, faults: [[kind, words]]}. It changes nothing.
const [medium, width] = arguments;
const faults = [];
const fault = (kind, words) => faults.push([kind, words]);
const short = text => text.trim().replace(/\s+/g, " ").slice(0, 60);
const told = e => `<${e.localName}${e.id ? "#" + e.id : ""}> "${short(e.textContent)}"`;
const all = selector => [...document.querySelectorAll(selector)];
const elements = all("*");

// Inside a picture the picture's own edge counts, not the page's.
const laid = elements.filter(e => !e.ownerSVGElement && e.closest("body"));
const page = document.scrollingElement;
if (medium === "screen" && page && page.scrollWidth > page.clientWidth)
  fault("overflow", `the page is ${page.scrollWidth} px wide in a window of ${page.clientWidth}`);
for (const e of laid) {
  // For screen readers alone, or hidden: a box of a pixel.
  if (e.localName === "svg" || e.clientWidth <= 1) continue;
  // A region that scrolls is of no use on paper; one that hides what does not fit is of none anywhere.
  const style = getComputedStyle(e), cuts = value => value === "hidden" || value === "clip" || (medium === "print" && value !== "visible");
  if ((cuts(style.overflowX) && e.scrollWidth > e.clientWidth + 1) || (cuts(style.overflowY) && e.scrollHeight > e.clientHeight + 1))
    fault("cut-off", `${told(e)} hides a part of itself, ${medium}`);
}
if (medium === "print") {
  // Words by themselves: a long one sticks out of its paragraph's box.
  for (const e of laid)
    for (const node of [e, ...e.childNodes].filter(node => node === e || (node.nodeType === Node.TEXT_NODE && node.data.trim()))) {
      const range = document.createRange();
      range.selectNode(node);
      const box = node === e ? e.getBoundingClientRect() : range.getBoundingClientRect();
      if (box.width > 1 && box.height > 1 && box.right > width + 1) fault("cut-off", `${told(e)} ends at ${box.right.toFixed()} px of ${width} on paper`);
    }
}

if (medium === "screen") {
  if (document.compatMode !== "CSS1Compat") fault("markup", "no <!doctype html>");
  for (const e of all("script, link, iframe, frame, object, embed, base, meta[http-equiv='refresh']")) fault("script", `${told(e)} has no place in these pages`);
  const ids = new Set();
  for (const e of all("[id]")) {
    if (ids.has(e.id)) fault("ids", `${told(e)}: the id is there twice`);
    ids.add(e.id);
  }
  for (const e of elements)
    for (const {localName: name, value} of e.attributes) {
      if (name.startsWith("on") || /^\s*javascript:/i.test(value)) fault("script", `${told(e)}: ${name}="${short(value)}"`);
      const wanted = name === "href" ? (value.startsWith("#") ? [value.slice(1)] : [])
        : /^(aria-(labelledby|describedby|controls)|for|headers)$/.test(name) ? value.split(/\s+/)
        : [...value.matchAll(/url\(["']?#([^"')]+)/g)].map(found => found[1]);
      for (const id of wanted.filter(id => id && !ids.has(id))) fault("ids", `${told(e)}: ${name} points to "${id}", which is not there`);
    }
  for (const e of all("th:not([scope])")) fault("table", `${told(e)}: a heading of what? no scope`);

  for (const svg of all("svg").filter(svg => !svg.ownerSVGElement)) {
    const named = svg.querySelector(":scope > title")?.textContent.trim() || svg.getAttribute("aria-label") || svg.getAttribute("aria-labelledby");
    if (svg.getAttribute("aria-hidden") !== "true" && !(named && svg.getAttribute("role") === "img")) fault("picture-name", `${told(svg)}: neither role="img" with a title nor hidden`);

    // Corners on the screen of a box in an element's own lengths: turned text stays the turned rectangle that it is.
    const corners = (e, x, y, w, h) => [[x, y], [x + w, y], [x + w, y + h], [x, y + h]].map(([px, py]) => new DOMPoint(px, py).matrixTransform(e.getScreenCTM()));
    const texts = [...svg.querySelectorAll("text")].filter(e => !e.closest("defs, symbol, marker, pattern, clipPath") && e.textContent.trim()).map(e => {
      // The box spans the font's ascent to descent. Capitals and figures fill it less than that: a fifth less above, an eighth below.
      const {x, y, width: w, height: h} = e.getBBox();
      return {e, shape: corners(e, x, y + h / 5, w, h * 0.675)};
    });
    const view = svg.viewBox.baseVal;
    const edge = view && view.width ? [view.x, view.y, view.x + view.width, view.y + view.height] : [0, 0, svg.clientWidth, svg.clientHeight];
    const back = svg.getScreenCTM().inverse();
    const slack = 0.002 * (edge[2] - edge[0]);
    for (const {e, shape} of texts)
      if (shape.map(p => p.matrixTransform(back)).some(p => p.x < edge[0] - slack || p.y < edge[1] - slack || p.x > edge[2] + slack || p.y > edge[3] + slack))
        fault("text-outside", `${told(e)} reaches beyond its picture`);
    // Two convex shapes are apart where a line along a side of one separates them. A pixel of common ground is let pass.
    const apart = (a, b) => [a, b].some(shape => shape.some((p, i) => {
      const q = shape[(i + 1) % 4], length = Math.hypot(q.x - p.x, q.y - p.y) || 1;
      const reach = of => of.map(r => ((r.x - p.x) * (q.y - p.y) - (r.y - p.y) * (q.x - p.x)) / length);
      return Math.max(...reach(a)) < Math.min(...reach(b)) + 1 || Math.max(...reach(b)) < Math.min(...reach(a)) + 1;
    }));
    texts.forEach((one, i) => texts.slice(i + 1).forEach(other => {
      if (!apart(one.shape, other.shape)) fault("text-overlap", `${told(one.e)} and ${told(other.e)} lie on each other`);
    }));
  }
}

const counted = {};
for (const e of elements) counted[e.localName] = (counted[e.localName] || 0) + 1;
return {
  text: document.body ? document.body.innerText : document.documentElement.textContent,
  elements: counted,
  h1: all("h1").map(e => e.textContent),
  pictures: all("svg").filter(svg => !svg.ownerSVGElement).map(svg => {
    const {x, y, width, height} = svg.getBoundingClientRect();
    return {name: told(svg), x: x + scrollX, y: y + scrollY, width, height};
  }),
  faults,
};

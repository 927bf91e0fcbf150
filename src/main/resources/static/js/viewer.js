// The level scan: closer, further, moved about; parts shown and hidden; criteria and strokes shown together.
const CLOSEST = 12;
const STEP = 1.4;
const NEAR = 4;

const COLUMNS = 6;
const ROWS = 4;

// Lays the tiles of the page that are in view over its smaller picture, each once.
function sharpen(image, seen, size) {
  const address = image.dataset.full.replace(/\.png$/, "/tiles");
  const width = size.width / COLUMNS;
  const height = size.height / ROWS;
  for (let row = Math.floor(seen.y / height); row < Math.min(ROWS, (seen.y + seen.height) / height); row++) {
    for (let column = Math.floor(seen.x / width); column < Math.min(COLUMNS, (seen.x + seen.width) / width); column++) {
      const href = `${address}/${column}-${row}.png`;
      if (!image.parentNode.querySelector(`image[href="${href}"]`)) {
        const tile = image.cloneNode();
        for (const [name, value] of Object.entries({ x: column * width, y: row * height, width, height, href })) {
          tile.setAttribute(name, value);
        }
        delete tile.dataset.full;
        image.after(tile);
      }
    }
  }
}

function open(viewer) {
  const page = viewer.querySelector("svg.page");
  const image = page.querySelector("image");
  const whole = page.viewBox.baseVal;
  const legend = viewer.querySelector(".legend");
  if (legend && window.matchMedia("(max-width: 40rem)").matches) {
    legend.open = false;
  }
  const size = { width: whole.width, height: whole.height };
  const view = { x: 0, y: 0, closeness: 1 };

  const show = () => {
    const width = size.width / view.closeness;
    const height = size.height / view.closeness;
    view.x = Math.min(Math.max(0, view.x), size.width - width);
    view.y = Math.min(Math.max(0, view.y), size.height - height);
    page.setAttribute("viewBox", `${view.x} ${view.y} ${width} ${height}`);
    viewer.toggleAttribute("data-zoomed", view.closeness > 1);
    page.style.setProperty("--closeness", Math.sqrt(view.closeness));
    if (view.closeness > 1.5 && image.dataset.full) {
      sharpen(image, { x: view.x, y: view.y, width, height }, size);
    }
  };

  const place = (event) => {
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(page.getScreenCTM().inverse());
    return { x: point.x, y: point.y };
  };

  const zoom = (factor, about) => {
    const closeness = Math.min(CLOSEST, Math.max(1, view.closeness * factor));
    const centre = about ?? { x: view.x + size.width / view.closeness / 2, y: view.y + size.height / view.closeness / 2 };
    const change = view.closeness / closeness;
    view.x = centre.x - (centre.x - view.x) * change;
    view.y = centre.y - (centre.y - view.y) * change;
    view.closeness = closeness;
    show();
  };

  const actions = { in: () => zoom(STEP), out: () => zoom(1 / STEP), all: () => { view.closeness = 1; show(); } };
  for (const button of viewer.querySelectorAll("[data-zoom]")) {
    button.hidden = false;
    button.addEventListener("click", actions[button.dataset.zoom]);
  }
  viewer.addEventListener("wallplate:zoom", (event) => actions[event.detail]());
  if (viewer.dataset.near) {
    const [x, y] = viewer.dataset.near.split(" ").map(Number);
    zoom(NEAR, { x, y });
    view.x = x - size.width / view.closeness / 2;
    view.y = y - size.height / view.closeness / 2;
    show();
  }

  page.addEventListener("wheel", (event) => {
    if (event.ctrlKey || event.metaKey || view.closeness > 1) {
      event.preventDefault();
      zoom(event.deltaY < 0 ? STEP : 1 / STEP, place(event));
    }
  }, { passive: false });

  const fingers = new Map();
  let apart = 0;
  page.addEventListener("pointerdown", (event) => { fingers.set(event.pointerId, place(event)); });
  page.addEventListener("pointermove", (event) => {
    if (!fingers.has(event.pointerId)) {
      return;
    }
    if (fingers.size === 1 && view.closeness > 1) {
      page.setPointerCapture(event.pointerId);
      const from = fingers.get(event.pointerId);
      const to = place(event);
      view.x -= to.x - from.x;
      view.y -= to.y - from.y;
      show();
    } else if (fingers.size === 2) {
      fingers.set(event.pointerId, place(event));
      const [one, other] = [...fingers.values()];
      const now = Math.hypot(one.x - other.x, one.y - other.y);
      if (apart) {
        zoom(now / apart, { x: (one.x + other.x) / 2, y: (one.y + other.y) / 2 });
        fingers.clear();
      }
      apart = now;
    }
  });
  for (const end of ["pointerup", "pointercancel", "pointerleave"]) {
    page.addEventListener(end, (event) => { fingers.delete(event.pointerId); apart = 0; });
  }

  viewer.addEventListener("change", (event) => {
    const part = event.target.dataset.showPart;
    if (part) {
      for (const lines of page.querySelectorAll(`.part[data-part="${part}"]`)) {
        lines.classList.toggle("off", !event.target.checked);
      }
    }
  });
}

const opened = new WeakSet();

function openAll() {
  for (const viewer of document.querySelectorAll("[data-viewer]")) {
    if (!opened.has(viewer)) {
      opened.add(viewer);
      open(viewer);
    }
  }
}

openAll();
document.addEventListener("wallplate:shown", openAll);

// Criterion and strokes: whichever is pointed at or focused shows the other.
function light(criteria, part) {
  for (const row of document.querySelectorAll(".criteria [data-criterion]")) {
    row.classList.toggle("shown", criteria.includes(row.dataset.criterion));
  }
  for (const strokes of document.querySelectorAll("[data-evidence]")) {
    strokes.classList.toggle("shown", criteria.length === 1 && strokes.dataset.evidence === criteria[0]);
  }
  for (const lines of document.querySelectorAll(".page .part")) {
    lines.classList.toggle("shown", Boolean(part) && lines.dataset.part === part);
  }
  for (const page of document.querySelectorAll("svg.page")) {
    page.classList.toggle("lit", criteria.length > 0);
  }
}

function criterionAt(event) {
  return event.target.closest?.(".criteria [data-criterion]");
}

// A part's lines on the sheet, or its line in the list of parts, which the keyboard reaches too.
function partAt(event) {
  const listed = event.target.closest?.(".viewer .parts label")?.querySelector("[data-show-part]");
  return listed?.dataset.showPart ?? event.target.closest?.(".page .part")?.dataset.part;
}

for (const kind of ["mouseover", "focusin"]) {
  document.addEventListener(kind, (event) => {
    const row = criterionAt(event);
    if (row) {
      light([row.dataset.criterion], row.dataset.part);
      return;
    }
    const part = partAt(event);
    if (part) {
      const rows = [...document.querySelectorAll(`.criteria [data-part="${part}"]`)];
      light(rows.map((found) => found.dataset.criterion), part);
    } else if (kind === "mouseover") {
      light([]);
    }
  });
}

document.addEventListener("click", (event) => {
  const part = event.target.closest?.(".page .part")?.dataset.part;
  const row = part && document.querySelector(`.criteria [data-part="${part}"]`);
  row?.scrollIntoView({ block: "nearest" });
});

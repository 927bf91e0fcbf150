// Checking by keyboard. Single letters can be switched off, and never act while something is being typed.
const REMEMBERED = "wallplate.keys";
const help = document.querySelector("[data-keys-help]");
const switchBox = help.querySelector("[data-keys]");
help.hidden = false;
switchBox.checked = localStorage.getItem(REMEMBERED) !== "off";
switchBox.addEventListener("change", () => localStorage.setItem(REMEMBERED, switchBox.checked ? "on" : "off"));

const place = document.querySelector("[data-sheet]");
let current = document.querySelector(".criteria > .current")?.dataset.criterion;

function rows() {
  return [...document.querySelectorAll(".criteria > [data-criterion]")];
}

function goTo(row) {
  if (!row) {
    return;
  }
  current = row.dataset.criterion;
  for (const other of rows()) {
    other.classList.toggle("current", other === row);
  }
  row.focus({ preventScroll: true });
  row.scrollIntoView({ block: "nearest" });
}

function step(by) {
  const all = rows();
  const at = all.findIndex((row) => row.dataset.criterion === current);
  goTo(all[Math.min(all.length - 1, Math.max(0, at < 0 ? 0 : at + by))]);
}

// The next criterion that waits for a decision, from the first again after the last.
function toOpen() {
  const all = rows();
  const at = all.findIndex((row) => row.dataset.criterion === current);
  const waiting = (row) => row.querySelector("[data-quick]");
  goTo(all.slice(at + 1).find(waiting) ?? all.find(waiting));
}

function follow(what) {
  const row = rows().find((found) => found.dataset.criterion === current);
  (row?.querySelector(`[data-key=${what}]`) ?? document.querySelector(`[data-key=${what}]:not(.criteria *)`))?.click();
}

function edit() {
  const row = rows().find((found) => found.dataset.criterion === current) ?? rows()[0];
  if (row) {
    goTo(row);
    row.querySelector("details").open = true;
    (row.querySelector("input[type=radio]:checked") ?? row.querySelector("input[type=radio]"))?.focus();
  }
}

// What waits for a decision is decided at once; what the guideline decided needs a reason, so the form is opened for it.
function decide(verdict) {
  const row = rows().find((found) => found.dataset.criterion === current);
  const quick = row?.querySelector(`[data-quick="${verdict}"]`);
  if (quick) {
    quick.click();
  } else if (row) {
    edit();
    row.querySelector(`input[name=verdict][value="${verdict}"]`).checked = true;
    row.querySelector("input[name=reason]").focus();
  }
}

function zoom(how) {
  document.querySelector("[data-viewer]")?.dispatchEvent(new CustomEvent("wallplate:zoom", { detail: how }));
}

const keys = {
  j: () => step(1),
  k: () => step(-1),
  u: toOpen,
  e: edit,
  l: () => follow("lines"),
  s: () => follow("scale"),
  m: () => decide("met"),
  x: () => decide("not-met"),
  w: () => decide("carried"),
  n: () => place.dataset.next && window.location.assign(place.dataset.next),
  p: () => place.dataset.previous && window.location.assign(place.dataset.previous),
  c: () => document.querySelector("[data-key=checked]")?.click(),
  "+": () => zoom("in"),
  "-": () => zoom("out"),
  0: () => zoom("all"),
};

document.addEventListener("keydown", (event) => {
  const typing = event.target.closest("input, textarea, select");
  if (event.key === "Escape" && typing) {
    typing.closest("[data-criterion]")?.focus();
    return;
  }
  if (!switchBox.checked || typing || event.ctrlKey || event.metaKey || event.altKey || !keys[event.key]) {
    return;
  }
  event.preventDefault();
  keys[event.key]();
});

document.body.addEventListener("htmx:afterSettle", () => {
  const row = rows().find((found) => found.dataset.criterion === current);
  row?.classList.add("current");
  row?.focus({ preventScroll: true });
});

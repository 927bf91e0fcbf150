import { csrfHeader } from "./csrf.js";

// What a page needs is loaded by what stands on it.
const needs = {
  "[data-progress]": "./progress.js",
  "[data-upload]": "./upload.js",
  "[data-viewer]": "./viewer.js",
  "[data-sheet]": "./checking.js",
  "[data-second-marking]": "./second-marking.js",
  "[data-difference]": "./difference.js",
  "[data-guideline-keys]": "./guideline.js",
  "[data-photograph]": "./photograph.js",
  "[data-visit]": "./visit.js",
  "[data-ticks]": "./ticks.js",
  "[data-lines]": "./lines.js",
};

function load() {
  for (const [place, module] of Object.entries(needs)) {
    if (document.querySelector(place)) {
      import(module);
    }
  }
}

// What htmx sends outside a form shows, too, that it comes from a page of this application.
document.body.addEventListener("htmx:configRequest", (event) => Object.assign(event.detail.headers, csrfHeader()));

load();
document.addEventListener("wallplate:shown", load);

// A part of a page that was fetched later may need more of these, and a viewer to be opened.
document.body.addEventListener("htmx:afterSettle", (event) => {
  if (event.target.querySelector("[data-viewer]")) {
    document.dispatchEvent(new Event("wallplate:shown"));
  }
});

// An address that goes onto paper is whole: where no setting of the program says it, the address bar does.
for (const place of document.querySelectorAll("[data-here]")) {
  place.textContent = window.location.origin + place.textContent;
}

// The page before, with what was typed there.
for (const button of document.querySelectorAll("[data-back]")) {
  button.hidden = window.history.length < 2;
  button.addEventListener("click", () => window.history.back());
}

// A part of a page that could not be fetched says so; the page, and what was typed on it, stays as it is.
function complain(sentence) {
  document.querySelector("[data-complaint]")?.remove();
  const note = Object.assign(document.createElement("div"), { className: "note wrong" });
  note.dataset.complaint = "";
  note.setAttribute("role", "alert");
  note.append(Object.assign(document.createElement("p"), { textContent: sentence }));
  document.querySelector("main").prepend(note);
}

document.body.addEventListener("htmx:sendError", () => complain("The line is lost. What you typed is still here: try again when it is back."));
document.body.addEventListener("htmx:responseError", (event) => {
  const status = event.detail.xhr.status;
  complain(status === 401 || status === 403
    ? "You are no longer signed in, or this is not open to you. What you typed is still here: sign in in another window, then try again."
    : `The program could not do this (${status}). What you typed is still here: try again.`);
});
document.body.addEventListener("htmx:afterSwap", () => document.querySelector("[data-complaint]")?.remove());

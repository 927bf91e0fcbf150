import { csrfHeader } from "./csrf.js";

// What a page needs is loaded by what stands on it.
const needs = {
  "[data-progress]": "./progress.js",
  "[data-upload]": "./upload.js",
  "[data-viewer]": "./viewer.js",
  "[data-sheet]": "./checking.js",
  "[data-second-marking]": "./second-marking.js",
  "[data-difference]": "./difference.js",
  "[data-photograph]": "./photograph.js",
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

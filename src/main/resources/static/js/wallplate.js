// What a page needs is loaded by what stands on it.
const needs = {
  "[data-progress]": "./progress.js",
  "[data-upload]": "./upload.js",
  "[data-viewer]": "./viewer.js",
  "[data-sheet]": "./checking.js",
  "[data-second-marking]": "./second-marking.js",
  "[data-difference]": "./difference.js",
  "[data-photograph]": "./photograph.js",
};

function load() {
  for (const [place, module] of Object.entries(needs)) {
    if (document.querySelector(place)) {
      import(module);
    }
  }
}

load();
document.addEventListener("wallplate:shown", load);

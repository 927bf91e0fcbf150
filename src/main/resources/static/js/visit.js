// A visit to "Check my drawing" is over when its page is left: the server is told, so that it keeps the result no longer.
const PAGE_CAME_BACK_AFTER_MS = 4000;
let visit = document.querySelector("[data-visit]");
let leadsOn = false;

function leave() {
  if (visit) {
    const said = new URLSearchParams(new FormData(visit));
    said.set("leaving", "true");
    navigator.sendBeacon(visit.action, said);
  }
}

// After a script that sends the form itself: then the page stays.
window.addEventListener("submit", (event) => { leadsOn = !event.defaultPrevented; });
window.addEventListener("pagehide", () => leadsOn || leave());
// Another try has taken the place of the one before.
document.addEventListener("wallplate:shown", () => {
  leave();
  visit = document.querySelector("[data-visit]");
});
// Loaded again, the page is left and here at once; whichever the server hears last, the visit goes on.
if (window.location.pathname.includes("/results/")) {
  setTimeout(() => fetch(window.location.href, { method: "HEAD" }), PAGE_CAME_BACK_AFTER_MS);
}

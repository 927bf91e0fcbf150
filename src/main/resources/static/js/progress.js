// The server says when the standing of the set has changed; the page then fetches that part of itself again.
// While somebody types in that part, it waits until they are done, so that nothing typed is lost.
let source;
let listeningTo;
let waiting = false;

function isInUse(standing) {
  return Boolean(standing.querySelector("details[open]")) || standing.contains(document.activeElement?.closest("input, select"));
}

function refresh() {
  const standing = document.getElementById("standing");
  if (!standing) {
    return;
  }
  waiting = isInUse(standing);
  if (!waiting) {
    window.htmx.trigger(standing, "standing");
  }
}

function listen() {
  const place = document.querySelector("[data-progress]");
  const address = place ? place.dataset.progress : undefined;
  if (address === listeningTo) {
    return;
  }
  source?.close();
  listeningTo = address;
  if (!address) {
    return;
  }
  source = new EventSource(address);
  source.addEventListener("standing", refresh);
}

for (const kind of ["toggle", "focusout"]) {
  document.addEventListener(kind, () => setTimeout(() => waiting && refresh()), true);
}
document.body.addEventListener("htmx:afterSettle", listen);
window.addEventListener("pagehide", () => source?.close());
listen();

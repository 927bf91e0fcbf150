// The server says when the standing of the set has changed; the page then fetches that part of itself again.
let source;
let listeningTo;

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
  source.addEventListener("standing", () => {
    const standing = document.getElementById("standing");
    if (standing) {
      window.htmx.trigger(standing, "standing");
    }
  });
}

document.body.addEventListener("htmx:afterSettle", listen);
window.addEventListener("pagehide", () => source?.close());
listen();

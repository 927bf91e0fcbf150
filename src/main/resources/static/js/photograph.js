// A photograph is made smaller before it is sent, and the learner sees how far it has got.
const LONGEST_SIDE = 3400;
const QUALITY = 0.85;
const LOOK_AGAIN_AFTER_SECONDS = 2;

async function smaller(file) {
  if (!file.type.startsWith("image/")) {
    return file;
  }
  try {
    const picture = await createImageBitmap(file, { imageOrientation: "from-image" });
    const factor = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
    if (factor === 1 && file.size < 3_000_000) {
      return file;
    }
    const canvas = document.createElement("canvas");
    canvas.width = Math.round(picture.width * factor);
    canvas.height = Math.round(picture.height * factor);
    canvas.getContext("2d").drawImage(picture, 0, 0, canvas.width, canvas.height);
    const made = await new Promise((done) => canvas.toBlob(done, "image/jpeg", QUALITY));
    return made && made.size < file.size ? new File([made], "photograph.jpg", { type: "image/jpeg" }) : file;
  } catch {
    return file;
  }
}

function send(form, file, bar, said) {
  return new Promise((done, failed) => {
    const body = new FormData(form);
    body.set("photograph", file, file.name);
    const request = new XMLHttpRequest();
    request.open("POST", form.action);
    request.upload.onprogress = (event) => { bar.value = (100 * event.loaded) / event.total; };
    request.upload.onload = () => { said.textContent = said.dataset.reading; bar.removeAttribute("value"); };
    request.onload = () => done(request);
    request.onerror = failed;
    request.send(body);
  });
}

// The address bar and the way back from a choice of language then lead to the result and not to the page before it.
function stay(address) {
  window.history.replaceState(null, "", address);
  const back = document.querySelector(".languages input[name=back]");
  if (back) {
    back.value = window.location.pathname;
  }
}

// Others may be before it: the page that says so is asked again until the result is there.
async function result(answer, said) {
  let page = new DOMParser().parseFromString(answer.responseText, "text/html");
  let seconds = Number(answer.getResponseHeader("Refresh")) || LOOK_AGAIN_AFTER_SECONDS;
  for (let waiting = page.querySelector("[data-check-waiting]"); waiting; waiting = page.querySelector("[data-check-waiting]")) {
    said.textContent = waiting.textContent.trim();
    await new Promise((later) => setTimeout(later, 1000 * seconds));
    const again = await fetch(answer.responseURL);
    seconds = Number(again.headers.get("Refresh")) || seconds;
    page = new DOMParser().parseFromString(await again.text(), "text/html");
  }
  return page;
}

document.addEventListener("submit", async (event) => {
  const form = event.target.closest("[data-photograph]");
  const input = form?.querySelector("input[type=file]");
  if (!input?.files.length || form.dataset.plain) {
    return;
  }
  event.preventDefault();
  const bar = form.querySelector("[data-photograph-progress]");
  const said = form.querySelector("[data-photograph-said]");
  const button = form.querySelector("button");
  bar.hidden = false;
  button.disabled = true;
  said.textContent = said.dataset.smaller;
  bar.removeAttribute("value");
  try {
    const file = await smaller(input.files[0]);
    said.textContent = said.dataset.sending;
    bar.value = 0;
    const sent = await send(form, file, bar, said);
    const answer = await result(sent, said);
    stay(sent.responseURL);
    document.title = answer.title;
    document.querySelector(".frame").replaceWith(document.adoptNode(answer.querySelector(".frame")));
    document.dispatchEvent(new CustomEvent("wallplate:shown"));
    window.scrollTo(0, 0);
    document.getElementById("sheet").focus();
  } catch {
    button.disabled = false;
    form.dataset.plain = "yes";
    form.requestSubmit();
  }
});

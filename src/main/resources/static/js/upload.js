import { csrfHeader } from "./csrf.js";

// Hands files in one after another, so that each is safe as soon as it has arrived and a lost line costs one file only.
// What is already on the server is noticed there, so that trying again is harmless.
const TRIES = 4;

function filesOf(entry) {
  if (entry.isFile) {
    return new Promise((done) => entry.file((file) => done([file]), () => done([])));
  }
  const reader = entry.createReader();
  return new Promise((done) => {
    const found = [];
    const more = () => reader.readEntries(async (entries) => {
      if (entries.length === 0) {
        const sorted = found.sort((a, b) => a.name.localeCompare(b.name, undefined, { numeric: true }));
        done((await Promise.all(sorted.map(filesOf))).flat());
      } else {
        found.push(...entries);
        more();
      }
    }, () => done([]));
    more();
  });
}

async function dropped(transfer) {
  const entries = [...transfer.items].map((item) => item.webkitGetAsEntry?.()).filter(Boolean);
  return entries.length ? (await Promise.all(entries.map(filesOf))).flat() : [...transfer.files];
}

function send(address, file, said) {
  return new Promise((done, failed) => {
    const request = new XMLHttpRequest();
    const body = new FormData();
    body.append("scans", file, file.name);
    request.open("POST", address);
    request.setRequestHeader("Accept", "application/json");
    Object.entries(csrfHeader()).forEach(([name, token]) => request.setRequestHeader(name, token));
    request.responseType = "json";
    request.upload.onprogress = (event) => said(`${Math.round((100 * event.loaded) / event.total)} %`);
    request.onload = () => (request.status < 300 ? done(request.response) : failed(request.status));
    request.onerror = () => failed(0);
    request.send(body);
  });
}

async function handIn(address, file, line) {
  for (let attempt = 1; attempt <= TRIES; attempt++) {
    try {
      const receipt = await send(address, file, (part) => { line.textContent = `${file.name}: ${part}`; });
      const word = receipt.same.length ? "is already here" : receipt.empty.length ? "is empty, so left out" : "arrived";
      line.textContent = `${file.name}: ${word}`;
      return true;
    } catch (status) {
      if (status === 413) {
        line.textContent = `${file.name}: too large; a file may have up to 200 MB`;
        return false;
      }
      line.textContent = `${file.name}: the line was lost, trying again`;
      await new Promise((wait) => setTimeout(wait, 1000 * attempt * attempt));
    }
  }
  line.textContent = `${file.name}: did not get through; hand it in again`;
  return false;
}

for (const form of document.querySelectorAll("[data-upload]")) {
  const input = form.querySelector("input[type=file]");
  const list = form.querySelector("[data-upload-list]");

  async function handInAll(files) {
    let safe = true;
    for (const file of files) {
      const line = document.createElement("li");
      line.textContent = `${file.name}: waits`;
      list.append(line);
      safe = (await handIn(form.action, file, line)) && safe;
      const standing = document.getElementById("standing");
      if (standing) {
        window.htmx.trigger(standing, "standing");
      }
    }
    input.value = "";
    if (safe && files.length) {
      window.location.reload();
    }
  }

  form.addEventListener("submit", (event) => {
    if (input.files.length) {
      event.preventDefault();
      handInAll([...input.files]);
    }
  });
  form.addEventListener("dragover", (event) => { event.preventDefault(); form.classList.add("over"); });
  form.addEventListener("dragleave", () => form.classList.remove("over"));
  form.addEventListener("drop", async (event) => {
    event.preventDefault();
    form.classList.remove("over");
    handInAll(await dropped(event.dataTransfer));
  });
}

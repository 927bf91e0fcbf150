import { csrfHeader } from "./csrf.js";

// Hands files in one after another and each in parts, so that after a lost line an upload goes on where it stood.
// What is already on the server is noticed there, so that trying again is harmless.
const PART = 1024 * 1024;
const LONGEST_WAIT = 15;
const TRIES = 12;
const LEFT_OUT = /^(\.|~\$)|^(thumbs\.db|desktop\.ini)$/i;

class Refused extends Error {}

// Refused for what the file itself is, or because its set is gone: the same file would be refused each time.
class RefusedForGood extends Refused {}

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
  const files = entries.length ? (await Promise.all(entries.map(filesOf))).flat() : [...transfer.files];
  return files.filter((file) => !LEFT_OUT.test(file.name));
}

function newName() {
  return [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}

// What the server answers, or undefined where it did not hear.
function request(method, address, body, said) {
  return new Promise((done) => {
    const asked = new XMLHttpRequest();
    asked.open(method, address);
    asked.setRequestHeader("Accept", "application/json");
    Object.entries(csrfHeader()).forEach(([name, token]) => asked.setRequestHeader(name, token));
    asked.timeout = 120000;
    asked.upload.onprogress = (event) => said?.(event.loaded);
    asked.onload = () => done(asked.status >= 502 ? undefined : { status: asked.status, text: asked.responseText });
    asked.onerror = asked.ontimeout = () => done(undefined);
    asked.send(body);
  });
}

function understood(answer) {
  let body;
  try {
    body = JSON.parse(answer.text);
  } catch {
    body = undefined;
  }
  if (answer.status < 300 && body) {
    return body;
  }
  if (body?.said) {
    throw new RefusedForGood(body.said);
  }
  if (answer.status === 401 || answer.status === 403 || answer.status < 300) {
    throw new Refused("you are no longer signed in. Sign in in another window, then try again here");
  }
  if (answer.status === 404) {
    throw new RefusedForGood("this class set is no longer there");
  }
  throw new Refused(`the program did not take it (${answer.status}); try again`);
}

function pause(seconds) {
  return new Promise((done) => {
    const timer = setTimeout(finish, seconds * 1000);
    function finish() {
      clearTimeout(timer);
      window.removeEventListener("online", finish);
      done();
    }
    window.addEventListener("online", finish);
  });
}

async function send(address, form, file, name, tell) {
  let received = 0;
  let failures = 0;
  for (;;) {
    const part = file.slice(received, received + PART);
    const body = new FormData();
    for (const hidden of form.querySelectorAll("input[type=hidden]")) {
      body.append(hidden.name, hidden.value);
    }
    body.append("upload", name);
    body.append("name", file.name);
    body.append("size", file.size);
    body.append("offset", received);
    body.append("part", part, file.name);
    const answer = await request("POST", address, body, (loaded) => tell(Math.min(file.size, received + loaded)));
    if (answer) {
      const said = understood(answer);
      if (said.state !== "more") {
        return said.state;
      }
      failures = said.received > received ? 0 : failures + 1;
      received = said.received;
    } else {
      failures++;
      tell(received, true);
      await pause(Math.min(LONGEST_WAIT, 2 ** (failures - 1)));
      const standing = await request("GET", `${address}?upload=${name}`);
      if (standing) {
        const said = understood(standing);
        if (said.state !== "more") {
          return said.state;
        }
        received = said.received;
      }
    }
    if (failures > TRIES) {
      throw new Refused(`the line stayed away; ${Math.floor((100 * received) / file.size)} % got through. Try again and it goes on from there`);
    }
  }
}

// One file with its state, as a line of the list.
class Line {
  constructor(list, file) {
    this.file = file;
    this.name = newName();
    this.place = document.createElement("li");
    this.words = document.createElement("span");
    this.place.append(Object.assign(document.createElement("strong"), { textContent: file.name }), " ", this.words);
    list.append(this.place);
    this.say("waits");
  }

  say(words, kind = "") {
    this.words.textContent = words;
    this.place.className = kind;
  }

  async handIn(address, form) {
    this.again?.remove();
    if (this.file.size === 0) {
      this.say("is empty, so left out", "wrong");
      this.state = "wrong";
      return;
    }
    try {
      this.state = await send(address, form, this.file, this.name, (bytes, lost) => {
        const part = `${Math.floor((100 * bytes) / this.file.size)} %`;
        this.say(lost ? `the line is lost, ${part} got through; it goes on by itself` : part, lost ? "lost" : "");
      });
      this.say(this.state === "same" ? "is already here, not taken twice" : "has arrived", "arrived");
    } catch (refused) {
      this.state = "wrong";
      this.say(refused instanceof Refused ? refused.message : "could not be read from this computer", "wrong");
      if (refused instanceof RefusedForGood) {
        return;
      }
      this.again = Object.assign(document.createElement("button"), { type: "button", className: "small", textContent: "Try again" });
      this.again.addEventListener("click", () => this.handIn(address, form));
      this.place.append(" ", this.again);
    }
  }
}

async function handInAll(address, form, files) {
  const list = form.querySelector("[data-upload-list]");
  const said = form.querySelector("[data-upload-said]");
  const lines = files.map((file) => new Line(list, file));
  for (const [index, line] of lines.entries()) {
    said.textContent = `${index} of ${lines.length} files have arrived.`;
    await line.handIn(address, form);
    const standing = document.getElementById("standing");
    if (standing) {
      window.htmx.trigger(standing, "standing");
    }
  }
  const wrong = lines.filter((line) => line.state === "wrong").length;
  said.textContent = wrong
    ? `${lines.length - wrong} of ${lines.length} files are here. What did not get through stands in the list.`
    : `All ${lines.length} files are here.`;
  return wrong === 0;
}

// The new set is made first, without its scans: what was typed is then safe whatever becomes of the line.
async function makeSet(form) {
  const body = new FormData(form);
  body.delete("scans");
  const said = form.querySelector("[data-upload-said]");
  let response;
  try {
    response = await fetch(form.action, { method: "POST", headers: csrfHeader(), body });
  } catch {
    said.textContent = "The line is lost. What you typed is still here: try again.";
    return undefined;
  }
  if (response.ok && response.redirected) {
    return new URL(response.url).pathname;
  }
  const page = new DOMParser().parseFromString(await response.text(), "text/html");
  const next = page.querySelector("form[data-upload]");
  if (!next) {
    said.textContent = "The program did not take this. What you typed is still here: try again.";
    return undefined;
  }
  const chosen = form.querySelector("input[name=scans]").files;
  form.replaceWith(next);
  next.querySelector("input[name=scans]").files = chosen;
  next.querySelector(".wrong input, .wrong select, .wrong textarea")?.focus();
  attach(next);
  return undefined;
}

function attach(form) {
  const input = form.querySelector("input[name=scans]");
  const button = form.querySelector("button[type=submit]");

  async function start(files) {
    button.disabled = true;
    const makes = form.dataset.upload === "new-set";
    const set = makes ? await makeSet(form) : form.action.replace(/\/scans$/, "");
    if (set && (await handInAll(`${set}/scans/parts`, form, files))) {
      window.location.assign(set);
      return;
    }
    if (set && makes) {
      form.querySelector("[data-upload-said]").append(" ", Object.assign(document.createElement("a"), { href: set, textContent: "Go to the class set." }));
      return;
    }
    button.disabled = false;
    if (set) {
      input.value = "";
    }
  }

  form.addEventListener("submit", (event) => {
    if (input.files.length) {
      event.preventDefault();
      start([...input.files]);
    }
  });
  form.addEventListener("dragover", (event) => { event.preventDefault(); form.classList.add("over"); });
  form.addEventListener("dragleave", () => form.classList.remove("over"));
  form.addEventListener("drop", async (event) => {
    event.preventDefault();
    form.classList.remove("over");
    const files = await dropped(event.dataTransfer);
    if (form.dataset.upload === "new-set") {
      const chosen = new DataTransfer();
      [...input.files, ...files].forEach((file) => chosen.items.add(file));
      input.files = chosen.files;
    } else if (files.length) {
      start(files);
    }
  });
}

document.querySelectorAll("form[data-upload]").forEach(attach);

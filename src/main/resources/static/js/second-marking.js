// Second marks by keyboard: letters that no number has give full marks, half of them or none and go on to the next criterion.
const form = document.querySelector("[data-second-marking]");
const marks = [...form.querySelectorAll("input[data-maximum]")];
form.querySelector("[data-keys-help]").hidden = false;

function goTo(at) {
  const mark = marks[Math.min(marks.length - 1, Math.max(0, at))];
  mark.focus();
  mark.select();
  mark.scrollIntoView({ block: "nearest" });
}

function next(mark) {
  const at = marks.indexOf(mark) + 1;
  if (at < marks.length) {
    goTo(at);
  } else {
    form.querySelector("button[type=submit]")?.focus();
  }
}

function give(mark, part) {
  mark.value = String(Math.round(100 * part * Number(mark.dataset.maximum)) / 100);
  next(mark);
}

const keys = {
  m: (mark) => give(mark, 1),
  h: (mark) => give(mark, 0.5),
  x: (mark) => give(mark, 0),
  j: next,
  Enter: next,
  k: (mark) => goTo(marks.indexOf(mark) - 1),
};

form.addEventListener("keydown", (event) => {
  const action = marks.includes(event.target) && keys[event.key];
  if (action && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    action(event.target);
  }
});

(form.querySelector("[aria-invalid=true]") ?? marks.find((mark) => !mark.value) ?? marks[0])?.focus({ preventScroll: true });

// Both ticks of the bar: a marker each, moved by clicks and arrow keys, written into the form's numbers.
const FINE_MM = 0.5;
const COARSE_MM = 5;
const place = document.querySelector("[data-ticks]");
const page = place.querySelector("svg.page");
const height = Number(place.dataset.height);
const buttons = [...place.querySelectorAll("[data-tick]")];
let current = "left";

function input(tick, axis) {
  return place.querySelector(`input[name=${tick}${axis}]`);
}

function draw() {
  for (const { dataset: { tick } } of buttons) {
    const x = Number(input(tick, "X").value);
    const y = height - Number(input(tick, "Y").value);
    place.querySelector(`[data-tick-mark=${tick}]`).setAttribute("transform", `translate(${x} ${y})`);
  }
}

function choose(tick) {
  current = tick;
  for (const button of buttons) {
    button.setAttribute("aria-pressed", String(button.dataset.tick === tick));
  }
  for (const mark of place.querySelectorAll("[data-tick-mark]")) {
    mark.classList.toggle("current", mark.dataset.tickMark === tick);
  }
}

function move(tick, x, y) {
  const within = (value, most) => Math.min(Math.max(0, value), most);
  input(tick, "X").value = within(x, page.querySelector("image").width.baseVal.value).toFixed(1);
  input(tick, "Y").value = within(y, height).toFixed(1);
  draw();
}

const arrows = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };

for (const part of place.querySelectorAll("[data-tick-buttons]")) {
  part.hidden = false;
}
for (const button of buttons) {
  button.addEventListener("click", () => choose(button.dataset.tick));
  button.addEventListener("focus", () => choose(button.dataset.tick));
  button.addEventListener("keydown", (event) => {
    const arrow = arrows[event.key];
    if (arrow) {
      event.preventDefault();
      const step = event.shiftKey ? COARSE_MM : FINE_MM;
      const tick = button.dataset.tick;
      move(tick, Number(input(tick, "X").value) + arrow[0] * step, Number(input(tick, "Y").value) + arrow[1] * step);
    }
  });
}

// A press that wandered moved the sheet and was no click.
let pressed = null;
page.addEventListener("pointerdown", (event) => { pressed = { x: event.clientX, y: event.clientY }; });
page.addEventListener("click", (event) => {
  if (pressed && Math.hypot(event.clientX - pressed.x, event.clientY - pressed.y) > 6) {
    return;
  }
  const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(page.getScreenCTM().inverse());
  move(current, point.x, height - point.y);
  choose(current === "left" ? "right" : "left");
});
place.addEventListener("input", draw);
choose("left");
draw();

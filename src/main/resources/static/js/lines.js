// Lines of a part: a click on a line chooses it as its box in the list does; where too many are chosen, the first gives way.
const place = document.querySelector("[data-lines]");
const said = place.querySelector("[data-lines-said]");
const boxes = [...place.querySelectorAll("input[data-line]")];
const page = place.querySelector("svg.page");
const most = Number(place.dataset.most);
const order = boxes.filter((box) => box.checked);

function show() {
  for (const box of boxes) {
    lineOf(box).classList.toggle("chosen", box.checked);
  }
  said.textContent = [said.dataset.none, said.dataset.one, said.dataset.two][order.length]
    ?? said.dataset.more.replace("#", order.length);
}

function lineOf(box) {
  return page.querySelector(`.choosable[data-line="${box.dataset.line}"]`);
}

function changed(box) {
  const at = order.indexOf(box);
  if (box.checked && at < 0) {
    order.push(box);
    if (order.length > most) {
      order.shift().checked = false;
    }
  } else if (!box.checked && at >= 0) {
    order.splice(at, 1);
  }
  show();
}

function point(box, pointed) {
  lineOf(box).classList.toggle("pointed", pointed);
  box.closest("label").classList.toggle("pointed", pointed);
}

for (const box of boxes) {
  box.addEventListener("change", () => changed(box));
  box.addEventListener("focus", () => point(box, true));
  box.addEventListener("blur", () => point(box, false));
  box.closest("label").addEventListener("mouseenter", () => point(box, true));
  box.closest("label").addEventListener("mouseleave", () => point(box, false));
  const line = lineOf(box);
  line.addEventListener("mouseenter", () => point(box, true));
  line.addEventListener("mouseleave", () => point(box, false));
  line.addEventListener("click", () => {
    box.checked = !box.checked;
    changed(box);
    const list = box.closest(".line-list");
    list.scrollTop = box.closest("label").offsetTop - list.clientHeight / 2;
  });
}
show();

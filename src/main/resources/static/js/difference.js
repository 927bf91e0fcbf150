// The model answer over a drawing: a slider from the drawing alone to the model answer alone; both whole in the middle.
function open(place) {
  const label = place.querySelector("[data-slider]");
  const slider = label.querySelector("input");
  const drawing = place.querySelector("[data-drawing]");
  const model = place.querySelector("[data-model]");

  const show = () => {
    const share = slider.value / slider.max;
    drawing.setAttribute("opacity", Math.min(1, 2 - 2 * share));
    model.setAttribute("opacity", Math.min(1, 2 * share));
  };

  label.hidden = false;
  slider.addEventListener("input", show);
  show();
}

document.querySelectorAll("[data-difference]").forEach(open);

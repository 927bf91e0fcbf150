// The model answer over a drawing: a slider from the drawing alone to the model answer alone; both whole in the middle.
function open(place) {
  const label = place.querySelector("[data-slider]");
  const slider = label.querySelector("input");
  const drawing = place.querySelector("[data-drawing]");
  const model = place.querySelector("[data-model]");
  const [drawingName, modelName] = [...label.querySelectorAll("span")].map((name) => name.textContent);

  const show = () => {
    const share = slider.value / slider.max;
    const ofDrawing = Math.min(1, 2 - 2 * share);
    const ofModel = Math.min(1, 2 * share);
    drawing.setAttribute("opacity", ofDrawing);
    model.setAttribute("opacity", ofModel);
    // A bare number from 0 to 100 would not say what is seen.
    slider.setAttribute("aria-valuetext",
      `${drawingName} ${Math.round(100 * ofDrawing)} %, ${modelName} ${Math.round(100 * ofModel)} %`);
  };

  label.hidden = false;
  slider.addEventListener("input", show);
  show();
}

document.querySelectorAll("[data-difference]").forEach(open);

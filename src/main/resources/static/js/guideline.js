// The values of a criterion that looks at several: laid out once it does, because every criterion's would make a heavy page.
const pattern = document.querySelector("[data-guideline-keys]");

function show(place) {
  if (place.querySelector(".keys-by-part")) {
    return;
  }
  const keys = pattern.content.cloneNode(true);
  for (const box of keys.querySelectorAll("input")) {
    box.name = box.name.replace("criteria[0]", `criteria[${place.dataset.keysOf}]`);
  }
  place.append(keys);
}

document.querySelector("form.guideline").addEventListener("change", (event) => {
  if (event.target.matches("select") && event.target.value === "several") {
    show(event.target.closest(".guideline-fields").querySelector("[data-keys-of]"));
  }
});

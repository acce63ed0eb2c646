// Optional: the pages say everything without it. It turns a guide's choices into switches and remembers ticked boxes.
"use strict";

const holds = (cases, chosen) => cases === "" || cases.split("|").some((one) =>
  one === "" || one.split(";").every((term) => {
    const [choice, options] = term.split("=");
    return !chosen.has(choice) || options.split(",").includes(chosen.get(choice));
  }));

const switches = [...document.querySelectorAll("[data-choice]")];

function apply() {
  const chosen = new Map();
  for (const choice of switches) {
    const radio = choice.querySelector("input:checked");
    if (radio && radio.value !== "") chosen.set(choice.dataset.choice, radio.value);
  }
  let away = 0;
  for (const line of document.querySelectorAll("[data-when]")) {
    line.hidden = !holds(line.dataset.when, chosen);
    if (line.hidden) away += 1;
  }
  const state = document.querySelector(".switch-state");
  state.textContent = away === 0 ? "Every line is shown." : `${away} lines do not hold and are put away.`;
}

for (const choice of switches) {
  const list = choice.querySelector(".options");
  const title = choice.querySelector("h3");
  list.setAttribute("role", "radiogroup");
  list.setAttribute("aria-labelledby", title.id);
  const add = (item, value, words) => {
    const label = document.createElement("label");
    const radio = document.createElement("input");
    radio.type = "radio";
    radio.name = choice.dataset.choice;
    radio.value = value;
    radio.disabled = item.dataset.closed === "yes";
    radio.addEventListener("change", apply);
    label.append(radio, " ", ...words);
    return label;
  };
  for (const item of [...list.children]) {
    item.setAttribute("role", "presentation");
    const words = item.querySelector(".option");
    words.replaceChildren(add(item, item.dataset.option, [...words.childNodes]));
  }
  const all = document.createElement("li");
  all.setAttribute("role", "presentation");
  const both = add(all, "", ["Show every option's lines"]);
  both.firstChild.checked = true;
  all.append(both);
  list.append(all);
}
if (switches.length > 0) {
  document.querySelector(".switch-note").hidden = false;
}

const key = "ticks:" + location.pathname;
const boxes = [...document.querySelectorAll("input[type=checkbox]")];
const seen = new Map();
const names = boxes.map((box) => {
  const place = box.closest("[id]");
  const words = `${place ? place.id : ""}/${box.closest("label").textContent.trim()}`;
  seen.set(words, (seen.get(words) || 0) + 1);
  return `${words}/${seen.get(words)}`;
});
try {
  const kept = new Set(JSON.parse(localStorage.getItem(key) || "[]"));
  boxes.forEach((box, i) => {
    box.checked = kept.has(names[i]);
    box.addEventListener("change", () => {
      localStorage.setItem(key, JSON.stringify(names.filter((_, n) => boxes[n].checked)));
    });
  });
} catch {
  // A browser that keeps nothing for pages from disk: ticks last until the page is closed.
}

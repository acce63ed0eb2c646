// Optional: the pages say everything without it. It remembers ticked boxes, one list for a guide and its sheets, on this device;
// the list can be saved as a file and loaded on another.
"use strict";

(() => {
  const boxes = () => [...document.querySelectorAll("main input[type=checkbox]")];
  if (boxes().length === 0) return;

  const [, kind, build, page] = /\/(guide|bench)\/([^/]+\/[^/.]+)(?:\/([^/.]+))?/.exec(location.pathname) || [];
  const key = `ticks:${build || location.pathname}`;
  let ticks = new Set();
  let keeps = true;
  const load = () => {
    try {
      ticks = new Set(JSON.parse(localStorage.getItem(key) || "[]"));
    } catch {
      // A browser that keeps nothing for pages from disk: ticks last until the page is closed.
      keeps = false;
    }
  };
  const keep = () => {
    try {
      localStorage.setItem(key, JSON.stringify([...ticks].sort()));
    } catch {
      keeps = false;
    }
  };

  // A task has one tick, in the guide's list and on the work sheet; anything else is named by its page, its place and its words.
  const named = () => {
    const seen = new Map();
    return boxes().map((box) => {
      const label = box.closest("label");
      const task = box.closest(".task") || label.querySelector("a[href*='#task-']");
      if (task) return [box, task.id || task.hash.slice(1)];
      const place = box.closest("[id]");
      const words = `${page || kind || ""}/${place ? place.id : ""}/${label.textContent.trim()}`;
      seen.set(words, (seen.get(words) || 0) + 1);
      return [box, `${words}/${seen.get(words)}`];
    });
  };

  const bar = document.createElement("p");
  bar.className = "ticks";
  const count = document.createElement("span");
  count.setAttribute("role", "status");
  const tell = (words) => {
    const all = boxes();
    count.textContent = `${words ? `${words} ` : ""}${all.filter((box) => box.checked).length} of ${all.length} ticked on this page.${keeps ? "" : " This browser keeps no ticks for pages from disk: save them."} `;
  };
  const show = (words) => {
    for (const [box, name] of named()) box.checked = ticks.has(name);
    tell(words);
  };

  const save = document.createElement("button");
  save.type = "button";
  save.textContent = "Save ticks";
  save.addEventListener("click", () => {
    const url = URL.createObjectURL(new Blob([JSON.stringify({ build: build || location.pathname, ticks: [...ticks].sort() }, null, 2)], { type: "application/json" }));
    const link = document.createElement("a");
    link.href = url;
    link.download = "ticks.json";
    link.click();
    setTimeout(() => URL.revokeObjectURL(url), 1000);
  });

  const choose = document.createElement("label");
  const file = document.createElement("input");
  file.type = "file";
  file.accept = ".json,application/json";
  file.className = "unseen";
  choose.append("Load ticks", file);
  file.addEventListener("change", async () => {
    try {
      const read = JSON.parse(await file.files[0].text());
      if (!Array.isArray(read.ticks) || read.ticks.some((name) => typeof name !== "string")) throw new Error("no ticks");
      if (read.build !== (build || location.pathname)) {
        tell("These are the ticks of another build.");
      } else {
        ticks = new Set(read.ticks);
        keep();
        show("Loaded.");
      }
    } catch {
      tell("This file holds no ticks.");
    }
    file.value = "";
  });

  bar.append(count, save, " ", choose);
  if (build) document.querySelector(".docket").after(bar);

  document.addEventListener("change", (change) => {
    const found = named().find(([box]) => box === change.target);
    if (!found) return;
    ticks[found[0].checked ? "add" : "delete"](found[1]);
    keep();
    tell();
  });
  // The switches of a guide write lines anew.
  document.addEventListener("boxes", () => show());
  load();
  show();
})();

// Optional: tables and lists stand as they are without it. It sorts comparisons and narrows differences to two guides.
"use strict";

(() => {
  const make = (tag, properties, ...children) => {
    const element = Object.assign(document.createElement(tag), properties);
    element.append(...children);
    return element;
  };

  for (const table of document.querySelectorAll("table.compare")) {
    const body = table.tBodies[0];
    const heads = [...table.tHead.rows[0].cells];
    const said = make("p", { className: "unseen" });
    said.setAttribute("role", "status");
    table.after(said);
    const bar = make("p", { className: "sort-bar" }, "Sort by ");
    const select = make("select", {}, ...heads.map((head, at) => make("option", { value: String(at) }, head.textContent)));
    bar.append(make("label", {}, make("span", { className: "unseen" }, "Sort by"), select));
    table.before(bar);
    const valueOf = (row, at) => {
      const cell = row.cells[at];
      return heads[at].dataset.sort === "text" ? cell.textContent.trim() : Number.parseFloat(cell.dataset.value ?? cell.textContent);
    };
    const sort = (at, way) => {
      const words = heads[at].dataset.sort === "text";
      const rows = [...body.rows].map((row, was) => ({ row, was, value: valueOf(row, at) }));
      // What is not known stands last either way; equals keep their places.
      rows.sort((a, b) => words ? way * (a.value < b.value ? -1 : a.value > b.value ? 1 : 0) || a.was - b.was
        : Number.isNaN(a.value) - Number.isNaN(b.value) || (way * (a.value - b.value) || 0) || a.was - b.was);
      body.append(...rows.map((one) => one.row));
      heads.forEach((head, other) => {
        if (other === at) head.setAttribute("aria-sort", way > 0 ? "ascending" : "descending");
        else head.removeAttribute("aria-sort");
      });
      select.value = String(at);
      said.textContent = `Sorted by ${heads[at].textContent}, ${way > 0 ? "least first" : "most first"}.`;
    };
    const firstWay = (at) => (heads[at].dataset.sort === "falling" ? -1 : 1);
    heads.forEach((head, at) => {
      const button = make("button", { type: "button" }, head.textContent);
      button.addEventListener("click", () => {
        const now = head.getAttribute("aria-sort");
        sort(at, now === null ? firstWay(at) : now === "ascending" ? -1 : 1);
      });
      head.replaceChildren(button);
    });
    select.addEventListener("change", () => sort(Number(select.value), firstWay(Number(select.value))));
  }

  const two = document.querySelector(".two");
  if (two === null) return;
  const rows = [...document.querySelectorAll("[data-guide]")];
  const titles = [...document.querySelectorAll(".sums thead th")].slice(2).map((head) => head.textContent);
  const picks = ["First", "Second"].map((name) => {
    const select = make("select", {}, make("option", { value: "" }, "all"), ...rows.map((row) => make("option", { value: row.dataset.guide }, `${row.dataset.guide}: ${row.cells[1].textContent}`)));
    two.append(make("label", {}, `${name} guide `, select));
    return select;
  });
  const result = make("div", {});
  result.setAttribute("role", "status");
  two.append(result);
  const apply = () => {
    const chosen = picks.map((pick) => pick.value).filter(Boolean);
    const pair = chosen.length === 2 && chosen[0] !== chosen[1] ? chosen : null;
    for (const row of rows) row.hidden = pair !== null && !pair.includes(row.dataset.guide);
    let positions = 0;
    for (const position of document.querySelectorAll(".differ-position")) {
      const answers = [...position.querySelectorAll("[data-guides]")];
      const meant = answers.map((answer) => (pair ?? []).filter((guide) => answer.dataset.guides.split(" ").includes(guide)));
      position.hidden = pair !== null && meant.some((guides) => guides.length === 2);
      answers.forEach((answer, at) => { answer.hidden = pair !== null && meant[at].length === 0; });
      if (!position.hidden) positions += 1;
    }
    for (const system of document.querySelectorAll(".differ-system")) system.hidden = ![...system.querySelectorAll(".differ-position")].some((position) => !position.hidden);
    result.replaceChildren();
    if (pair !== null) {
      const [one, other] = pair.map((guide) => rows.find((row) => row.dataset.guide === guide));
      const sums = titles.map((title, at) => {
        const [a, b] = [one, other].map((row) => Number.parseFloat(row.cells[at + 2].dataset.value));
        const unit = other.cells[at + 2].textContent.replace(/[\d.,\s]+/u, " ").trim();
        const words = a === b ? "the same" : `${Math.abs(b - a).toLocaleString("en")}${unit ? ` ${unit}` : ""} ${b > a ? "more" : "less"}`;
        return make("li", {}, `${title}: ${words}`);
      });
      result.append(make("p", {}, make("b", {}, `They differ at ${positions} positions.`), ` Against guide ${pair[0]}, guide ${pair[1]} takes:`), make("ul", {}, ...sums));
    } else if (chosen.length === 2) {
      result.append(make("p", {}, "This is one and the same guide: choose another."));
    }
  };
  picks.forEach((pick) => pick.addEventListener("change", apply));
  two.hidden = false;
})();

// Optional: a guide says everything without it, for the recommended choices. It turns the choices into switches. What other
// combinations change lies in a script beside the guide, fetched when a switch is first used; the address keeps the choices.
"use strict";

(() => {
  const note = document.querySelector(".switch-note[data-switches]");
  if (!note) return;
  const prefix = "../../";
  const sections = [...document.querySelectorAll("[data-choice]")];
  const state = document.querySelector(".switch-state");
  let data = null;
  let chosen = null;

  const make = (tag, attributes = {}, ...children) => {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value);
    element.append(...children.filter((child) => child !== null && child !== ""));
    return element;
  };
  // Only what the generator has rendered, escaped and judged comes this way.
  const markup = (tag, html, attributes = {}) => {
    const element = make(tag, attributes);
    element.innerHTML = html;
    return element;
  };
  const link = ([text, href]) => make("a", { href: href.startsWith("#") ? href : prefix + href }, text);
  const mark = (verb, words) => make("b", { class: `v-${verb}` }, words);
  const cautions = (rows) => make("ul", { class: "cautions" }, ...rows.map(([about, html]) => markup("li", `<b></b> ${html}`)).map((item, at) => {
    item.firstChild.textContent = `${rows[at][0]}.`;
    return item;
  }));

  // The script beside the guide goes by numbers; made readable: options joined by commas → blocks.
  const opened = (raw) => {
    const depth = raw.choices.length;
    const combinations = {};
    const keys = raw.combinations.map((one) => one.slice(0, depth).map((option, at) => raw.options[at][option]).join(","));
    raw.combinations.forEach((one, at) => {
      combinations[keys[at]] = { lines: raw.lines[one[depth]], ...Object.fromEntries(raw.names.map((name, n) => [name, one[depth + 1 + n]])) };
    });
    return { ...raw, combinations, recommended: keys[raw.recommended] };
  };
  const row = (number) => data.rows[number].map((text) => data.texts[text]);
  // What stood on the page before anything was switched: it comes back whole, and long blocks name its items by their place.
  const own = new Map();
  const whole = new Map();
  const itemsOf = { tasks: "li", cautions: "li", mistakes: "li", wiring: "div", drawings: ".beside" };
  const place = (name) => document.querySelector(`[data-block="${name === "drawings" ? "belts" : name}"]`);
  const keepOwn = () => {
    for (const one of document.querySelectorAll("[data-block]")) whole.set(one, [...one.childNodes]);
    for (const [name, items] of Object.entries(itemsOf)) {
      const there = [...(place(name)?.querySelectorAll(items) ?? [])].map((item) => (name === "drawings" ? item.querySelector("figure") ?? make("span") : item));
      own.set(name, there.map((item) => [item.cloneNode(true), item.parentElement?.previousElementSibling?.firstChild?.textContent ?? ""]));
    }
  };
  const has = (name) => (data.combinations[chosen][name] ?? -1) >= 0;
  const block = (name) => (has(name) ? data.blocks[name][data.combinations[chosen][name]].map((number) => (number < 0 ? own.get(name)[-1 - number] : row(number))) : []);
  // An item of the page, or one made from a row of texts.
  const item = (told, make) => (typeof told[0] === "string" ? make(told) : told[0].cloneNode(true));

  const fetchData = () => new Promise((done, failed) => {
    if (data) return done();
    const script = make("script", { src: note.dataset.switches });
    script.onload = () => {
      data = opened(globalThis.swapwrightChoices);
      keepOwn();
      chosen = data.recommended;
      done();
    };
    script.onerror = failed;
    document.head.append(script);
  });

  // A choice settles others: of all that can be built with it, the combination that leaves most as it was.
  const nearest = (wanted) => {
    const now = chosen.split(",");
    let best = null;
    let most = -1;
    for (const key of Object.keys(data.combinations)) {
      const options = key.split(",");
      if (!data.choices.every((choice, at) => !wanted.has(choice) || wanted.get(choice) === options[at])) continue;
      const same = options.reduce((sum, option, at) => sum + (option === now[at] ? 1 : 0), 0);
      if (same > most) [best, most] = [key, same];
    }
    return best;
  };

  const address = () => {
    const recommended = data.recommended.split(",");
    const terms = chosen.split(",").flatMap((option, at) => option === recommended[at] ? [] : [`${data.choices[at]}=${option}`]);
    history.replaceState(null, "", terms.length ? `#build:${terms.join(";")}` : "#");
  };

  // An address that somebody cut in the middle of a character asks for nothing.
  const hash = () => { try { return decodeURIComponent(location.hash); } catch { return ""; } };
  const asked = () => new Map(hash().startsWith("#build:")
    ? hash().slice(7).split(";").map((term) => term.split("=")).filter((term) => term.length === 2)
    : []);

  const line = (id, told) => {
    const box = make("div", { class: "line switched", "data-line": id });
    box.append(make("p", { class: "do" }, make("label", {}, make("input", { type: "checkbox" }), " ", mark(told.verb, told.verbWord), " ", make("span", {}, told.words))));
    if (told.parts.length) box.append(make("ul", { class: "parts" }, ...told.parts.map(row).map(([title, price]) => make("li", {}, title, price ? ": " : "", price ? make("b", {}, price) : ""))));
    if (told.cautions.length) box.append(cautions(told.cautions.map(row)));
    if (told.steps.length) box.append(make("ol", {}, ...told.steps.map((step) => markup("li", step))));
    if (told.notes) box.append(markup("div", told.notes));
    if (told.mistakes.length) box.append(make("div", { class: "wrong" }, make("b", {}, "What goes wrong"), make("ul", {}, ...told.mistakes.map((one) => markup("li", one)))));
    if (told.read.length) box.append(make("p", { class: "read" }, "Read: ", ...told.read.map(row).flatMap((one, at) => at ? [", ", link(one)] : [link(one)])));
    const why = make("details", { class: "why" }, make("summary", {}, "Why ", make("i", { class: `is-${told.standing}` }, told.standingWords)));
    why.append(...markup("div", told.because).childNodes);
    why.append(make("p", {}, "Rule ", link([told.rule, `rule/${told.rule}.html`]), told.checked ? `, checked ${told.checked}` : "", "; sources ", ...told.sources.map(row).flatMap((one, at) => at ? [", ", link(one)] : [link(one)])));
    box.append(why);
    return box;
  };

  const show = (id, rows, make) => place(id)?.replaceChildren(...rows.map((told) => item(told, make)));
  // Items under their headings, in the order in which those first come.
  const showUnder = (id, make, wrap) => {
    const groups = new Map();
    for (const told of block(id)) {
      const heading = typeof told[0] === "string" ? told[0] : told[1];
      groups.set(heading, [...(groups.get(heading) ?? []), item(told, make)]);
    }
    place(id)?.replaceChildren(...[...groups].map(([heading, items]) => wrap(heading, items)));
  };
  const gauge = (id, [value, detail]) => {
    const there = document.querySelector(`[data-sum="${id}"]`);
    if (!there) return;
    there.querySelector(".likely").textContent = value;
    there.querySelector(".aside").textContent = detail;
  };
  const counted = (words, count) => make("li", {}, words, " ", make("b", {}, count));
  const fact = (name, ...value) => make("div", {}, make("dt", {}, name), make("dd", {}, ...value));

  // Which sheets say the same for this build, and which do not.
  const sheets = () => {
    const [same] = block("sheets");
    for (const item of document.querySelectorAll(".sheets li")) {
      const id = item.querySelector("a").getAttribute("href").split("/").pop().replace(".html", "");
      item.querySelector(".mark")?.remove();
      if (chosen !== data.recommended) item.append(make("span", { class: `mark ${same.includes(id) ? "is-good" : "is-caution"}` }, same.includes(id) ? "holds for this build too" : "recommended choices only"));
    }
    const files = document.querySelector('.foot a[href$=".json"]')?.parentElement;
    files?.querySelector("strong")?.remove();
    if (chosen !== data.recommended) files?.append(make("strong", {}, " These are of the recommended choices; this build is saved where its choices are."));
  };

  const apply = () => {
    const build = data.combinations[chosen];
    for (const id of ["work", "parts", "skill", "days"]) gauge(id, block(id)[0]);
    const [[verdict, weight]] = block("verdict");
    const head = document.querySelector(".verdict");
    head.textContent = verdict;
    head.className = `verdict is-${weight}`;
    show("notes", block("notes"), (pieces) => make("p", { class: "aside" }, pieces.join("")));
    show("positions", block("positions"), ([verb, words, count]) => make("li", {}, mark(verb, words), " ", make("b", {}, count)));
    show("plugs", block("plugs"), ([name, count]) => counted(name, count));
    show("belt-list", block("belts"), ([title, designation]) => counted(title, designation || "none that is stocked"));
    const drawings = block("drawings");
    place("belts")?.replaceChildren(...block("belts").map(([title, designation, words, trim], at) => make("div", {}, make("h3", {}, title), make("div", { class: "beside" },
      make("div", {}, make("p", { class: "chosen" }, designation || "No stocked belt fits"), words ? make("p", {}, words) : "", trim ? make("p", {}, make("b", {}, "Trim it."), ` ${trim}`) : ""),
      drawings[at] ? item(drawings[at], ([drawing]) => (drawing ? markup("figure", drawing, { class: "drawing" }) : "")) : ""))));
    show("plug-counts", block("plugs"), ([name, count]) => make("li", {}, make("b", {}, count), ` ${name}`));
    show("wiring", block("wiring"), ([title, action, detail]) => fact(title, make("b", {}, action), detail ? `: ${detail}` : ""));
    show("hoses", block("hoses"), ([circuit, words]) => fact(circuit, words));
    show("ecu", block("ecu"), ([title, about]) => make("div", {}, make("p", { class: "chosen" }, title), markup("div", about, { class: "notes" })));
    show("shopping", block("shopping"), ([source, count, total]) => make("li", {}, source, " ", make("span", { class: "aside" }, count), " ", make("b", {}, total)));
    show("mistakes", block("mistakes"), ([html]) => markup("li", html));
    showUnder("cautions", ([, html, where]) => {
      const told = markup("li", html);
      if (where) told.append(" ", make("i", {}, where));
      return told;
    }, (heading, items) => make("section", {}, make("h3", {}, heading), make("ul", {}, ...items)));
    for (const figures of document.querySelectorAll('[data-block^="figures-"]')) {
      const rows = has(figures.dataset.block) ? block(figures.dataset.block) : [[""]];
      const [within] = rows.pop();
      figures.replaceChildren(make("dl", { class: "values" }, ...rows.map(([name, value, detail, heavy]) => make("div", { class: `is-${heavy}` }, make("dt", {}, name), make("dd", {}, value, detail ? " " : "", detail ? make("span", { class: "aside" }, detail) : "")))), within ? make("p", {}, within) : "");
    }
    showUnder("tasks", ([, title, href, hours]) => make("li", {}, make("label", {}, make("input", { type: "checkbox" }), " ", link([title, href])), " ", make("small", {}, hours)),
      (phase, items) => make("section", {}, make("h3", {}, phase), make("ul", { class: "tasks" }, ...items)));
    if (chosen === data.recommended) whole.forEach((nodes, one) => one.replaceChildren(...nodes));
    sheets();

    data.positions.forEach((position, at) => {
      const number = build.lines[at];
      const box = document.getElementById(`at-${position}`);
      if (!box) return;
      box.hidden = number < 0;
      for (const one of box.querySelectorAll(":scope > .line")) {
        if (one.classList.contains("switched")) one.remove();
        else one.hidden = number !== 0;
      }
      const id = `or-${position}-${number}`;
      if (number > 0) box.querySelector("h4").after(line(id, data.others[id]));
      for (const other of box.querySelectorAll(":scope > .others > li")) other.hidden = other.dataset.line === id;
    });

    sections.forEach((section) => {
      const option = chosen.split(",")[data.choices.indexOf(section.dataset.choice)];
      for (const radio of section.querySelectorAll("input[type=radio]")) radio.checked = radio.value === option;
      section.classList.toggle("is-idle", option === "none");
    });
    document.body.classList.toggle("is-switched", chosen !== data.recommended);
    document.dispatchEvent(new CustomEvent("boxes"));
  };

  const say = (before) => {
    const changed = data.choices.filter((_, at) => before.split(",")[at] !== chosen.split(",")[at]).map((choice) => document.getElementById(`choice-${choice}`).textContent);
    const [[hours], [money]] = [block("work")[0], block("parts")[0]];
    state.textContent = `${chosen === data.recommended ? "These are the recommended choices." : "Not the recommended choices."} ${changed.length > 1 ? `Changed together: ${changed.join(", ")}. ` : ""}${hours} hours, ${money} for parts.`;
  };

  const take = async (wanted) => {
    await fetchData();
    const before = chosen;
    const found = nearest(wanted);
    if (found === null) return;
    chosen = found;
    apply();
    address();
    say(before);
  };

  for (const section of sections) {
    const list = section.querySelector(".options");
    list.setAttribute("role", "radiogroup");
    list.setAttribute("aria-labelledby", section.querySelector("h3").id);
    for (const item of list.children) {
      item.setAttribute("role", "presentation");
      const words = item.querySelector(".option");
      const radio = make("input", { type: "radio", name: section.dataset.choice, value: item.dataset.option });
      radio.disabled = item.dataset.closed === "yes";
      radio.defaultChecked = item.classList.contains("recommended");
      radio.addEventListener("change", () => take(new Map([[section.dataset.choice, radio.value]])));
      words.replaceChildren(make("label", {}, radio, " ", ...words.childNodes));
    }
  }

  const back = make("button", { type: "button" }, "Back to the recommended choices");
  back.addEventListener("click", () => take(new Map(data ? data.recommended.split(",").map((option, at) => [data.choices[at], option]) : [])));
  // The build as it stands on the page: its sums, and each line with its parts and its rule.
  const linesNow = () => [...document.querySelectorAll(".guide .position")].filter((box) => !box.hidden).flatMap((box) => {
    const held = [...box.querySelectorAll(":scope > .line")].find((one) => !one.hidden);
    return held ? [{
      position: box.id.slice(3),
      verb: held.querySelector('.do [class^="v-"]').textContent,
      words: held.querySelector(".do span").textContent,
      parts: [...held.querySelectorAll(".parts li")].map((one) => one.textContent),
      rule: held.querySelector(".why > p:last-child a").textContent,
    }] : [];
  });
  const download = (name, type, text) => {
    const url = URL.createObjectURL(new Blob([text], { type }));
    make("a", { href: url, download: name }).click();
    setTimeout(() => URL.revokeObjectURL(url), 1000);
  };
  const save = make("button", { type: "button" }, "Save this build");
  save.addEventListener("click", async () => {
    await fetchData();
    download("build.json", "application/json", JSON.stringify({
      guide: document.querySelector("h1").textContent,
      choices: Object.fromEntries(data.choices.map((choice, at) => [choice, chosen.split(",")[at]])),
      hours: block("work")[0], parts: block("parts")[0], days: block("days")[0], belts: block("belts").map(([title, designation]) => [title, designation]), plugs: block("plugs"), lines: linesNow(),
    }, null, 2));
  });
  const table = make("button", { type: "button" }, "Save it as a table");
  table.addEventListener("click", () => {
    // As the site's own CSV: a leading sign that a spreadsheet would take for a formula is kept from it.
    const cell = (text) => `"${(/^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/.test(text) ? `'${text}` : text).replaceAll('"', '""')}"`;
    const rows = linesNow().map((one) => [one.position, one.verb, one.words, one.parts.join("; "), one.rule]);
    download("build.csv", "text/csv", [["position", "do", "what", "parts", "rule"], ...rows].map((cells) => `${cells.map(cell).join(",")}\r\n`).join(""));
  });
  note.querySelector(".switch-acts").append(back, " ", save, " ", table);
  note.hidden = false;

  const follow = () => {
    const wanted = asked();
    if (wanted.size > 0) take(wanted);
    // An anchor of the page was followed: the choices stay in the address.
    else if (data && chosen !== data.recommended) address();
  };
  addEventListener("hashchange", follow);
  follow();
})();

// Optional: without it the page "Search" offers lists from A to Z. The index is fetched when somebody first asks for it,
// as a script, since a page from disk may load scripts and nothing else; no word of a query leaves the page.
"use strict";

{
  const here = document.currentScript.src;
  const root = new URL("../", here).href;

  // Ranking: a word as asked > the beginning of a word > inside a word > a word with one or two slips.
  const EXACT = 100, BEGINS = 80, INSIDE = 50, NEAR = 45, NEAR_BEGINNING = 35, SLIP = 10;
  const TITLE = 2, BESIDE = 1;

  const plain = (text) => text.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  const wordsOf = (text) => plain(text).match(/[\p{L}\p{N}]+/gu) || [];
  const slipsAllowed = (asked) => (asked.length >= 8 ? 2 : asked.length >= 4 ? 1 : 0);

  /** Fewest slips (a letter more, less, another, two swapped) to the whole word and to a beginning of it; Infinity beyond most. */
  function slips(asked, word, most) {
    const none = { whole: Infinity, beginning: Infinity };
    if (asked.length - word.length > most) return none;
    let before = [], last = [...Array(word.length + 1).keys()];
    for (let i = 1; i <= asked.length; i++) {
      const row = [i];
      let least = i;
      for (let j = 1; j <= word.length; j++) {
        let cost = Math.min(last[j] + 1, row[j - 1] + 1, last[j - 1] + (asked[i - 1] === word[j - 1] ? 0 : 1));
        if (i > 1 && j > 1 && asked[i - 1] === word[j - 2] && asked[i - 2] === word[j - 1]) cost = Math.min(cost, before[j - 2] + 1);
        row.push(cost);
        least = Math.min(least, cost);
      }
      if (least > most) return none;
      before = last;
      last = row;
    }
    const within = (count) => (count <= most ? count : Infinity);
    return { whole: within(last[word.length]), beginning: within(Math.min(...last)) };
  }

  function asWritten(asked, word) {
    if (word === asked) return EXACT;
    if (word.startsWith(asked)) return BEGINS - Math.min(20, word.length - asked.length);
    return asked.length >= 3 && word.includes(asked) ? INSIDE : 0;
  }

  function withSlips(asked, word) {
    const most = slipsAllowed(asked);
    if (most === 0) return 0;
    const { whole, beginning } = slips(asked, word, most);
    return Math.max(0, NEAR - SLIP * whole, NEAR_BEGINNING - SLIP * beginning);
  }

  /** The index as it is written → entries to search: {kind, title, href, detail}, and for each word where it stands. */
  function open(index) {
    const entries = [], places = new Map();
    const add = (kind, title, id, words = "", detail = "") => {
      const { before, after } = index.kinds[kind];
      const number = entries.push({ kind, title, plain: plain(title), href: before + id + after, detail }) - 1;
      const put = (text, weight) => {
        for (const word of wordsOf(text)) {
          if (!places.has(word)) places.set(word, new Map());
          const at = places.get(word);
          at.set(number, Math.max(weight, at.get(number) || 0));
        }
      };
      put(title, TITLE);
      put(words, BESIDE);
    };
    const { chassis, donors, options, rows } = index.guides;
    for (const [c, d, ...chosen] of rows) {
      const names = chosen.map((o) => options[o][1]).join(", ");
      add(0, `${donors[d][1]} into ${chassis[c][1]}${names && ": " + names}`, `${chassis[c][0]}/${[donors[d][0], ...chosen.map((o) => options[o][0])].join("--")}`, `${chassis[c][2]} ${donors[d][2]}`);
    }
    for (const [kind, ...rest] of index.entries) add(kind, ...rest);
    return { kinds: index.kinds, entries, places };
  }

  /** Words of the base that a word asked for may mean, each with its score; slips count only where it is not written anywhere. */
  function meant(places, asked) {
    for (const score of [asWritten, withSlips]) {
      const found = [];
      for (const word of places.keys()) {
        const value = score(asked, word);
        if (value > 0) found.push([word, value]);
      }
      if (found.length > 0) return { found, guessed: score === withSlips };
    }
    return { found: [], guessed: false };
  }

  /** {hits: best first, guessed: [[asked, meant]], unknown: words that nothing carries}. */
  function search(opened, query) {
    const totals = new Map(), guessed = [], unknown = [];
    for (const asked of new Set(wordsOf(query))) {
      const { found, guessed: isGuess } = meant(opened.places, asked);
      const best = new Map();
      for (const [word, value] of found) {
        for (const [number, weight] of opened.places.get(word)) best.set(number, Math.max(best.get(number) || 0, value * weight));
      }
      if (best.size === 0) unknown.push(asked);
      if (isGuess) guessed.push([asked, found.reduce((a, b) => (b[1] > a[1] ? b : a))[0]]);
      for (const [number, value] of best) {
        const total = totals.get(number) || { words: 0, score: 0 };
        total.words += 1;
        total.score += value;
        totals.set(number, total);
      }
    }
    // An entry that carries more of the words asked for comes before one that carries fewer; those with fewer are left out.
    const most = Math.max(0, ...[...totals.values()].map((total) => total.words));
    const whole = plain(query).trim();
    const hits = [...totals].filter(([, total]) => total.words === most).map(([number, total]) => {
      const entry = opened.entries[number];
      const bonus = entry.plain === whole ? EXACT : entry.plain.startsWith(whole) ? SLIP : 0;
      return { ...entry, number, score: total.score + bonus };
    });
    hits.sort((a, b) => b.score - a.score || a.plain.length - b.plain.length || a.number - b.number);
    return { hits, guessed, unknown };
  }

  /** Hits by kind, the kind with the best hit first. */
  function grouped(opened, hits) {
    const groups = new Map();
    for (const hit of hits) {
      if (!groups.has(hit.kind)) groups.set(hit.kind, []);
      groups.get(hit.kind).push(hit);
    }
    return [...groups].map(([kind, members]) => ({ kind, title: opened.kinds[kind].title, hits: members }));
  }

  let opening = null;
  const fetched = () => (opening ??= new Promise((done, failed) => {
    const script = document.createElement("script");
    script.src = new URL("search-index.js", here).href;
    script.onload = () => done(open(globalThis.swapwrightIndex));
    script.onerror = failed;
    document.head.append(script);
  }));

  const make = (name, attributes = {}, ...inside) => {
    const element = document.createElement(name);
    for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
    element.append(...inside);
    return element;
  };
  const addressOf = (hit) => root + hit.href;
  const field = (id) => make("input", { type: "search", id, autocomplete: "off", autocapitalize: "none", spellcheck: "false", maxlength: "100", placeholder: "Search" });
  const said = (result) => {
    const words = [result.hits.length === 0 ? "Nothing is found." : result.hits.length === 1 ? "One is found." : `${result.hits.length} are found.`];
    for (const [asked, word] of result.guessed) words.push(`“${asked}” is written nowhere; shown is what comes near, as “${word}”.`);
    if (result.unknown.length > 0 && result.hits.length > 0) words.push(`Left out: ${result.unknown.map((word) => `“${word}”`).join(", ")}.`);
    return words.join(" ");
  };

  /** The field at the head of a page: a box with a list to choose from. */
  function headField(link) {
    const SHOWN = 10;
    const input = field("find");
    const list = make("div", { role: "listbox", id: "find-list", "aria-label": "Found" });
    const state = make("p", { class: "unseen", role: "status" });
    list.hidden = true;
    for (const [key, value] of Object.entries({ role: "combobox", "aria-label": "Search", "aria-autocomplete": "list", "aria-expanded": "false", "aria-controls": list.id, "aria-haspopup": "listbox", "aria-keyshortcuts": "/" })) input.setAttribute(key, value);
    link.replaceWith(make("div", { class: "find-box", role: "search" }, input, list, state));
    let options = [], active = -1, asked = 0;
    const show = (open) => {
      list.hidden = !open;
      input.setAttribute("aria-expanded", String(open));
      if (!open) activate(-1);
    };
    const activate = (next) => {
      options[active]?.removeAttribute("aria-selected");
      active = next;
      if (active < 0) input.removeAttribute("aria-activedescendant");
      else {
        options[active].setAttribute("aria-selected", "true");
        input.setAttribute("aria-activedescendant", options[active].id);
        options[active].scrollIntoView({ block: "nearest" });
      }
    };
    const refresh = async () => {
      const turn = ++asked;
      const opened = await fetched();
      if (turn !== asked) return;
      activate(-1);
      const result = search(opened, input.value);
      options = [];
      const best = grouped(opened, result.hits.slice(0, SHOWN)).map((group, g) => make("div", { role: "group", "aria-labelledby": `find-kind-${g}` },
        make("p", { id: `find-kind-${g}`, role: "presentation" }, group.title),
        ...group.hits.map((hit) => {
          const option = make("a", { role: "option", id: `find-${options.length}`, tabindex: "-1", href: addressOf(hit) }, hit.title);
          options.push(option);
          return option;
        })));
      if (result.hits.length > SHOWN) {
        const all = make("a", { role: "option", id: `find-${options.length}`, tabindex: "-1", class: "all", href: `${root}search.html#q=${encodeURIComponent(input.value)}` }, `All ${result.hits.length} found`);
        options.push(all);
        best.push(all);
      }
      const has = wordsOf(input.value).length > 0;
      state.textContent = has ? said(result) : "";
      list.replaceChildren(...best, ...(result.hits.length === 0 ? [make("p", { class: "empty" }, "Nothing is found.")] : []));
      show(has);
    };
    input.addEventListener("focus", () => fetched().catch(() => { opening = null; }), { once: true });
    input.addEventListener("input", refresh);
    // Where another window comes to the front the field is still the one that is written in.
    input.addEventListener("blur", (left) => { if (document.activeElement !== input && !list.contains(left.relatedTarget)) show(false); });
    list.addEventListener("mousedown", (pressed) => pressed.preventDefault());
    input.addEventListener("keydown", (pressed) => {
      const step = { ArrowDown: 1, ArrowUp: -1 }[pressed.key];
      if (step !== undefined && options.length > 0) {
        if (list.hidden) show(true);
        else activate(active + step < -1 ? options.length - 1 : active + step >= options.length ? -1 : active + step);
        pressed.preventDefault();
      } else if (pressed.key === "Enter" && input.value.trim() !== "") {
        location.href = active >= 0 && !list.hidden ? options[active].href : `${root}search.html#q=${encodeURIComponent(input.value)}`;
        pressed.preventDefault();
      } else if (pressed.key === "Escape") {
        if (list.hidden) {
          input.value = "";
          refresh();
        }
        show(false);
        pressed.preventDefault();
      }
    });
    return input;
  }

  /** The page "Search": a field, and below it a plain list of links by kind. */
  function pageField(place) {
    const FEW = 8;
    const input = field("asked");
    const state = make("p", { class: "under", role: "status" });
    const found = make("div", { class: "found" });
    place.append(make("div", { class: "ask", role: "search" }, make("label", { for: "asked" }, "Search guides, parts, rules and words"), input), state, found);
    input.setAttribute("aria-keyshortcuts", "/");
    const line = (hit) => make("li", {}, make("a", { href: addressOf(hit) }, hit.title), ...(hit.detail ? [make("br"), make("span", { class: "aside" }, hit.detail)] : []));
    let asked = 0;
    const refresh = async () => {
      const turn = ++asked;
      const opened = await fetched();
      if (turn !== asked) return;
      const has = wordsOf(input.value).length > 0;
      const result = search(opened, input.value);
      state.textContent = has ? said(result) : "";
      document.body.classList.toggle("has-found", has);
      found.replaceChildren(...(has ? grouped(opened, result.hits) : []).map((group) => {
        const items = make("ul", { class: "list" }, ...group.hits.slice(0, FEW).map(line));
        const section = make("section", {}, make("h2", {}, group.title, " ", make("span", { class: "aside" }, String(group.hits.length))), items);
        if (group.hits.length > FEW) {
          const more = make("button", { type: "button" }, `Show all ${group.hits.length}`);
          more.addEventListener("click", () => {
            items.append(...group.hits.slice(FEW).map(line));
            more.remove();
            items.children[FEW].firstChild.focus();
          });
          section.append(more);
        }
        return section;
      }));
    };
    const fromAddress = () => {
      try {
        input.value = decodeURIComponent((/^#q=(.*)$/.exec(location.hash) || [])[1] || "");
      } catch {
        input.value = "";
      }
      refresh();
    };
    input.addEventListener("input", () => {
      history.replaceState(null, "", input.value.trim() === "" ? "#" : `#q=${encodeURIComponent(input.value)}`);
      refresh();
    });
    place.addEventListener("keydown", (pressed) => {
      const stops = [input, ...found.querySelectorAll("a, button")];
      const step = { ArrowDown: 1, ArrowUp: -1 }[pressed.key];
      const at = stops.indexOf(document.activeElement);
      if (step !== undefined && at >= 0) {
        stops[Math.min(stops.length - 1, Math.max(0, at + step))].focus();
        pressed.preventDefault();
      } else if (pressed.key === "Enter" && document.activeElement === input) {
        found.querySelector("a")?.click();
      } else if (pressed.key === "Escape") {
        if (document.activeElement === input) {
          input.value = "";
          input.dispatchEvent(new Event("input"));
        }
        input.focus();
        pressed.preventDefault();
      }
    });
    addEventListener("hashchange", fromAddress);
    fromAddress();
    return input;
  }

  const place = document.querySelector("[data-search]");
  const link = document.querySelector(".find");
  const input = place ? pageField(place) : link ? headField(link) : null;
  if (place) input.focus();
  document.addEventListener("keydown", (pressed) => {
    const typing = pressed.target.closest?.("input:not([type=checkbox], [type=radio]), textarea, select, [contenteditable]");
    if (input && pressed.key === "/" && !pressed.ctrlKey && !pressed.metaKey && !pressed.altKey && !typing) {
      input.focus();
      input.select();
      pressed.preventDefault();
    }
  });
}

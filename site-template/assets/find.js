// Optional: the lists below the finder say everything without it. It leads from what a reader has and wants to the guides,
// and never offers an answer that leaves none.
"use strict";

(() => {
  const data = globalThis.swapwrightFinder;
  const place = document.querySelector(".finder");
  if (!place) return;
  if (!data || data.guides.length === 0) {
    place.remove();
    return;
  }

  const sides = { c: { data: data.chassis, title: "The car", none: "I have no car yet: leave it open" }, d: { data: data.donor, title: "The engine", none: "I have no engine yet: leave it open" } };
  const limits = {
    power: { title: "Power, at least", unit: "kW", meets: (guide, value) => guide.power >= value, of: (guide) => guide.power, most: true },
    money: { title: "Parts, at most", unit: data.currency, meets: (guide, value) => guide.money <= value, of: (guide) => guide.money },
    hours: { title: "Hours of work, at most", unit: "h", meets: (guide, value) => guide.hours <= value, of: (guide) => guide.hours },
  };
  const shownAtFirst = 8;
  const pairRules = new Map(data.pairs.map(([c, d, rules]) => [`${c} ${d}`, rules]));
  let shown = shownAtFirst;
  let state = { c: [], d: [], wishes: {} };
  let returnTo = null;

  // Elements: text is only ever set as text.
  const make = (tag, properties, ...children) => {
    const element = Object.assign(document.createElement(tag), properties);
    element.append(...children.filter((child) => child !== null));
    return element;
  };
  const link = (text, path) => make("a", { href: path }, text);
  const count = (number) => (number === 1 ? "1 guide" : `${number} guides`);
  const amount = (number) => number.toLocaleString("en");

  // A side's answers: the first is "f3" (a family), "all" or "v7" (a variant by name), then numbers of replies, last "?" (cannot tell) or "v7".
  const stepOf = (side, answers) => {
    const all = sides[side].data;
    let step = null;
    for (const answer of answers) {
      if (answer[0] === "v") return { variants: [Number(answer.slice(1))] };
      if (answer === "?") return { variants: step.variants, stopped: true };
      if (answer[0] === "f") step = all.steps[all.roots[Number(answer.slice(1))][1]];
      else step = all.steps[step.replies[Number(answer)][1]];
    }
    return step;
  };
  const allowed = (side, answers) => {
    const step = stepOf(side, answers);
    return step === null ? null : new Set(step.variants);
  };
  const matching = (one) => {
    const cars = allowed("c", one.c);
    const engines = allowed("d", one.d);
    return data.guides.filter((guide) => (!cars || cars.has(guide.c)) && (!engines || engines.has(guide.d))
      && Object.entries(one.wishes).every(([wish, value]) => (limits[wish] ? limits[wish].meets(guide, value) : guide.o[Number(wish.slice(1))] === value)));
  };
  const withAnswer = (side, answer) => ({ ...state, [side]: [...state[side], answer] });
  const withWish = (wish, value) => {
    const wishes = { ...state.wishes };
    if (value === null) delete wishes[wish];
    else wishes[wish] = value;
    return { ...state, wishes };
  };
  const wishWords = (wish, value) => (limits[wish]
    ? `${limits[wish].title.toLowerCase()} ${amount(value)} ${limits[wish].unit}`
    : `${data.choices[Number(wish.slice(1))].title.toLowerCase()}: ${data.choices[Number(wish.slice(1))].options[value].toLowerCase()}`);

  // No rule excludes it: the other wishes do, or the choice does not arise with this car and engine.
  const unsaid = (one, optionWish) => {
    const built = matching({ ...one, wishes: {} });
    const taken = built.map((guide) => (optionWish ? guide.o[optionWish.choice] : -1));
    if (optionWish && built.length > 0 && taken.every((option) => option < 0)) return "There is nothing to choose here: the question does not arise with what you have.";
    if (!optionWish || !taken.includes(optionWish.option)) return "Nothing of it can be built as far as is known.";
    const others = Object.entries(one.wishes).filter(([wish]) => wish !== `o${optionWish.choice}`).map(([wish, value]) => wishWords(wish, value));
    return `Against your other wishes: ${others.join("; ")}.`;
  };

  // Why an answer leaves nothing: a wish that stands in the way, or the rules that keep the pairs from being built.
  const why = (one, optionWish) => {
    const reasons = make("span", { className: "because" });
    const bare = { ...one, wishes: {} };
    if (!optionWish && matching(bare).length > 0) {
      const standing = Object.entries(one.wishes).filter(([wish]) => {
        const without = { ...one.wishes };
        delete without[wish];
        return matching({ ...one, wishes: without }).length > 0;
      });
      const words = (standing.length > 0 ? standing : Object.entries(one.wishes)).map(([wish, value]) => wishWords(wish, value));
      reasons.append(`Against your wish: ${words.join("; ")}.`);
      return reasons;
    }
    const cars = allowed("c", one.c) || new Set(data.chassis.variants.keys());
    const engines = allowed("d", one.d) || new Set(data.donor.variants.keys());
    const rules = new Set();
    if (optionWish) {
      for (const [c, d, choice, option, which] of data.options) {
        if (cars.has(c) && engines.has(d) && choice === optionWish.choice && option === optionWish.option) which.forEach((rule) => rules.add(rule));
      }
    } else {
      for (const c of cars) for (const d of engines) (pairRules.get(`${c} ${d}`) || []).forEach((rule) => rules.add(rule));
    }
    [...rules].slice(0, 2).forEach((rule) => {
      const [title, path, words] = data.rules[rule];
      reasons.append(make("span", {}, link(title, path), words ? make("details", {}, make("summary", {}, "In full"), words) : ""));
    });
    if (rules.size > 2) reasons.append(`${rules.size - 2} more rules speak against it.`);
    if (rules.size === 0) reasons.append(unsaid(one, optionWish));
    return reasons;
  };

  // The state stands in the address, so that the browser's own way back undoes a step and a finding can be passed on.
  const encode = (one) => `#find;${["c", "d"].filter((side) => one[side].length > 0).map((side) => `${side}=${one[side].join(".")};`).join("")}${Object.entries(one.wishes).map(([wish, value]) => `${wish}=${value};`).join("")}`;
  const decode = (hash) => {
    let read = { c: [], d: [], wishes: {} };
    if (!hash.startsWith("#find;")) return read;
    for (const part of hash.slice(6).split(";").filter(Boolean)) {
      const [name, value = ""] = part.split("=");
      const steps = name === "c" || name === "d" ? value.split(".") : [Number(value)];
      for (const step of steps) {
        let next = null;
        try {
          next = name === "c" || name === "d" ? { ...read, [name]: [...read[name], step] } : { ...read, wishes: { ...read.wishes, [name]: step } };
          // What somebody changed by hand, or what an older site meant, must not lead to nothing.
          if ((name === "c" || name === "d") && stepOf(name, next[name]).variants === undefined) break;
          if (matching(next).length === 0) break;
        } catch {
          break;
        }
        read = next;
      }
    }
    return read;
  };
  const go = (next, from) => {
    returnTo = from;
    shown = shownAtFirst;
    location.hash = encode(next);
  };

  const answerItem = (side, words, answer, label) => {
    const next = withAnswer(side, answer);
    const left = matching(next).length;
    // The name that is read out begins with the question, and holds the words that are seen.
    const button = make("button", { type: "button", disabled: left === 0 }, label ? make("span", { className: "unseen" }, `${label}: `) : null, words, " ", make("span", { className: "left" }, left === 0 ? "closed" : count(left)));
    button.addEventListener("click", () => go(next, side));
    return make("li", {}, button, left === 0 ? why(next) : null);
  };
  // What can be answered comes first.
  const answerList = (items) => make("ul", { className: "replies" }, ...[...items.filter((item) => item.querySelector("button:enabled")), ...items.filter((item) => item.querySelector("button:disabled"))]);
  const wordsOf = (side, answers) => {
    const answer = answers[answers.length - 1];
    const all = sides[side].data;
    if (answer[0] === "v") return all.variants[Number(answer.slice(1))][0];
    if (answer === "?") return "cannot tell";
    if (answer[0] === "f") return all.roots[Number(answer.slice(1))][0] || "family not known";
    const before = stepOf(side, answers.slice(0, -1));
    return `${before.ask}: ${before.replies[Number(answer)][0]}`;
  };
  const sidePanel = (side) => {
    const all = sides[side].data;
    const answers = state[side];
    const step = stepOf(side, answers);
    const title = make("h4", { tabIndex: -1, id: `find-${side}` }, sides[side].title);
    const panel = make("div", { className: "ask" }, title);
    if (answers.length > 0) {
      const trail = make("ol", { className: "trail" });
      answers.forEach((_, at) => {
        const words = wordsOf(side, answers.slice(0, at + 1));
        const back = make("button", { type: "button" }, "Change");
        back.setAttribute("aria-label", `Change ${words}`);
        back.addEventListener("click", () => go({ ...state, [side]: answers.slice(0, at) }, side));
        trail.append(make("li", {}, words, " ", back));
      });
      panel.append(trail);
    }
    if (step === null) {
      panel.append(make("p", { className: "question" }, "Which family is it?"), answerList(all.roots.map(([name], at) => answerItem(side, name || "Not sure: ask me", `f${at}`, sides[side].title))));
      const pick = make("select", {}, make("option", { value: "" }, "choose …"), ...all.variants.map(([name], at) => {
        const left = matching(withAnswer(side, `v${at}`)).length;
        return make("option", { value: `v${at}`, disabled: left === 0 }, left === 0 ? `${name} (closed)` : name);
      }));
      pick.addEventListener("change", () => { if (pick.value) go(withAnswer(side, pick.value), side); });
      panel.append(make("p", {}, make("label", {}, "I know it: ", pick)), make("p", { className: "aside" }, sides[side].none + "."));
      return panel;
    }
    const open = [...new Set(matching(state).map((guide) => guide[side]))];
    if (step.replies) {
      panel.append(make("p", { className: "question" }, `${step.ask}?`), step.how ? make("p", { className: "how" }, step.how) : "");
      const list = answerList(step.replies.map(([words], at) => answerItem(side, words, String(at), step.ask)));
      const skip = make("button", { type: "button", className: "skip-question" }, "I cannot tell");
      skip.addEventListener("click", () => go(withAnswer(side, "?"), side));
      panel.append(list, skip);
    } else if (step.variants.length === 1) {
      panel.append(make("p", { className: "found" }, "It is: ", link(...all.variants[step.variants[0]])));
    } else if (step.stopped) {
      panel.append(make("p", {}, "Still possible: "), make("ul", {}, ...open.map((variant) => make("li", {}, link(...all.variants[variant])))));
    } else {
      panel.append(make("p", { className: "question" }, "Nothing that can be seen tells these apart. Which is it by its papers or by measuring?"),
        make("ul", { className: "aside" }, ...step.differs.map((words) => make("li", {}, words))),
        answerList(step.variants.map((variant) => answerItem(side, all.variants[variant][0], `v${variant}`))));
    }
    return panel;
  };

  // Thresholds that part the guides into about equal shares, rounded so that they can be thought in.
  const thresholds = (limit) => {
    const values = data.guides.map(limit.of).filter((value) => value !== undefined).sort((a, b) => a - b);
    if (values.length === 0) return [];
    const range = values[values.length - 1] - values[0];
    const step = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000, 10000].find((one) => range / one <= 8) || 20000;
    const steps = [];
    for (let value = Math.ceil(values[0] / step) * step; value <= Math.ceil(values[values.length - 1] / step) * step; value += step) steps.push(value);
    return limit.most ? steps.filter((value) => value <= values[values.length - 1]) : steps;
  };
  const wishSelect = (wish, title, entries) => {
    const select = make("select", { id: `find-${wish}` }, make("option", { value: "" }, "any"));
    const closed = [];
    entries.forEach(({ value, words, choice }) => {
      const next = withWish(wish, value);
      const left = matching(next).length;
      select.append(make("option", { value: String(value), selected: state.wishes[wish] === value, disabled: left === 0 }, left === 0 ? `${words} (closed)` : `${words} (${left})`));
      if (left === 0 && choice) closed.push(make("li", {}, make("b", {}, words), " ", why(next, choice)));
    });
    select.addEventListener("change", () => go(withWish(wish, select.value === "" ? null : Number(select.value)), wish));
    const others = matching(withWish(wish, null)).map((guide) => limits[wish]?.of(guide)).filter((value) => value !== undefined);
    const reach = limits[wish] && others.length > 0
      ? make("span", { className: "aside" }, ` ${amount(Math.min(...others))} to ${amount(Math.max(...others))} ${limits[wish].unit} with the rest as it is`)
      : null;
    return make("div", { className: "wish" }, make("label", {}, title, " ", select), reach,
      closed.length > 0 ? make("details", {}, make("summary", {}, closed.length === 1 ? "Why one is closed" : `Why ${closed.length} are closed`), make("ul", {}, ...closed)) : null);
  };
  const wishPanel = () => make("div", { className: "wishes" },
    ...Object.entries(limits).map(([wish, limit]) => wishSelect(wish, limit.title, thresholds(limit).map((value) => ({ value, words: `${amount(value)} ${limit.unit}` })))),
    ...data.choices.map((choice, at) => wishSelect(`o${at}`, choice.title, choice.options.map((words, option) => ({ value: option, words, choice: { choice: at, option } })))));

  const results = () => {
    const found = matching(state).sort((a, b) => a.money - b.money || a.hours - b.hours || (a.path < b.path ? -1 : 1));
    const list = make("ol", { className: "found-guides" }, ...found.slice(0, shown).map((guide) => make("li", {},
      link(`${data.donor.variants[guide.d][0]} into ${data.chassis.variants[guide.c][0]}${guide.options ? `: ${guide.options}` : ""}`, guide.path),
      make("span", { className: "aside" }, `${amount(guide.money)} ${data.currency} · ${amount(guide.hours)} h${guide.power === undefined ? "" : ` · ${amount(guide.power)} kW`}`))));
    const more = found.length > shown ? make("button", { type: "button" }, `Show all ${found.length}`) : null;
    more?.addEventListener("click", () => {
      const from = shown;
      shown = found.length;
      render();
      place.querySelectorAll(".found-guides a")[from].focus();
    });
    const cars = new Set(found.map((guide) => guide.c));
    const compare = cars.size === 1 && found.length > 1
      ? make("p", {}, link("Compare the donors of this chassis", `${data.chassis.variants[[...cars][0]][1]}#compared`))
      : null;
    return make("div", {}, make("p", { className: "aside" }, "The cheapest first; likely sums for the recommended choices."), list, more, compare);
  };

  const status = make("p", { className: "found-count" });
  status.setAttribute("role", "status");
  const body = make("div", {});
  const render = () => {
    const asked = state.c.length + state.d.length + Object.keys(state.wishes).length > 0;
    const clear = make("button", { type: "button", hidden: !asked }, "Start again");
    clear.addEventListener("click", () => go({ c: [], d: [], wishes: {} }, "c"));
    body.replaceChildren(
      make("div", { className: "have" }, make("h3", {}, "What do you have?"), make("div", { className: "both" }, sidePanel("c"), sidePanel("d"))),
      make("div", { className: "want" }, make("h3", {}, "What do you want?"), wishPanel(), clear),
      make("div", { className: "result" }, make("h3", {}, "Your guides"), results()));
    const left = matching(state).length;
    status.textContent = left === 1 ? "1 guide fits." : `${left} guides fit.`;
    body.querySelector(".result h3").after(status);
  };
  const follow = () => {
    // A link to another part of the page leaves the finding as it is.
    if (body.hasChildNodes() && location.hash !== "" && !location.hash.startsWith("#find;")) return;
    state = decode(location.hash);
    render();
    if (returnTo !== null) document.getElementById(`find-${returnTo}`)?.focus();
    returnTo = null;
  };
  place.append(body);
  place.hidden = false;
  follow();
  addEventListener("hashchange", follow);
})();

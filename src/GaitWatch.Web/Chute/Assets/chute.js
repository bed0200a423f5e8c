// The chute: one cow at a time, in the order of the work. Shows what the cow in hand needs, keeps what is entered, sends it when it can.
(() => {
  const { say, count, day, addDays, dayOf, time } = chuteWords;
  const { path, data: dataAddress, worker } = document.body.dataset;
  const $ = id => document.getElementById(id);
  const all = (selector, root = document) => [...root.querySelectorAll(selector)];
  const sessionHours = 16;
  const keepDays = 30;
  const retryMs = 15_000;
  const wide = matchMedia("(min-width: 1000px)");

  const lesions = new Map(all("[data-lesion]").map(button => [button.dataset.lesion, {
    code: button.dataset.lesion, site: button.dataset.site, words: button.dataset.words, claw: button.dataset.claw === "yes",
    zone: button.dataset.zone ? Number(button.dataset.zone) : null, zones: (button.dataset.zones ?? "").split(" ").filter(Boolean).map(Number),
  }]));
  const footNames = Object.fromEntries(all("[data-foot]").map(button => [button.dataset.foot, button.querySelector("b").textContent]));
  // The same within a sentence: whether its first letter is small there, the language decides.
  const footWords = Object.fromEntries(all("[data-foot]").map(button => [button.dataset.foot, button.dataset.words]));
  const siteOf = code => lesions.get(code)?.site ?? "Elsewhere";

  let farm = null;          // what the farm told last
  let entries = [];         // what this phone keeps
  let cow = null;           // the cow in hand
  let foot = null;          // her foot in hand
  let draft = null;         // what is being entered of it
  let walked = null;        // how she walked in
  let isOfflineReady = false;

  // What is kept of the turn survives a phone that dies.
  const remember = () => chuteKept.keepFact(`turn ${path}`, { cow, foot, draft, walked });

  const element = (name, text, properties = {}) => Object.assign(document.createElement(name), { textContent: text, ...properties });
  const rowOf = number => farm?.rows.find(row => row.cow === number);
  const known = number => farm?.cows.find(c => c.cow === number);
  const zone = () => farm?.zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone;
  const counts = entry => entry.state !== "withdrawn" && entry.state !== "withdrawing";

  // What was entered on this visit, here or by whoever else told the farm, each once.
  function entered(number) {
    const recent = Date.now() - sessionHours * 3_600_000;
    const here = entries.filter(e => e.cow === number && (Date.parse(e.finding.at) >= recent || (farm && dayOf(e.finding.at, zone()) === farm.date)));
    const mine = new Set(entries.map(e => e.id));
    const elsewhere = (farm?.entered ?? []).filter(e => e.cow === number && !mine.has(e.id));
    return [...here.filter(counts).map(e => e.finding), ...elsewhere];
  }

  const isDone = number => entered(number).length > 0 || Boolean(rowOf(number)?.doneAt);

  // ---- screens -------------------------------------------------------------------------------------------------------

  const screens = all(".screen").map(section => section.id);
  function screen() {
    const wanted = location.hash.slice(1);
    if (!screens.includes(wanted)) return "cow";
    if ((wanted === "detail" && !draft) || (wanted === "lesion" && !foot) || (wanted === "list" && wide.matches)) return "cow";
    return wanted;
  }

  function go(to) {
    if (location.hash.slice(1) === to) render();
    else location.hash = to;
  }

  function render() {
    const now = screen();
    for (const id of screens) $(id).hidden = id !== now;
    ({ cow: renderCow, lesion: renderLesion, detail: renderDetail, find: renderFind, kept: renderKept, care: () => {}, list: () => {} })[now]();
    renderList();
    renderState();
  }

  function arrive() {
    render();
    scrollTo(0, 0);
    const head = $(screen()).querySelector("h2");
    head.tabIndex = -1;
    head.focus({ preventScroll: true });
  }

  // ---- the cow -------------------------------------------------------------------------------------------------------

  function pick(number) {
    cow = number; foot = null; draft = null; walked = null;
    remember();
  }

  function pickNext() {
    const rows = farm?.rows ?? [];
    const here = rows.findIndex(row => row.cow === cow);
    const order = [...rows.slice(here + 1), ...rows.slice(0, Math.max(0, here))];
    const next = order.find(row => !isDone(row.cow) && row.hasPlace !== false) ?? order.find(row => !isDone(row.cow));
    if (next) pick(next.cow);
    else if (rows.length > 0) notice(say("finished"));
    return Boolean(next);
  }

  function whyOf(row) {
    if (!row) return say("why.none");
    const name = row.leg ? footNames[row.leg] : say("anyFoot");
    const why = row.reason === "alert" && row.loadDropPercent !== null && row.since
      ? say("why.alert", name, Math.round(row.loadDropPercent), day(row.since))
      : say(row.reason === "alert" ? "why.recheck" : `why.${row.reason}`, name);
    return row.note ? `${why} ${row.note}` : why;
  }

  function factsOf(row, her) {
    const facts = (her?.worn ?? []).map(block => block.claw
      ? say("blockOnClaw", footWords[block.foot], day(block.since), say(block.claw))
      : say("blockOn", footWords[block.foot], day(block.since)));
    if (facts.length === 0 && row?.blockOn) facts.push(say("blockSince", day(row.blockOn)));
    if (row?.withdrawalUntil) facts.push(say("withdrawal", day(row.withdrawalUntil)));
    if (row?.dueOn) facts.push(say("due", day(row.dueOn)));
    for (const found of her?.found ?? []) facts.push(say("lastFound", day(found.on), footWords[found.foot], found.words));
    return facts;
  }

  function renderCow() {
    $("cow").classList.toggle("no-cow", !cow);
    if (!cow) {
      $("cow-number").textContent = "–";
      $("cow-place").textContent = $("cow-why").textContent = "";
      $("cow-facts").replaceChildren();
    } else {
      const row = rowOf(cow);
      const her = known(cow);
      const pen = row?.pen ?? her?.pen;
      const place = row ? say("place", row.position, farm.rows.length) : say("notListed");
      $("cow-number").textContent = cow;
      $("cow-place").textContent = pen ? `${say("pen", pen)}, ${place}` : place;
      $("cow-why").textContent = whyOf(row);
      $("cow-facts").replaceChildren(...factsOf(row, her).map(fact => element("li", fact)));
    }
    const done = cow ? entered(cow) : [];
    for (const button of all("[data-foot]")) {
      const name = button.dataset.foot;
      const ofFoot = done.filter(f => f.foot === name);
      const isFirst = Boolean(cow) && rowOf(cow)?.leg === name && ofFoot.length === 0;
      button.disabled = !cow;
      button.classList.toggle("first", isFirst);
      button.classList.toggle("entered", ofFoot.length > 0);
      button.querySelector("span").textContent = ofFoot.length > 0
        ? `✓ ${ofFoot.map(f => lesions.get(f.lesion)?.words ?? f.lesion).join(", ")}`
        : isFirst ? say("liftFirst") : known(cow)?.worn.some(block => block.foot === name) ? say("blockHere") : "";
    }
    const feet = Object.keys(footNames).filter(name => !done.some(f => f.foot === name));
    $("all-four").textContent = feet.length === 4 ? say("allFour") : say("others");
    $("all-four").disabled = !cow || feet.length === 0;
    showPicked();
  }

  // ---- lesion and detail ---------------------------------------------------------------------------------------------

  const heading = () => say("head", cow, footWords[foot]);

  function renderLesion() {
    $("lesion-head").textContent = heading();
  }

  function showPicked() {
    for (const button of all("[data-pick]")) {
      const value = button.dataset.pick === "locomotionScore" ? walked : draft?.[button.dataset.pick];
      const isOn = value !== null && value !== undefined && String(value) === button.dataset.value;
      button.setAttribute("aria-checked", isOn);
    }
  }

  function renderDetail() {
    const lesion = lesions.get(draft.lesion);
    $("detail-head").textContent = `${heading()}: ${lesion.words}`;
    const shown = {
      claw: lesion.claw, zone: lesion.zones.length > 0, severity: lesion.code !== "none" && lesion.code !== "DD", mStage: lesion.code === "DD",
      foreignBody: lesion.code === "foreign-body", blockMaterial: Boolean(draft.blockClaw),
      withdrawalUntil: draft.actions.includes("pain-relief") || draft.actions.includes("antibiotic"),
    };
    for (const part of all("[data-for]")) part.hidden = !shown[part.dataset.for];
    for (const button of all("[data-pick='claw']:not([data-value='both'])")) button.textContent = say(`claw.${button.dataset.value}.${chuteDraft.sideOf(foot, button.dataset.value)}`);
    // Left on the left, as the foot is seen.
    $("claws").classList.toggle("turned", chuteDraft.sideOf(foot, "outer") === "right");
    for (const button of all("[data-block]")) {
      button.textContent = say(`block.${button.dataset.block}`);
      button.setAttribute("aria-checked", draft.blockClaw === button.dataset.block);
      // Offered first on the claw that is not sore.
      button.style.order = draft.claw === button.dataset.block ? -1 : -2;
    }
    for (const button of all("[data-action]")) {
      button.setAttribute("aria-checked", draft.actions.includes(button.dataset.action));
      if (button.dataset.action === "foreign-body-removed") button.hidden = lesion.code === "none";
    }
    for (const button of all("[data-sign]")) button.setAttribute("aria-checked", draft.signs.includes(button.dataset.sign));
    if ($("withdrawal").value !== (draft.withdrawalUntil ?? "")) $("withdrawal").value = draft.withdrawalUntil ?? "";
    $("withdrawal").min = dayOf(Date.now(), zone());
    showPicked();
    renderZones(lesion);
    const finding = chuteDraft.toFinding(draft, new Date().toISOString(), { locomotionScore: walked, by: "" });
    const unsafe = chuteRules.unsafeBlock(finding, entered(cow).filter(f => f.foot === foot && f.actions), wornBefore(), siteOf);
    renderWarnings(finding, unsafe);
    renderAgain(finding, unsafe);
  }

  const wornBefore = () => known(cow)?.worn.find(block => block.foot === foot)?.claw;

  // Where the lesion tells the place, the drawing waits folded until the place is another.
  function beginDetail(lesion) {
    draft = chuteDraft.begin(foot, lesion);
    $("place").open = draft.zone === null;
    remember();
    go("detail");
  }

  function renderZones(lesion) {
    $("left-claw").textContent = say(`claw.${chuteDraft.clawAt(foot, "left")}.left`);
    $("right-claw").textContent = say(`claw.${chuteDraft.clawAt(foot, "right")}.right`);
    const open = [];
    for (const part of all(".zone")) {
      const number = Number(part.dataset.zone);
      const { side } = part.dataset;
      const isPossible = lesion.zones.includes(number);
      const isOn = draft.zone === number && (side === "between" || draft.claw === "both" || draft.claw === null || draft.claw === chuteDraft.clawAt(foot, side));
      part.classList.toggle("off", !isPossible);
      part.setAttribute("aria-disabled", !isPossible);
      part.setAttribute("aria-checked", isOn);
      part.setAttribute("aria-label", side === "between"
        ? say("zoneReadSkin", part.dataset.name, number)
        : say("zoneRead", say(`claw.${chuteDraft.clawAt(foot, side)}.${side}`), part.dataset.name, number));
      part.tabIndex = -1;
      if (isPossible) open.push(part);
    }
    const focusable = open.find(part => part.getAttribute("aria-checked") === "true") ?? open[0];
    if (focusable) focusable.tabIndex = 0;
    for (const button of all("[data-zone-button]")) {
      const number = button.dataset.zoneButton === "" ? null : Number(button.dataset.zoneButton);
      button.hidden = number !== null && !lesion.zones.includes(number);
      button.setAttribute("aria-checked", draft.zone === number);
    }
    const chosen = all(".zone").find(part => part.getAttribute("aria-checked") === "true");
    const words = draft.zone === null ? say("zoneNone")
      : draft.claw === "both" || !chosen ? say("zoneReadSkin", nameOf(draft.zone), draft.zone)
      : chosen.getAttribute("aria-label");
    const read = draft.isZoneProposed && draft.zone !== null ? `${words}. ${say("zoneProposed")}` : words;
    if ($("zone-words").textContent !== read) $("zone-words").textContent = read;
  }

  const nameOf = number => document.querySelector(`.zone[data-zone="${number}"]`)?.dataset.name ?? "";

  function chooseZone(part) {
    if (part.classList.contains("off")) return;
    const { side } = part.dataset;
    draft.zone = Number(part.dataset.zone);
    draft.isZoneProposed = false;
    if (side !== "between" && lesions.get(draft.lesion).claw && draft.claw !== "both") draft.claw = chuteDraft.clawAt(foot, side);
    changed();
  }

  const vetWords = sign => sign === "blisters-in-herd"
    ? say("warn.blisters")
    : say("warn.vet", document.querySelector(`[data-sign="${sign}"]`).dataset.words);

  function renderWarnings(finding, unsafe) {
    const sentences = finding.signs.map(vetWords);
    if (unsafe) sentences.push(say(unsafe.key, unsafe.claw ? say(unsafe.claw) : ""));
    if (chuteRules.needsWithdrawal(finding)) sentences.push(say("warn.withdrawal"));
    const list = $("warnings");
    // Said again only when it is another warning: a screen reader reads each change.
    if (sentences.join("\n") !== all("li", list).map(item => item.textContent).join("\n")) list.replaceChildren(...sentences.map(sentence => element("li", sentence)));
  }

  function renderAgain(finding, unsafe) {
    const today = dayOf(Date.now(), zone());
    const follows = farm ? chuteRules.followUps(finding, Boolean(unsafe)) : [];
    const lines = follows.map(what => say(`again.${what}`, day(addDays(today, farm.followUps[what].fromDay)), day(addDays(today, farm.followUps[what].toDay))));
    $("again").replaceChildren(...(lines.length > 0 ? lines : [say("again.nothing")]).map(line => element("li", line)));
  }

  function changed() {
    remember();
    renderDetail();
  }

  // ---- keeping and taking back ---------------------------------------------------------------------------------------

  async function keep(findings, words) {
    const batch = chuteDraft.newId();
    await chuteKept.add(findings.map(finding => ({ id: finding.id, cow, batch, finding })));
    await chuteKept.keepFact("last", { batch, cow, words });
    await refresh();
    send();
  }

  const more = () => ({ locomotionScore: walked, by: farm?.visit?.trimmer ?? "" });
  // Two findings of one cow are told apart by their instants too.
  const instant = () => new Date().toISOString();

  async function keepDraft() {
    const finding = chuteDraft.toFinding(draft, instant(), more());
    await keep([finding], say("keptOne", cow, footWords[foot], lesions.get(draft.lesion).words));
    draft = null; foot = null;
    await remember();
  }

  async function keepTrimmed(feet) {
    const at = instant();
    const words = feet.length === 1 ? say("keptOne", cow, footWords[feet[0]], lesions.get("none").words) : say("keptAll", cow, feet.length);
    await keep(feet.map(name => chuteDraft.trimmed(name, at, more())), words);
  }

  async function takeBack(list) {
    for (const entry of list) await chuteKept.takeBack(entry.id);
    await chuteKept.keepFact("last", { batch: null, cow: list[0].cow, words: say("undone", list[0].cow) });
    pick(list[0].cow);
    await refresh();
    send();
  }

  async function refresh() {
    entries = await chuteKept.entries();
    const last = await chuteKept.fact("last");
    const open = last?.batch ? entries.filter(entry => entry.batch === last.batch && counts(entry)) : [];
    $("last").hidden = !last;
    if (last) $("last-words").textContent = last.words;
    $("undo").hidden = open.length === 0;
    render();
  }

  // ---- the list, another cow, what waits -----------------------------------------------------------------------------

  function renderList() {
    if (!farm) return;
    $("list-read").textContent = say("readAt", `${day(dayOf(farm.readAt, zone()))}, ${time(farm.readAt, zone())}`, say(isOfflineReady ? "offlineReady" : "offlineNot"));
    $("rows").replaceChildren(...farm.rows.map(row => {
      const button = element("button", "", { type: "button" });
      button.dataset.cow = row.cow;
      button.append(element("b", row.cow), element("span", say("row", row.pen ? say("pen", row.pen) : say("notPen"), row.leg ? footWords[row.leg] : whyOf({ ...row, note: null }))));
      if (!row.hasPlace) button.append(element("em", say("noPlace")));
      if (isDone(row.cow)) button.append(element("em", `✓ ${say("rowDone")}`));
      button.classList.toggle("done", isDone(row.cow));
      if (row.cow === cow) button.setAttribute("aria-current", "true");
      const item = element("li", "");
      item.append(button);
      return item;
    }));
  }

  function renderFind() {
    const typed = $("typed").value.trim();
    const matches = typed === "" ? [] : (farm?.cows ?? []).filter(c => c.cow.toLowerCase().startsWith(typed.toLowerCase()) || (typed.length >= 3 && c.eid?.endsWith(typed)))
      .sort((a, b) => a.cow.length - b.cow.length).slice(0, 6);
    const items = matches.map(c => ({ number: c.cow, words: `${c.cow}${c.pen ? `, ${say("pen", c.pen)}` : ""}` }));
    if (typed !== "" && !matches.some(c => c.cow.toLowerCase() === typed.toLowerCase()) && !matches.some(c => c.eid === typed)) items.push({ number: typed, words: say("takeNew", typed), isNew: true });
    $("matches").replaceChildren(...items.map(item => {
      const button = element("button", item.words, { type: "button" });
      button.dataset.cow = item.number;
      const line = element("li", "");
      if (item.isNew && matches.length === 0) line.append(element("p", say("noMatch"), { className: "quiet" }));
      line.append(button);
      return line;
    }));
  }

  function stateWords() {
    const waiting = entries.filter(chuteSending.isPending).length;
    const refused = entries.filter(entry => entry.state === "refused").length;
    if (refused > 0) return count("state.refused", refused);
    if (waiting > 0) return count("state.waits", waiting);
    return say(entries.some(entry => entry.state === "sent") ? "state.allSent" : "state.nothing");
  }

  function renderState() {
    const waiting = entries.some(chuteSending.isPending);
    const refused = entries.some(entry => entry.state === "refused");
    $("waiting").textContent = stateWords();
    $("waiting").classList.toggle("pending", waiting || refused);
    if (farm) $("where").textContent = day(farm.date);
    if (chuteSending.state.stopped) notice(say("ended", chuteSending.state.stopped));
  }

  // The farm says in one English what it warns of; here it is said in the words of the page.
  function warned(warning, finding) {
    switch (warning.kind) {
      case "no-withdrawal-date": return say("warn.withdrawal");
      case "call-veterinarian": return finding.signs.map(vetWords).join(" ");
      case "unsafe-block": return say("warn.kept");
      default: return warning.sentence;
    }
  }

  function renderKept() {
    const waiting = entries.some(chuteSending.isPending);
    const refused = entries.some(entry => entry.state === "refused");
    const { tried } = chuteSending.state;
    $("kept-state").textContent = refused ? say("state.long.refused")
      : waiting ? say("state.long.waits", tried ? time(tried, zone()) : "–")
      : say(entries.length > 0 ? "state.long.allSent" : "state.nothing");
    $("send").hidden = !waiting;
    $("entries").replaceChildren(...[...entries].reverse().map(entry => {
      const item = element("li", "");
      item.dataset.state = entry.state;
      const words = entry.state === "refused" ? say("entry.refused", entry.problem) : say(`entry.${entry.state}`);
      const lines = element("div", "");
      lines.append(
        element("b", `${entry.cow}, ${footWords[entry.finding.foot]}`),
        element("span", lesions.get(entry.finding.lesion).words),
        element("em", `${time(entry.finding.at, zone())}, ${words}`),
        ...[...new Set((entry.warnings ?? []).map(warning => warned(warning, entry.finding)))].map(words => element("span", words, { className: "said" })));
      item.append(lines);
      if (counts(entry)) {
        const button = element("button", say("entry.undo"), { type: "button" });
        button.dataset.undo = entry.id;
        button.setAttribute("aria-label", `${say("entry.undo")}: ${entry.cow}, ${footWords[entry.finding.foot]}`);
        item.append(button);
      }
      return item;
    }));
  }

  function notice(words) {
    $("notice").textContent = words ?? "";
    $("notice").hidden = !words;
  }

  // ---- the farm ------------------------------------------------------------------------------------------------------

  async function send() {
    await chuteSending.send(refresh);
    await refresh();
  }

  async function fetchFarm() {
    try {
      const answer = await fetch(dataAddress, { cache: "no-store", signal: AbortSignal.timeout(20_000) });
      if (answer.ok) {
        farm = await answer.json();
        await chuteKept.keepFact(`farm ${path}`, farm);
        notice(null);
      } else if (answer.status === 404 || answer.status === 410) {
        // The link ended: the list is no longer the trimmer's to see; what was entered stays.
        const said = await answer.json();
        farm = null;
        await chuteKept.dropFact(`farm ${path}`);
        notice(say("ended", said.detail));
      }
    } catch {
      // No network: the list that is kept holds.
    }
    if (!farm && $("notice").hidden) notice(say("noData"));
  }

  async function keepPage() {
    if (!("serviceWorker" in navigator)) return;
    try {
      await navigator.serviceWorker.register(worker, { scope: path });
      await navigator.serviceWorker.ready;
      isOfflineReady = true;
      document.body.dataset.offline = "ready";
      renderList();
      navigator.storage?.persist?.();
    } catch {
      // A certificate the phone does not trust, or plain HTTP: the page says that it needs a connection to open.
    }
  }

  // ---- taps ----------------------------------------------------------------------------------------------------------

  document.addEventListener("click", async event => {
    const target = event.target.closest("button, .zone");
    if (!target || target.disabled) return;
    const { dataset } = target;
    if (dataset.go) go(dataset.go);
    else if (dataset.cow) { pick(dataset.cow); $("typed").value = ""; go("cow"); render(); }
    else if (dataset.foot) { foot = dataset.foot; draft = null; remember(); go("lesion"); }
    else if (dataset.lesion) beginDetail(lesions.get(dataset.lesion));
    else if (dataset.pick) choose(dataset.pick, dataset.value);
    else if (dataset.zone) chooseZone(target);
    else if (dataset.zoneButton !== undefined) { draft.zone = dataset.zoneButton === "" ? null : Number(dataset.zoneButton); draft.isZoneProposed = false; changed(); }
    else if (dataset.action) { chuteDraft.toggleAction(draft, dataset.action); changed(); }
    else if (dataset.block) { chuteDraft.toggleBlock(draft, dataset.block); changed(); }
    else if (dataset.sign) { chuteDraft.toggleSign(draft, dataset.sign); changed(); }
    else if (dataset.key) press(dataset.key);
    else if (dataset.undo) takeBack(entries.filter(entry => entry.id === dataset.undo));
    else await byId(target);
  });

  async function byId(target) {
    switch (target.id) {
      case "nothing": await once(target, async () => { await keepTrimmed([foot]); foot = null; await remember(); go("cow"); }); break;
      case "all-four": await once(target, async () => {
        const done = entered(cow);
        await keepTrimmed(Object.keys(footNames).filter(name => !done.some(f => f.foot === name)));
        pickNext(); go("cow"); arrive();
      }); break;
      case "next-cow": pickNext(); go("cow"); arrive(); break;
      case "keep-foot": await once(target, async () => { await keepDraft(); go("cow"); }); break;
      case "keep-cow": await once(target, async () => { await keepDraft(); pickNext(); go("cow"); }); break;
      case "undo": {
        const last = await chuteKept.fact("last");
        const batch = entries.filter(entry => entry.batch === last?.batch && counts(entry));
        if (batch.length > 0) await once(target, async () => { await takeBack(batch); go("cow"); arrive(); });
        break;
      }
      case "letters": $("typed").inputMode = "text"; $("typed").focus(); break;
      case "send": send(); break;
    }
  }

  // A glove taps twice: the second tap is not another entry.
  async function once(button, work) {
    if (button.dataset.busy) return;
    button.dataset.busy = "yes";
    try { await work(); } finally { delete button.dataset.busy; }
  }

  function choose(what, value) {
    if (what === "locomotionScore") {
      walked = walked === Number(value) ? null : Number(value);
      remember();
      showPicked();
      return;
    }
    const typed = ["severity", "bodySize"].includes(what) ? Number(value) : value;
    draft[what] = draft[what] === typed ? null : typed;
    if (what === "bodyKind" && draft.bodyKind && !draft.actions.includes("foreign-body-removed")) chuteDraft.toggleAction(draft, "foreign-body-removed");
    if (what === "bodySize" && draft.bodySize && !draft.bodyKind) draft.bodyKind = "other";
    changed();
  }

  function press(key) {
    const typed = $("typed");
    typed.value = key === "clear" ? "" : key === "back" ? typed.value.slice(0, -1) : typed.value + key;
    renderFind();
  }

  document.addEventListener("keydown", event => {
    const part = event.target.closest?.(".zone");
    if (!part) return;
    if (event.key === "Enter" || event.key === " ") { event.preventDefault(); chooseZone(part); return; }
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    if (!step) return;
    event.preventDefault();
    const open = all(".zone:not(.off)");
    const next = open[(open.indexOf(part) + step + open.length) % open.length];
    chooseZone(next);
    next.focus();
  });

  $("typed").addEventListener("input", renderFind);
  $("withdrawal").addEventListener("change", () => { draft.withdrawalUntil = $("withdrawal").value || null; changed(); });
  addEventListener("hashchange", arrive);
  addEventListener("online", async () => { await fetchFarm(); await send(); });
  document.addEventListener("visibilitychange", () => { if (document.visibilityState === "visible") send(); });
  wide.addEventListener("change", render);
  setInterval(() => { if (entries.some(chuteSending.isPending)) send(); }, retryMs);

  // ---- beginning -----------------------------------------------------------------------------------------------------

  (async () => {
    if (!await chuteKept.works()) { notice(say("noStore")); return; }
    await chuteKept.forget(new Date(Date.now() - keepDays * 86_400_000).toISOString());
    farm = await chuteKept.fact(`farm ${path}`) ?? null;
    const turn = await chuteKept.fact(`turn ${path}`);
    if (turn) ({ cow, foot, draft, walked } = turn);
    entries = await chuteKept.entries();
    if (farm) await begin();
    await fetchFarm();
    await begin();
    await keepPage();
    await send();
  })();

  async function begin() {
    if (!cow) pickNext();
    await refresh();
  }
})();

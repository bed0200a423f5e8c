// Reads values off the charts, chooses days by dragging, prints, and keeps an open page up to date. Without it the pages lack nothing else.

// A day of a leg comes as figures, for a year of four legs in words would weigh more than all else; the words are beside them once.
function unpackDay(svg) {
  const { left, right, sayDay, sayNormal, sayEvidence } = svg.dataset;
  const days = svg.closest("[data-days]").dataset.days.split("|");
  const tenths = new Intl.NumberFormat(document.documentElement.lang, { minimumFractionDigits: 1, maximumFractionDigits: 1 });
  const say = (pattern, ...values) => values.reduce((text, value, i) => text.replace(`{${i}}`, value), pattern);
  return text => {
    const [day, y, share, evidence, low, high] = text.split(" ").map(Number);
    return {
      x: Number(left) + (day + 0.5) * (right - left) / days.length, y,
      words: () => say(sayDay, days[day], tenths.format(share / 10))
        + (low === undefined ? "" : say(sayNormal, tenths.format(low / 10), tenths.format(high / 10)))
        + say(sayEvidence, tenths.format(evidence / 10)),
    };
  };
}

function unpack(svg) {
  const packed = svg.dataset.readings.split("|");
  return svg.dataset.sayDay ? packed.map(unpackDay(svg)) : packed.map(text => {
    const [x, y] = text.split(" ", 2);
    return { x: Number(x), y: Number(y), words: () => text.slice(x.length + y.length + 2) };
  });
}

// A chart: mouse, finger or arrow keys read values; a drag with the mouse chooses the days to see.
function readChart(svg) {
  if (!svg.dataset.readings) return;
  const read = document.getElementById(svg.getAttribute("aria-describedby"));
  const cursor = svg.querySelector(".chart-cursor");
  const newest = read.textContent;
  // Unpacked when the first value is asked for: until then nobody waits for it.
  let readings = null, at = null;

  const show = index => {
    at = Math.min(Math.max(index, 0), readings.length - 1);
    const { x, y, words } = readings[at];
    cursor.setAttribute("d", `M${x} ${svg.dataset.top}V${svg.dataset.bottom}M${x - 5} ${y}h10`);
    read.textContent = words();
  };
  const leave = () => {
    cursor.setAttribute("d", "");
    read.textContent = newest;
    at = null;
  };
  const place = event => new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
  const follow = event => {
    readings ??= unpack(svg);
    const { x } = place(event);
    let nearest = 0;
    readings.forEach((reading, i) => {
      if (Math.abs(reading.x - x) < Math.abs(readings[nearest].x - x)) nearest = i;
    });
    show(nearest);
  };

  svg.addEventListener("pointermove", follow);
  svg.addEventListener("pointerdown", follow);
  svg.addEventListener("pointerleave", event => { if (event.pointerType === "mouse") leave(); });
  svg.addEventListener("blur", leave);
  svg.addEventListener("keydown", event => {
    const step = { ArrowLeft: -1, ArrowRight: 1, PageUp: -7, PageDown: 7, Home: -Infinity, End: Infinity }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    readings ??= unpack(svg);
    show((at ?? readings.length - 1) + step);
  });
  chooseDays(svg, place);
}

function chooseDays(svg, place) {
  const { from, to, left, right } = svg.dataset;
  const page = svg.closest("[data-zoom]")?.dataset.zoom;
  if (!from || !page) return;
  const shade = svg.querySelector(".chart-drag");
  const first = Date.parse(from);
  const days = (Date.parse(to) - first) / 864e5 + 1;
  const inside = x => Math.min(Math.max(x, Number(left)), Number(right));
  const day = x => {
    const n = Math.min(Math.floor((x - left) / (right - left) * days), days - 1);
    return new Date(first + n * 864e5).toISOString().slice(0, 10);
  };
  let start = null;
  svg.addEventListener("pointerdown", event => {
    if (event.pointerType !== "mouse" || event.button !== 0) return;
    start = inside(place(event).x);
    svg.setPointerCapture(event.pointerId);
  });
  svg.addEventListener("pointermove", event => {
    if (start === null) return;
    const x = inside(place(event).x);
    shade.setAttribute("x", Math.min(start, x));
    shade.setAttribute("width", Math.abs(x - start));
  });
  svg.addEventListener("pointerup", event => {
    if (start === null) return;
    const x = inside(place(event).x);
    const [a, b] = [Math.min(start, x), Math.max(start, x)];
    start = null;
    shade.setAttribute("width", 0);
    // A click is no drag.
    if (b - a > 8) location.assign(`${page}?from=${day(a)}&to=${day(b)}`);
  });
  svg.addEventListener("pointercancel", () => { start = null; shade.setAttribute("width", 0); });
}

function wake(part) {
  part.querySelectorAll("svg[data-readings]").forEach(readChart);
  part.querySelectorAll("[data-print]").forEach(button => {
    button.hidden = false;
    button.addEventListener("click", () => print());
  });
}

// An open page hears that something changed and fetches itself again; what a hand is on is left as it is until the hand is off.
function live() {
  const part = document.querySelector("[data-live]");
  if (!part) return;
  const noticeMilliseconds = 15000;
  let source = null, stale = false, fetching = false;
  const inHand = () => part.contains(document.activeElement) && document.activeElement.matches("input, select, textarea")
    || [...part.querySelectorAll("input[type=text]")].some(field => field.value !== field.defaultValue)
    || part.querySelector("details[open]:not([data-keep])") !== null || getSelection()?.toString();
  const refresh = async () => {
    if (fetching || !stale || inHand()) return;
    fetching = true;
    stale = false;
    try {
      const answer = await fetch(location.href, { headers: { "Accept": "text/html" } });
      if (!answer.ok) return;
      const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
      const body = fresh.querySelector(`[data-live="${part.dataset.live}"]`);
      if (!body || inHand()) { stale = true; return; }
      const focused = part.contains(document.activeElement) ? document.activeElement.id : null;
      // What was said about an action of a moment ago stays long enough to be read, and is not said again after.
      if (performance.now() > noticeMilliseconds) body.querySelectorAll(".notice").forEach(notice => notice.remove());
      part.replaceChildren(...body.childNodes);
      wake(part);
      if (focused) document.getElementById(focused)?.focus({ preventScroll: true });
      const [now, then] = [fresh.querySelector("footer time"), document.querySelector("footer time")];
      if (now && then) then.replaceWith(now);
    } catch {
      // Away from the network: the next event, after the browser has come back, tells again.
      stale = true;
    } finally {
      fetching = false;
    }
  };
  const open = () => {
    source = new EventSource("/live");
    source.addEventListener("changed", () => { stale = true; refresh(); });
  };
  document.addEventListener("visibilitychange", () => {
    if (document.hidden) {
      source?.close();
      source = null;
    } else if (source === null) {
      // Nothing was heard while the page was out of sight.
      stale = true;
      refresh();
      open();
    }
  });
  part.addEventListener("focusout", () => setTimeout(refresh, 300));
  part.addEventListener("toggle", () => setTimeout(refresh, 300), true);
  open();
}

wake(document);
live();

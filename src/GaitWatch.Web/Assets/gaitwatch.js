// Reads values off the charts by mouse, finger or arrow keys. Without it the pages lack nothing else.
for (const svg of document.querySelectorAll("svg[data-readings]")) {
  const readings = svg.dataset.readings.split("|").filter(Boolean).map(text => {
    const [x, y] = text.split(" ", 2);
    return { x: Number(x), y: Number(y), words: text.slice(x.length + y.length + 2) };
  });
  if (readings.length === 0) continue;
  const read = document.getElementById(svg.getAttribute("aria-describedby"));
  const cursor = svg.querySelector(".chart-cursor");
  const newest = read.textContent;
  let at = readings.length - 1;

  const show = index => {
    at = Math.min(Math.max(index, 0), readings.length - 1);
    const { x, y, words } = readings[at];
    cursor.setAttribute("d", `M${x} 20V206M${x - 5} ${y}h10`);
    read.textContent = words;
  };
  const leave = () => {
    cursor.setAttribute("d", "");
    read.textContent = newest;
    at = readings.length - 1;
  };
  const follow = event => {
    const place = new DOMPoint(event.clientX, event.clientY).matrixTransform(svg.getScreenCTM().inverse());
    let nearest = 0;
    readings.forEach((reading, i) => {
      if (Math.abs(reading.x - place.x) < Math.abs(readings[nearest].x - place.x)) nearest = i;
    });
    show(nearest);
  };

  svg.addEventListener("pointermove", follow);
  svg.addEventListener("pointerdown", follow);
  svg.addEventListener("pointerleave", event => { if (event.pointerType === "mouse") leave(); });
  svg.addEventListener("blur", leave);
  svg.addEventListener("keydown", event => {
    const step = { ArrowLeft: -1, ArrowRight: 1, PageUp: -7, PageDown: 7, Home: -readings.length, End: readings.length }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    show(at + step);
  });
}

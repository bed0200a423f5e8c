// Sends what waits, in the order in which it was entered, until the farm has answered for each. An entry keeps its id, so that one
// whose answer was lost is sent again and still counts once.
const chuteSending = (() => {
  const { api } = document.body.dataset;
  const patienceMs = 20_000;
  const state = { tried: null, reached: true, stopped: null };
  let busy = false;
  let again = false;

  const isPending = entry => entry.state === "waiting" || entry.state === "withdrawing";
  const path = (...names) => names.map(encodeURIComponent).join("/");

  async function ask(method, route, body) {
    const answer = await fetch(`${api}/${route}`, {
      method, cache: "no-store", signal: AbortSignal.timeout(patienceMs),
      headers: body ? { "Content-Type": "application/json" } : {}, body: body ? JSON.stringify(body) : undefined,
    });
    let said = null;
    try { said = await answer.json(); } catch { /* An answer without words is judged by its status. */ }
    return { status: answer.status, said };
  }

  // True to go on with the next, false to stop for now.
  async function sendOne(entry) {
    if (entry.state === "waiting") {
      if (!await chuteKept.claim(entry.id)) return true;
      const { status, said } = await ask("POST", `cows/${path(entry.cow)}/findings`, entry.finding);
      if (status >= 200 && status < 300) { await chuteKept.sent(entry.id, said?.warnings ?? []); return true; }
      return judge(status, said, problem => chuteKept.refused(entry.id, problem));
    }
    const { status, said } = await ask("DELETE", `findings/${path(entry.id)}?at=${encodeURIComponent(entry.takenBackAt)}`);
    // Not known there: it never arrived, which is what was wanted.
    if ((status >= 200 && status < 300) || (status === 404 && !said?.errors?.link)) { await chuteKept.withdrawn(entry.id); return true; }
    return judge(status, said, null);
  }

  async function judge(status, said, refuse) {
    const words = said?.detail ?? `HTTP ${status}`;
    const mayPass = status >= 500 || status === 408 || status === 429 || status === 403 || Boolean(said?.errors?.link);
    if (mayPass || !refuse) { state.stopped = words; return false; }
    await refuse(words);
    return true;
  }

  async function run(changed) {
    state.stopped = null;
    const done = new Set();
    for (;;) {
      const next = (await chuteKept.entries()).find(entry => isPending(entry) && !done.has(entry.id + entry.state));
      if (!next) break;
      done.add(next.id + next.state);
      state.tried = new Date().toISOString();
      try {
        if (!await sendOne(next)) break;
        state.reached = true;
      } catch {
        state.reached = false;
        break;
      } finally {
        await changed();
      }
    }
  }

  // One sender at a time, in all windows of this browser.
  async function send(changed) {
    if (busy) { again = true; return; }
    busy = true;
    try {
      do {
        again = false;
        if (navigator.locks) await navigator.locks.request("gaitwatch-chute-sending", () => run(changed));
        else await run(changed);
      } while (again);
    } finally {
      busy = false;
    }
  }

  return { send, state, isPending };
})();

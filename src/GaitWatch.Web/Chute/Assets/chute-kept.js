// What the phone keeps: entries until they are sent and after, the list of the farm, what is half entered. Every write is on the
// disk before it counts as kept.
const chuteKept = (() => {
  const opened = new Promise((resolve, reject) => {
    const request = indexedDB.open("gaitwatch-chute", 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore("entries", { keyPath: "id" });
      request.result.createObjectStore("facts");
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });

  // Runs work in one transaction; its result counts once the transaction is done.
  async function within(store, mode, work) {
    const database = await opened;
    return new Promise((resolve, reject) => {
      const transaction = database.transaction(store, mode, { durability: "strict" });
      let result;
      transaction.oncomplete = () => resolve(result);
      transaction.onabort = transaction.onerror = () => reject(transaction.error);
      work(transaction.objectStore(store), value => { result = value; });
    });
  }

  const read = (store, ask) => within(store, "readonly", (rows, give) => { const request = ask(rows); request.onsuccess = () => give(request.result); });

  // Changes one entry as it stands then; change gives the new entry, or null to leave it.
  const change = (id, how) => within("entries", "readwrite", (rows, give) => {
    const request = rows.get(id);
    request.onsuccess = () => {
      const next = request.result && how(request.result);
      if (next) rows.put(next);
      give(next || null);
    };
  });

  let newest = 0;
  const order = () => { newest = Math.max(newest + 1, Date.now() * 1000); return newest; };

  return {
    works: () => opened.then(() => true, () => false),
    fact: key => read("facts", rows => rows.get(key)),
    keepFact: (key, value) => within("facts", "readwrite", rows => { rows.put(value, key); }),
    dropFact: key => within("facts", "readwrite", rows => { rows.delete(key); }),
    entries: async () => (await read("entries", rows => rows.getAll())).sort((a, b) => a.order - b.order),
    add: entries => within("entries", "readwrite", rows => { for (const entry of entries) rows.put({ ...entry, order: order(), state: "waiting", tried: false }); }),
    // Told to be on its way before it is: from then on only the farm can say whether it has it.
    claim: id => change(id, entry => entry.state === "waiting" ? { ...entry, tried: true } : null),
    sent: (id, warnings) => change(id, entry => entry.state === "waiting" ? { ...entry, state: "sent", warnings } : null),
    refused: (id, problem) => change(id, entry => entry.state === "waiting" ? { ...entry, state: "refused", problem } : null),
    withdrawn: id => change(id, entry => entry.state === "withdrawing" ? { ...entry, state: "withdrawn" } : null),
    takeBack: id => change(id, entry => {
      if (entry.state === "withdrawing" || entry.state === "withdrawn") return null;
      const neverThere = entry.state === "refused" || (entry.state === "waiting" && !entry.tried);
      return { ...entry, state: neverThere ? "withdrawn" : "withdrawing", takenBackAt: new Date().toISOString() };
    }),
    // What the farm has had for long need not stay.
    forget: before => within("entries", "readwrite", rows => {
      rows.getAll().onsuccess = event => {
        for (const entry of event.target.result) {
          if ((entry.state === "sent" || entry.state === "withdrawn") && entry.finding.at < before) rows.delete(entry.id);
        }
      };
    }),
  };
})();

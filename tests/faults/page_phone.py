"""The page's own journal as a phone of the bad days: the deeds of `twin.Twin`, done by `web/journal` in a browser."""

import itertools
import json

#: Stores by name, each on a database of its own; `fetch` goes to the test, which is the network and the laptop.
PREPARE = """async (build) => {
  const { Store } = await import(`/v/${build}/journal/store.js`);
  const { exchange } = await import(`/v/${build}/journal/exchange.js`);
  const open = (name) => new Promise((done, fail) => {
    const request = indexedDB.open(name);
    request.onsuccess = () => done(request.result);
    request.onerror = () => fail(request.error);
  });
  const whole = (change) => new Promise((done, fail) => { change.oncomplete = done; change.onabort = fail; });
  const read = (shelf, what) => new Promise((done) => {
    shelf[what]().onsuccess = ({ target }) => done(target.result);
  });
  const unzip = async (body) => typeof body === "string" ? body : new Response(
    new Blob([body]).stream().pipeThrough(new DecompressionStream("gzip"))).text();
  const TABLES = ["facts", "entries", "aside"];
  globalThis.days = {
    stores: {}, clocks: {},
    async open(name, at) {
      this.clocks[name] = at;
      this.stores[name] = await Store.open({ name, now: () => this.clocks[name] });
    },
    async synchronize(name) {
      let requests = 0;
      const answer = async (path, { body }) => {
        requests += 1;
        const reply = await globalThis.network(path.replace("/api/sync", ""), await unzip(body));
        if (reply === null) throw new TypeError("lost");
        return new Response(reply);
      };
      try {
        // Few at once: what goes next is then under way while what came before is written, as with a long journal.
        const way = { store: this.stores[name], announce: async () => {}, heard: () => {}, fetch: answer, atMost: 3 };
        await exchange(way);
        return requests;
      } catch (error) {
        if (error.phase === "away") return null;
        throw error;
      }
    },
    async copy(name) {
      const db = await open(name);
      const change = db.transaction(TABLES);
      const kept = {};
      for (const table of TABLES) {
        const shelf = change.objectStore(table);
        kept[table] = [await read(shelf, "getAllKeys"), await read(shelf, "getAll")];
      }
      db.close();
      return JSON.stringify(kept);
    },
    async putBack(name, copy) {
      const db = await open(name);
      const change = db.transaction(TABLES, "readwrite");
      const done = whole(change);
      for (const [table, [keys, values]] of Object.entries(JSON.parse(copy))) {
        const shelf = change.objectStore(table);
        shelf.clear();
        keys.forEach((key, place) => table === "facts" ? shelf.put(values[place], key) : shelf.put(values[place]));
      }
      await done;
      db.close();
      this.stores[name] = await Store.open({ name, now: () => this.clocks[name] });
    },
    async spoil(name, ids, entry) {
      const db = await open(name);
      const change = db.transaction(TABLES, "readwrite");
      const done = whole(change);
      const shelf = change.objectStore("entries");
      for (const kept of await read(shelf, "getAll")) {
        if (!ids.includes(kept.id) || kept.standing !== "shared") continue;
        if (entry) shelf.put({ ...kept, entry });
        else shelf.delete(kept.id);
        change.objectStore("facts").delete("sums");
      }
      await done;
      db.close();
    },
  };
}"""


class PagePhone:
    """One database in the page. A phone that lost entries counts anew when it next compares, as after any start."""

    numbers = itertools.count()

    def __init__(self, page, at_ms):
        self.page, self._at_ms = page, at_ms
        self.name = f"phone-{next(self.numbers)}"
        page.evaluate("([name, at]) => days.open(name, at)", [self.name, at_ms])

    @property
    def at_ms(self):
        return self._at_ms

    @at_ms.setter
    def at_ms(self, at_ms):
        self._at_ms = at_ms
        self.page.evaluate("([name, at]) => { days.clocks[name] = at; }", [self.name, at_ms])

    def _do(self, work, *given):
        return self.page.evaluate(f"([name, given]) => {work}", [self.name, list(given)])

    def write(self, kind, body, supersedes=()):
        self._do("days.stores[name].append(...given)", kind, body, list(supersedes))

    def entries(self):
        # As text: the browser's own way of handing values over makes integers of some and floats of others.
        kept = "days.stores[name].all().then((all) => JSON.stringify(all.map((kept) => kept.entry)))"
        return json.loads(self._do(kept))

    def read_file(self, entries):
        self._do("days.stores[name].add(given[0]).then(() => null)", entries)

    def copy(self):
        return self._do("days.copy(name)")

    def put_back(self, copy):
        self._do("days.putBack(name, given[0])", copy)

    def forget(self, some):
        self._do("days.spoil(name, given[0])", list(some))

    def damage(self, key, entry):
        self._do("days.spoil(name, [given[0]], given[1])", key, entry)

    def waiting(self):
        return self._do("days.stores[name].waiting(999)")

    def refused(self):
        return self._do("days.stores[name].refused().then((all) => all.filter((one) => !one.text))")

    def synchronize(self, send):
        self.page.days_send = send
        return self._do("days.synchronize(name)")

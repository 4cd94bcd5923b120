// @ts-check
// Starts the page: opens the journal, wakes the engine, begins to share, and hands all of it to the screens.

import { Engine } from "./engine/client.js";
import { Journal } from "./journal/journal.js";
import { Sync } from "./journal/sync.js";
import { mount } from "./screens/main.js";
import { Update } from "./update.js";

/**
 * All that the screens may use. Nothing here computes: figures come from `engine`, words of people go to `journal`.
 * `anotherEngine` starts one more, for work that takes long and may be ended.
 * @typedef {{ engine: Engine, anotherEngine: () => Engine, journal: Journal, sync: Sync, update: Update }} Services
 */

const { build = "", runtime = "" } = document.documentElement.dataset;
const root = /** @type {HTMLElement} */ (document.getElementById("page"));

async function start() {
  const update = new Update();
  // The engine is sent off first: it takes longest to wake, and needs the journal only when it has.
  const opening = Journal.open();
  const anotherEngine = () => new Engine({ build, runtime, entries: async () => (await opening).entries() });
  const engine = anotherEngine();
  update.quiet = () => engine.settled();
  engine.onState((state) => performance.mark(`engine ${state}`)); // What the bench reads, and a profiler shows.
  const journal = await opening;
  journal.onChange((fresh) => engine.tell(fresh));
  const sync = new Sync({ journal, heard: (theirs) => theirs !== build && update.check() });
  document.addEventListener("visibilitychange", () => {
    // Phones end the workers of a page in the background; the person who comes back should not have to know.
    if (document.visibilityState === "visible" && engine.state.startsWith("failed")) engine.restart();
  });
  mount(root, { engine, anotherEngine, journal, sync, update });
}

/**
 * Without the journal nothing could be saved, and a page that looks as if it did would be worse than none.
 * @param {unknown} error
 */
function refuse(error) {
  console.error(error);
  const words = document.createElement("p");
  words.setAttribute("role", "alert");
  words.textContent =
    `This browser will not open the journal (${error}). Nothing can be saved here: ` +
    "free some space, leave private browsing, or restart the browser.";
  root.replaceChildren(words);
}

start().catch(refuse);
